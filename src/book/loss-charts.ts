// How a chart of loss is named, and the baselines that are accepted for charts.
import type { MetalFamily } from './metals.ts';
import type { Operation } from './usual-loss.ts';

/** The jobs of one chart: where they were done, what was done, and on which metal. */
export interface ChartOf {
  readonly place: string | null;
  readonly operation: Operation;
  readonly family: MetalFamily;
}
/** Accepted baselines by the keys of their charts: each holds the jobs that were finished in the first so many entries of the ledger. */
export type Baselines = ReadonlyMap<string, number>;

export const chartKey = ({ place, operation, family }: ChartOf): string => `${place ?? 'bench not said'}|${operation}|${family}`;

const PREFIX = 'baseline:';
/** Under which name the shop keeps the baseline of a chart. */
export const baselineName = (chart: ChartOf): string => `${PREFIX}${chartKey(chart)}`;

/** The baselines among what the shop says. */
export const baselinesIn = (says: Readonly<Record<string, string>>): Baselines =>
  new Map(Object.entries(says).flatMap(([name, size]) => (name.startsWith(PREFIX) ? [[name.slice(PREFIX.length), Number(size)]] : [])));
