// Loss over time at one bench, operation and alloy: the usual rate, and charts that notice when it moves.
import { normalDensity, normalTail, normalUpper, studentTail } from './distributions.js';
import { weightedMean } from './fine-metal.js';
import { cholesky, solve, whiten } from './matrix.js';

/** From this many jobs on the spread between them is estimated and no longer taken from the prior. */
const ENOUGH_FOR_TAU = 8;
/** Usual loss per unit of work: the prior and the jobs weighted by 1/(u² + τ²); τ by DerSimonian & Laird (1986) from eight jobs on. */
export function usualRate(losses, prior) {
  const tau = losses.length < ENOUGH_FOR_TAU ? prior.tau : betweenJobs(losses);
  const spread = losses.map(({ value, u }) => ({ value, u: Math.hypot(u, tau) }));
  const { value, u } = weightedMean([{ value: prior.rate, u: prior.uRate }, ...spread]);
  return { rate: value, uRate: u, tau };
}
function betweenJobs(losses) {
  const mean = weightedMean(losses).value;
  const weights = losses.map(({ u }) => u ** -2);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const q = losses.reduce((sum, { value, u }) => sum + ((value - mean) / u) ** 2, 0);
  const scale = total - weights.reduce((sum, w) => sum + w * w, 0) / total;
  return Math.sqrt(Math.max(0, (q - (losses.length - 1)) / scale));
}
/** An estimated spread of zero would make every job suspect: it is never taken below half the prior. */
export const flooredTau = (tau, prior) => Math.max(tau, prior.tau / 2);
/** Self-starting scores Q_n, each a standard normal while nothing changes; null for the first two (Quesenberry 1991; formula from memory). */
export function selfStarting(values) {
  return values.map((value, i) => {
    if (i < 2) return null;
    const before = values.slice(0, i);
    const mean = before.reduce((sum, x) => sum + x, 0) / i;
    const s = Math.sqrt(before.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (i - 1));
    if (s === 0) return null;
    return normalUpper(studentTail((Math.sqrt(i / (i + 1)) * (value - mean)) / s, i - 1));
  });
}
/** Page's test on both sides: S = max(0, S + z − k), alarm when S > h; `restart` sets the sum to 0 after an alarm (Page 1954). */
export function runningSums(scores, k, h, restart = true) {
  const alarms = [];
  const side = (name, sign) => {
    let sum = 0;
    let since = 0;
    return scores.map((score, at) => {
      sum = Math.max(0, sum + sign * score - k);
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
export function averageRunLength(k, h, shift = 0) {
  const step = h / PANELS;
  const points = Array.from({ length: PANELS + 1 }, (_, i) => i * step);
  const weight = (j) => ((j === 0 || j === PANELS ? 1 : j % 2 === 1 ? 4 : 2) * step) / 3;
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
/** The limit h whose one-sided run length without change is `jobs`. */
export function limitFor(jobs, k = 0.5) {
  let [low, high] = [0, 2];
  while (averageRunLength(k, high) < jobs) high *= 2;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (averageRunLength(k, middle) < jobs) low = middle;
    else high = middle;
  }
  return high;
}
/** Run length to ask for: charts × jobs a year on each ÷ false alarms a year that the shop will bear. */
export const runLengthFor = (charts, jobsAYear, falseAlarmsAYear) => (charts * jobsAYear) / falseAlarmsAYear;
const [FROM_SELF_STARTING, FROM_USUAL_RATE] = [3, 20];
/** The chart a stream of jobs has earned: below 3 single closures only, to 19 self-starting, from 20 scores against the usual rate. */
export function watch(jobs, prior, h, k = 0.5) {
  const counted = jobs.filter(({ leftOut }) => !leftOut);
  if (counted.length < FROM_SELF_STARTING) return { chart: 'single jobs' };
  const losses = counted.map(({ lossG, uG, basis }) => ({ value: lossG / basis, u: uG / basis }));
  const rate = usualRate(losses, prior);
  const tau = flooredTau(rate.tau, prior);
  const early = counted.length < FROM_USUAL_RATE;
  const scores = early
    ? selfStarting(losses.map(({ value }) => value)).flatMap((q) => q ?? [])
    : losses.map(({ value, u }) => (value - rate.rate) / Math.hypot(u, tau));
  return { chart: early ? 'self-starting' : 'usual rate', scores, rate, sums: runningSums(scores, k, h) };
}
/** Each bench against the others together: z of its rate, since a steady theft from the first day shows on no chart of its own. */
export function againstOthers(benches) {
  return benches.map(({ bench, rate, uRate }) => {
    const others = benches.filter((other) => other.bench !== bench).map((other) => ({ value: other.rate, u: other.uRate }));
    const { value, u } = weightedMean(others);
    return { bench, z: others.length === 0 ? 0 : (rate - value) / Math.hypot(uRate, u) };
  });
}
/** Independent scores from inventory differences that share inventories: L⁻¹·MUF (SITMUF; Sandia MAPIT theory pages). */
export const whitened = (differences, covariance) => whiten(cholesky(covariance), differences);
