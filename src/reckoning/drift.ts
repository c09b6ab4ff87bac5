// Loss over time at one bench, operation and alloy: the usual rate, and charts that notice when it moves.
import { normalDensity, normalTail, normalUpper, studentTail } from './distributions.ts';
import { weightedMean } from './fine-metal.ts';
import { scoreOf, type UsualLoss } from './loss-law.ts';
import { cholesky, type Matrix, solve, type Vector, whiten } from './matrix.ts';

export interface Prior {
  readonly rate: number;
  readonly uRate: number;
  readonly tau: number;
}
export interface Rate {
  readonly rate: number;
  readonly uRate: number;
  /** Spread between jobs beyond what their own u explains. */
  readonly tau: number;
  /** How many jobs it was learned from; silent where it is assumed. */
  readonly jobs?: number;
}
/** From this many jobs on the spread between them is estimated and no longer taken from the prior. */
const ENOUGH_FOR_TAU = 8;

/** Usual loss per unit of work: the prior and the jobs weighted by 1/(u² + τ²); τ by DerSimonian & Laird (1986) from eight jobs on. */
export function usualRate(losses: readonly { readonly value: number; readonly u: number }[], prior: Prior): Rate {
  const tau = losses.length < ENOUGH_FOR_TAU ? prior.tau : betweenJobs(losses);
  const spread = losses.map(({ value, u }) => ({ value, u: Math.hypot(u, tau) }));
  const { value, u } = weightedMean([{ value: prior.rate, u: prior.uRate }, ...spread]);
  return { rate: value, uRate: u, tau, jobs: losses.length };
}

function betweenJobs(losses: readonly { readonly value: number; readonly u: number }[]): number {
  const mean = weightedMean(losses).value;
  const weights = losses.map(({ u }) => u ** -2);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const q = losses.reduce((sum, { value, u }) => sum + ((value - mean) / u) ** 2, 0);
  const scale = total - weights.reduce((sum, w) => sum + w * w, 0) / total;
  return Math.sqrt(Math.max(0, (q - (losses.length - 1)) / scale));
}

/** An estimated spread of zero would make every job suspect: it is never taken below half the prior. */
export const flooredTau = (tau: number, prior: Prior): number => Math.max(tau, prior.tau / 2);

/** Self-starting scores Q_n, each a standard normal while nothing changes; null for the first two (Quesenberry 1991; formula from memory). */
export function selfStarting(values: Vector): readonly (number | null)[] {
  return values.map((value, i) => {
    if (i < 2) return null;
    const before = values.slice(0, i);
    const mean = before.reduce((sum, x) => sum + x, 0) / i;
    const s = Math.sqrt(before.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (i - 1));
    if (s === 0) return null;
    return normalUpper(studentTail((Math.sqrt(i / (i + 1)) * (value - mean)) / s, i - 1));
  });
}

interface Alarm {
  readonly at: number;
  readonly side: 'loss' | 'gain';
  /** First score after the sum last was zero: when the change probably began. */
  readonly since: number;
  /** Size of the change in spreads per job: k + S/N. */
  readonly size: number;
}
export interface RunningSums {
  readonly high: readonly number[];
  readonly low: readonly number[];
  readonly alarms: readonly Alarm[];
}

/** Page's test on both sides: S = max(0, S + w·z − k·w²), alarm when S > h; `restart` sets the sum to 0 after an alarm (Page 1954). `weights`: the share of the shift sought that each score would show, 1 where silent, so that a poorly weighed job neither hides a shift nor makes one. */
export function runningSums(scores: Vector, k: number, h: number, restart = true, weights: Vector = []): RunningSums {
  const alarms: Alarm[] = [];
  const side = (name: Alarm['side'], sign: 1 | -1) => {
    let sum = 0;
    let since = 0;
    return scores.map((score, at) => {
      const weight = weights[at] ?? 1;
      sum = Math.max(0, sum + sign * weight * score - k * weight ** 2);
      const shown = sum;
      if (sum > h) alarms.push({ at, side: name, since, size: k + sum / (at - since + 1) });
      if (sum > h && restart) sum = 0;
      if (sum === 0) since = at + 1;
      return shown;
    });
  };
  const [high, low] = [side('loss', 1), side('gain', -1)];
  return { high, low, alarms: alarms.sort((a, b) => a.at - b.at) };
}

/** Panels of Simpson's rule for the run-length equation: with 100 its error is below 1e-6. */
const PANELS = 100;

/** Average run length of a one-sided running sum from 0 when scores are normal about `shift`: L(z) = 1 + L(0)Φ(k − z − μ) + ∫ L(y)φ(y + k − z − μ)dy (Goel & Wu 1971). */
export function averageRunLength(k: number, h: number, shift = 0): number {
  const step = h / PANELS;
  const points = Array.from({ length: PANELS + 1 }, (_, i) => i * step);
  const weight = (j: number) => ((j === 0 || j === PANELS ? 1 : j % 2 === 1 ? 4 : 2) * step) / 3;
  const system = points.map((z, i) =>
    points.map((y, j) => {
      const reset = j === 0 ? normalTail(z + shift - k) : 0;
      return Number(i === j) - reset - weight(j) * normalDensity(y + k - z - shift);
    }),
  );
  return (
    solve(
      system,
      points.map(() => 1),
    )[0] ?? Number.NaN
  );
}

/** The limit h whose one-sided run length without change is `jobs`: ln(run length) grows by about 2k with h, so a few secant steps find it. */
export function limitFor(jobs: number, k = 0.5): number {
  const excess = (h: number) => Math.log(averageRunLength(k, h) / jobs);
  let [h, slope] = [Math.max(0.1, Math.log(1 + 2 * k * k * jobs) / (2 * k) - 1), 2 * k];
  for (let step = 0, was = excess(h); step < 30 && Math.abs(was) > 1e-7; step++) {
    const next = Math.max(0, h - was / slope);
    const is = excess(next);
    if (next !== h && is !== was) slope = (is - was) / (next - h);
    [h, was] = [next, is];
  }
  return h;
}

/** Run length to ask for: charts × jobs a year on each ÷ false alarms a year that the shop will bear. */
export const runLengthFor = (charts: number, jobsAYear: number, falseAlarmsAYear: number): number =>
  (charts * jobsAYear) / falseAlarmsAYear;

/** One job on a chart: its loss, u, and the work it is counted by (metal worked, length cut, or 1). A flagged job is left out until a person has explained it. */
export interface ChartJob {
  readonly lossG: number;
  readonly uG: number;
  readonly stepNg?: number;
  readonly dof?: number;
  readonly basis: number;
  readonly leftOut?: boolean;
}
/** `counted`: positions of the jobs that the scores belong to. On an accepted baseline these are the jobs after it, judged by it alone, so that no later job teaches the chart and no alarm goes away. */
export type Watch =
  | { readonly chart: 'single jobs'; readonly counted: readonly number[] }
  | {
      readonly chart: 'self-starting' | 'usual rate' | 'accepted baseline';
      readonly counted: readonly number[];
      readonly scores: Vector;
      readonly rate: Rate;
      readonly sums: RunningSums;
      /** What a sum must pass. */
      readonly limit: number;
    };
/** No single job moves a running sum by more than this many spreads: one that does not agree is told by itself. */
const MOST_SCORE = 4;

const FROM_SELF_STARTING = 3;
/** From this many jobs on there is a chart by the usual rate, and a baseline may be accepted. */
export const FROM_USUAL_RATE = 20;

/** The chart a stream of jobs has earned: on an accepted baseline (its first `baseline` jobs) later jobs are scored against it; else below 3 single closures only, to 19 self-starting, from 20 scores against the rate learned from all. */
export function watch(jobs: readonly ChartJob[], prior: Prior, h: number, { k = 0.5, baseline = 0 } = {}): Watch {
  const within = (least: number, most: number) => [...jobs.keys()].filter((at) => at >= least && at < most);
  const taught = within(0, baseline === 0 ? jobs.length : baseline).filter((at) => !jobs[at]?.leftOut);
  if (taught.length < FROM_SELF_STARTING) return { chart: 'single jobs', counted: taught };
  const losses = taught.flatMap((at) => shareOf(jobs[at]));
  const rate = usualRate(losses, prior);
  if (baseline === 0 && taught.length < FROM_USUAL_RATE) {
    const scores = selfStarting(losses.map(({ value }) => value)).flatMap((q) => q ?? []);
    return {
      chart: 'self-starting',
      counted: taught.slice(taught.length - scores.length),
      scores,
      rate,
      sums: runningSums(scores, k, h),
      limit: h,
    };
  }
  const counted = baseline === 0 ? taught : within(baseline, jobs.length);
  const spread = flooredTau(rate.tau, prior);
  const scores = counted.map((at) => chartScore(jobs[at], rate.rate, spread, prior));
  const weights = counted.flatMap((at) => shareOf(jobs[at]).map(({ u }) => spread / Math.hypot(spread, u)));
  const limit = h * skewed(spread / leastRate(rate.rate, prior));
  const sums = runningSums(scores, k + (DOUBT_SHARE * rate.uRate) / spread, limit, true, weights);
  return { chart: baseline === 0 ? 'usual rate' : 'accepted baseline', counted, scores, rate, sums, limit };
}

const shareOf = (job: ChartJob | undefined) => (job ? [{ value: job.lossG / job.basis, u: job.uG / job.basis }] : []);

/** How much of the doubt of a baseline's mean the allowance bears (by simulation). */
const DOUBT_SHARE = 0.35;

/** A few dozen jobs show little of the tail of a skewed law: the limit grows with its spread, as a share of its mean, to so many times (by simulation). */
const [SKEWED_FROM, LIMIT_PER_SKEW, LIMIT_MOST] = [0.45, 2, 1.8];
const skewed = (share: number): number => Math.min(LIMIT_MOST, 1 + LIMIT_PER_SKEW * Math.max(0, share - SKEWED_FROM));

/** The normal score of one job's loss under the law of its chart. */
function chartScore(job: ChartJob | undefined, rate: number, spread: number, prior: Prior): number {
  if (!job) return 0;
  const { lossG, uG, stepNg = 0, dof = Number.POSITIVE_INFINITY, basis } = job;
  const usual = { meanG: leastRate(rate, prior) * basis, tauG: spread * basis };
  return Math.min(MOST_SCORE, Math.max(-MOST_SCORE, scoreOf(Math.round(lossG * 1e9), { uG, stepNg, dof, usual })));
}

/** A learned rate may come out at nothing or below it: dust is never less than this part of what is assumed. */
const LEAST_SHARE = 20;
const leastRate = (rate: number, prior: Prior): number => Math.max(rate, prior.rate / LEAST_SHARE);

/** A few jobs show little of a skewed spread: it is weighed as if this many more had been seen whose spread is so many times their mean (by simulation; common practice, no source). */
const [SEEN_BEFORE, SPREAD_TO_MEAN] = [20, 1.25];
const spreadOver = (mean: number, tau: number, seen: number): number =>
  Math.sqrt((seen * tau ** 2 + SEEN_BEFORE * (SPREAD_TO_MEAN * mean) ** 2) / (seen + SEEN_BEFORE));

/** The usual loss in grams of that many grams worked, at a rate. */
export function usualLoss({ rate, uRate, tau, jobs = 0 }: Rate, prior: Prior, workedG: number): UsualLoss {
  const mean = leastRate(rate, prior);
  const spread = flooredTau(jobs === 0 ? tau : spreadOver(mean, tau, jobs < ENOUGH_FOR_TAU ? 0 : jobs), prior);
  return { meanG: mean * workedG, tauG: Math.hypot(spread, uRate) * workedG };
}

/** Each bench against the others together: z of its rate, since a steady theft from the first day shows on no chart of its own. */
export function againstOthers(benches: readonly { readonly bench: string; readonly rate: number; readonly uRate: number }[]) {
  return benches.map(({ bench, rate, uRate }) => {
    const others = benches.filter((other) => other.bench !== bench).map((other) => ({ value: other.rate, u: other.uRate }));
    const { value, u } = weightedMean(others);
    return { bench, z: others.length === 0 ? 0 : (rate - value) / Math.hypot(uRate, u) };
  });
}

/** Independent scores from inventory differences that share inventories: L⁻¹·MUF (SITMUF; Sandia MAPIT theory pages). */
export const whitened = (differences: Vector, covariance: Matrix): readonly number[] => whiten(cholesky(covariance), differences);
