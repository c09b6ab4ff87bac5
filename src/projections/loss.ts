// Loss over many jobs: the usual rate of the shop, a chart for each bench, operation and metal, benches against each other, and a period's list.
import { type Baselines, type ChartOf, chartKey } from '../book/loss-charts.ts';
import type { MetalFamily } from '../book/metals.ts';
import { assumedLoss, type Operation } from '../book/usual-loss.ts';
import { type Closure, judgedAnew } from '../reckoning/closure.ts';
import {
  againstOthers,
  type ChartJob,
  limitFor,
  type Prior,
  runLengthFor,
  usualLoss,
  usualRate,
  type Watch,
  watch,
} from '../reckoning/drift.ts';
import { ACTION_ALPHA, type UsualLoss } from '../reckoning/loss-law.ts';
import { type PeriodCount, periodCount } from '../reckoning/periods.ts';
import type { Term } from './chain.ts';
import type { JobReckoning, LearnedRate } from './job-reckoning.ts';
import type { Told } from './told.ts';

/** A job whose weights could be checked, whatever its work. */
export interface CheckedJob {
  readonly job: string;
  /** When it was weighed last. */
  readonly atMs: number;
  readonly closed: Closure;
}
/** One whose work leaves dust, as a point of a chart. */
export interface LossJob extends CheckedJob {
  /** The entry by which its work was finished first: nothing that is written later changes it. */
  readonly seq: number;
  /** Where it was then, by the last entry that moved it; null where none did. */
  readonly place: string | null;
  readonly operation: Operation;
  readonly metal: string;
  readonly family: MetalFamily;
  readonly workedG: number;
  readonly closing: readonly Term[];
  readonly usual: UsualLoss;
  /** It did not agree, and nobody has said why: it enters no baseline. */
  readonly leftOut: boolean;
}

export const leavesDust = (one: CheckedJob): one is LossJob => 'operation' in one;

/** A reckoned job that was checked by weight, as a point where something of it turns to dust; null where it was not checked. */
export function checkedJob(job: string, reckoned: JobReckoning, entries: readonly Told[]): CheckedJob | LossJob | null {
  const { closed, history } = reckoned;
  if (!closed || closed.verdict === 'not checked') return null;
  const atMs = Math.max(...history.streams.filter(({ part }) => part === 'weighing').map((step) => step.atMs));
  return lossJob({ job, atMs, closed }, reckoned, entries) ?? { job, atMs, closed };
}

function lossJob(checked: CheckedJob, { closing, work, explained }: JobReckoning, entries: readonly Told[]): LossJob | null {
  if (!work) return null;
  const { atMs, closed } = checked;
  const places = entries.flatMap(({ atMs: ms, facts }) =>
    ms <= atMs ? facts.flatMap((one) => (one.fact === 'place' ? [one.at] : [])) : [],
  );
  const finished = entries.find(({ facts }) =>
    facts.some((one) => one.fact === 'state' && one.of === checked.job && one.is === 'finished'),
  );
  const flagged = Math.min(closed.pLoss, closed.pGain) <= ACTION_ALPHA;
  const { operation, metal, family, workedG, usual } = work;
  const seq = (finished ?? entries.at(-1))?.seq ?? 0;
  const place = places.at(-1) ?? null;
  return { ...checked, seq, place, operation, metal, family, workedG, usual, closing, leftOut: flagged && !explained };
}

const lossG = ({ closed }: LossJob): number => closed.lossNg / 1e9;
/** From this many jobs on the shop has a rate of its own. */
const ENOUGH = 3;

/** What the shop has learned from its jobs; each answer is worked out once, however often it is asked for. */
export interface Learned {
  /** The shop's own rate of loss for an operation on a metal, learned from its other jobs than `but`; null while it has too few. */
  rateOf(operation: Operation, family: MetalFamily, but?: string): LearnedRate | null;
  /** A job as its own page judges it: by what the shop has learned from all the others. */
  judged(one: CheckedJob): CheckedJob;
}
/** A share of the metal worked, and its standard uncertainty. */
interface Loss {
  readonly value: number;
  readonly u: number;
}

export function learnedFrom(jobs: readonly LossJob[]): Learned {
  const works = new Map<string, Map<string, Loss>>();
  for (const one of jobs) {
    if (one.leftOut) continue;
    const own = works.get(workKey(one)) ?? new Map<string, Loss>();
    works.set(workKey(one), own.set(one.job, { value: lossG(one) / one.workedG, u: one.closed.uG / one.workedG }));
  }
  const rates = new Map<string, LearnedRate | null>();
  const verdicts = new Map<CheckedJob, CheckedJob>();
  const rateOf: Learned['rateOf'] = (operation, family, but = '') => {
    const work = workKey({ operation, family });
    const own = works.get(work) ?? new Map<string, Loss>();
    const key = own.has(but) ? `${work} ${but}` : work;
    const known = rates.get(key);
    if (known !== undefined) return known;
    const others = [...own].flatMap(([job, loss]) => (job === but ? [] : [loss]));
    const rate = others.length < ENOUGH ? null : learned(others, assumedLoss(operation, family));
    rates.set(key, rate);
    return rate;
  };
  const judged: Learned['judged'] = (one) => {
    const known = verdicts.get(one) ?? judgedBy(rateOf, one);
    verdicts.set(one, known);
    return known;
  };
  return { rateOf, judged };
}

const workKey = ({ operation, family }: Pick<LossJob, 'operation' | 'family'>): string => `${operation} ${family}`;

const learned = (own: readonly Loss[], prior: Prior): LearnedRate => ({
  ...usualRate(own, prior),
  from: `learned from ${own.length} other finished jobs of this shop at such work`,
});

function judgedBy(rateOf: Learned['rateOf'], one: CheckedJob): CheckedJob {
  if (!leavesDust(one)) return one;
  const rate = rateOf(one.operation, one.family, one.job);
  if (!rate) return one;
  const usual = usualLoss(rate, assumedLoss(one.operation, one.family), one.workedG);
  return { ...one, closed: judgedAnew(one.closed, usual) };
}

export interface LossChart extends ChartOf {
  readonly jobs: readonly LossJob[];
  /** How many of them are the accepted baseline; 0 while none is. */
  readonly baseline: number;
  /** The jobs that the scores belong to. */
  readonly counted: readonly LossJob[];
  readonly watch: Watch;
  /** Loss-side limit of the running sum, and its run length without change. */
  readonly limit: number;
  readonly runLength: number;
  /** z of this bench against the others at the same work. */
  readonly againstOthers: number | null;
}

/** Jobs a year on one chart, and false alarms a year that the shop will bear over all of them (common practice, no source). */
const [JOBS_A_YEAR, FALSE_ALARMS_A_YEAR] = [50, 1];

/**
 * A chart for each bench, operation and metal, its jobs in the order in which their work was finished in the ledger: what is written later
 * comes later, whatever day it states. A baseline fixes its jobs, and the limit by the charts there were, so that an alarm stays.
 */
export function lossCharts(jobs: readonly LossJob[], baselines: Baselines = new Map()): readonly LossChart[] {
  const groups = new Map<string, LossJob[]>();
  for (const one of jobs.toSorted((a, b) => a.seq - b.seq || a.atMs - b.atMs)) {
    const group = groups.get(chartKey(one)) ?? [];
    groups.set(chartKey(one), group);
    group.push(one);
  }
  const limits = limitsFor([...groups.values()]);
  const charts = [...groups].flatMap(([key, own]): LossChart[] => {
    const [first] = own;
    if (!first) return [];
    const { place, operation, family } = first;
    const size = baselines.get(key);
    const baseline = size === undefined ? 0 : own.filter(({ seq }) => seq < size).length;
    const { limit: least, runLength } = limits(baseline === 0 ? undefined : size);
    const watched = watch(own.map(chartJob), assumedLoss(operation, family), least, { baseline });
    const limit = watched.chart === 'single jobs' ? least : watched.limit;
    const counted = watched.counted.flatMap((at) => own[at] ?? []);
    return [{ place, operation, family, jobs: own, baseline, counted, watch: watched, limit, runLength, againstOthers: null }];
  });
  return charts.map((chart) => ({ ...chart, againstOthers: comparedWith(chart, charts) }));
}

/** Page's limit, and its run length without change, by how many charts had begun when the ledger held so many entries. */
function limitsFor(groups: readonly (readonly LossJob[])[]): (size?: number) => { readonly limit: number; readonly runLength: number } {
  const known = new Map<number, { readonly limit: number; readonly runLength: number }>();
  return (size = Number.POSITIVE_INFINITY) => {
    const charts = groups.filter(([first]) => first && first.seq < size).length;
    const runLength = runLengthFor(charts, JOBS_A_YEAR, FALSE_ALARMS_A_YEAR);
    const found = known.get(charts) ?? { limit: limitFor(runLength), runLength };
    known.set(charts, found);
    return found;
  };
}

const chartJob = (one: LossJob): ChartJob => {
  const { uG, stepNg, dof } = one.closed;
  return { lossG: lossG(one), uG, stepNg, dof, basis: one.workedG, leftOut: one.leftOut };
};

function comparedWith(chart: LossChart, charts: readonly LossChart[]): number | null {
  const alike = charts.filter(({ operation, family }) => operation === chart.operation && family === chart.family);
  const rates = alike.flatMap(({ place, watch: watched }) =>
    watched.chart === 'single jobs' ? [] : [{ bench: `${place}`, rate: watched.rate.rate, uRate: watched.rate.uRate }],
  );
  if (rates.length < 2) return null;
  return againstOthers(rates).find(({ bench }) => bench === `${chart.place}`)?.z ?? null;
}

export interface Period extends PeriodCount {
  readonly jobs: readonly (CheckedJob & { readonly stands: boolean })[];
}

/** The jobs weighed last in [fromMs, toMs), each with the verdict of its own page: how many do not agree, how many chance may bring to that, and which stand up together. */
export function periodOf(jobs: readonly CheckedJob[], by: Learned, fromMs: number, toMs: number): Period {
  const within = jobs.filter(({ atMs }) => atMs >= fromMs && atMs < toMs).toSorted((a, b) => a.atMs - b.atMs);
  const judged = within.map(by.judged);
  const count = periodCount(
    judged.map(({ closed }) => ({ pLoss: closed.pLoss, pGain: closed.pGain, flagged: closed.verdict === 'does not agree' })),
  );
  return { ...count, jobs: judged.map((one, index) => ({ ...one, stands: count.standing.includes(index) })) };
}
