// A material balance over counted stock: what each period cannot account for, the running sum, and Page's test on the differences freed of what they share.
import type { Worth } from '../weighing/uncertainty.ts';
import { limitFor, runningSums, whitened } from './drift.ts';

/** One weighing in fine metal; a count is the same weighing where it closes one period and opens the next. */
export interface FineWeighing {
  readonly id: string;
  readonly fineNg: number;
  readonly worth: Worth;
}
/** Between two counts: what was counted first and came in (+), what went out and was counted last (−). */
export type Terms = readonly (FineWeighing & { readonly sign: 1 | -1 })[];
export interface Unaccounted {
  /** Missing is positive. */
  readonly missingNg: number;
  readonly uG: number;
  readonly runningNg: number;
  readonly runningUG: number;
}
export interface MaterialBalance {
  readonly periods: readonly Unaccounted[];
  /** Where the running sum of missing metal, or of metal too much, is beyond the limit. */
  readonly alarms: readonly { readonly at: number; readonly side: 'loss' | 'gain' }[];
}

/** With nothing missing, one signal on each side in about so many periods (common practice, no source). */
export const FALSE_ALARM_IN = 100;
/** Half of the shift that Page's test is quickest at: a spread in each period. */
const K = 0.5;

/** Balances periods in the order they ended. */
export function materialBalance(periods: readonly Terms[]): MaterialBalance {
  const missing = periods.map((terms) => terms.reduce((sum, { sign, fineNg }) => sum + sign * fineNg, 0));
  const effects = periods.map(effectsOf);
  const covariance = effects.map((one) => effects.map((other) => dotOf(one, other)));
  const upTo = (end: number) => sumOf(covariance.slice(0, end).map((row) => sumOf(row.slice(0, end))));
  const scores = whitened(
    missing.map((ng) => ng / 1e9),
    covariance,
  );
  const { alarms } = runningSums(scores, K, limitFor(FALSE_ALARM_IN, K));
  return {
    periods: missing.map((missingNg, index) => ({
      missingNg,
      uG: Math.sqrt(covariance[index]?.[index] ?? 0),
      runningNg: sumOf(missing.slice(0, index + 1)),
      runningUG: Math.sqrt(Math.max(0, upTo(index + 1))),
    })),
    alarms: alarms.map(({ at, side }) => ({ at, side })),
  };
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Each independent error of a period in grams: a weighing's own by its id, and the shared ones by theirs. */
function effectsOf(terms: Terms): ReadonlyMap<string, number> {
  const effects = new Map<string, number>();
  const add = (id: string, g: number) => effects.set(id, (effects.get(id) ?? 0) + g);
  for (const { id, sign, worth } of terms) {
    add(`own ${id}`, sign * worth.uRandomG);
    for (const factor of worth.factors) add(`shared ${factor.id}`, sign * factor.sensitivityG);
  }
  return effects;
}

const dotOf = (one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>): number =>
  sumOf([...one].map(([id, g]) => g * (other.get(id) ?? 0)));
