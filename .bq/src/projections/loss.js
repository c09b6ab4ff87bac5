import { assumedLoss } from '../book/usual-loss.js';
import { againstOthers, limitFor, runLengthFor, usualRate, watch } from '../reckoning/drift.js';
import { ACTION_ALPHA, NOTE_ALPHA } from '../reckoning/loss-law.js';
import { periodCount } from '../reckoning/periods.js';
/** A reckoned job as a point; null where it was not checked by weight or nothing of it turns to dust. */
export function lossJob(job, { closed, closing, work, history, explained }, entries) {
  if (!closed || !work || closed.verdict === 'not checked') return null;
  const atMs = Math.max(...history.streams.filter(({ part }) => part === 'weighing').map((step) => step.atMs));
  const places = entries.flatMap(({ atMs: ms, facts }) =>
    ms <= atMs ? facts.flatMap((one) => (one.fact === 'place' ? [one.at] : [])) : [],
  );
  const flagged = Math.min(closed.pLoss, closed.pGain) <= ACTION_ALPHA;
  const { operation, metal, family, workedG, usual } = work;
  return {
    job,
    atMs,
    place: places.at(-1) ?? null,
    operation,
    metal,
    family,
    workedG,
    usual,
    closed,
    closing,
    leftOut: flagged && !explained,
  };
}
const lossG = ({ closed }) => closed.lossNg / 1e9;
/** From this many jobs on the shop has a rate of its own. */
const ENOUGH = 3;
/** The shop's own rate of loss for an operation on a metal; null while it has too few jobs. */
export function rateFrom(jobs, operation, family) {
  const own = jobs.filter((one) => one.operation === operation && one.family === family && !one.leftOut);
  if (own.length < ENOUGH) return null;
  const losses = own.map((one) => ({ value: lossG(one) / one.workedG, u: one.closed.uG / one.workedG }));
  return {
    ...usualRate(losses, assumedLoss(operation, family)),
    from: `learned from ${own.length} finished jobs of this shop at such work`,
  };
}
/** Jobs a year on one chart, and false alarms a year that the shop will bear over all of them (common practice, no source). */
const [JOBS_A_YEAR, FALSE_ALARMS_A_YEAR] = [50, 1];
/** Below this many jobs nothing but single closures is judged on a page; from here on there are charts. */
export const FROM_CHARTS = 20;
/** A chart for each bench, operation and metal, in the order their first job was weighed. */
export function lossCharts(jobs) {
  const ordered = jobs.toSorted((a, b) => a.atMs - b.atMs);
  const groups = new Map();
  for (const one of ordered) {
    const key = `${one.place}|${one.operation}|${one.family}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const runLength = runLengthFor(groups.size, JOBS_A_YEAR, FALSE_ALARMS_A_YEAR);
  const limit = groups.size === 0 ? 0 : limitFor(runLength);
  const charts = [...groups.values()].flatMap((own) => {
    const [first] = own;
    if (!first) return [];
    const { place, operation, family } = first;
    const points = own.map((one) => ({ lossG: lossG(one), uG: one.closed.uG, basis: one.workedG, leftOut: one.leftOut }));
    const watched = watch(points, assumedLoss(operation, family), limit);
    const counted = own.filter(({ leftOut }) => !leftOut);
    return [{ place, operation, family, jobs: own, counted, watch: watched, limit, runLength, againstOthers: null }];
  });
  return charts.map((chart) => ({ ...chart, againstOthers: comparedWith(chart, charts) }));
}
function comparedWith(chart, charts) {
  const alike = charts.filter(({ operation, family }) => operation === chart.operation && family === chart.family);
  const rates = alike.flatMap(({ place, watch: watched }) =>
    watched.chart === 'single jobs' ? [] : [{ bench: `${place}`, rate: watched.rate.rate, uRate: watched.rate.uRate }],
  );
  if (rates.length < 2) return null;
  return againstOthers(rates).find(({ bench }) => bench === `${chart.place}`)?.z ?? null;
}
/** The jobs weighed last in [fromMs, toMs), with how many would show by chance and which stand up together. */
export function periodOf(jobs, fromMs, toMs) {
  const within = jobs.filter(({ atMs }) => atMs >= fromMs && atMs < toMs).toSorted((a, b) => a.atMs - b.atMs);
  const judged = within.map((one) => ({ ...one, p: one.closed.pLoss, trueAlpha: one.closed.note.trueAlpha }));
  const count = periodCount(judged, NOTE_ALPHA);
  return { ...count, jobs: judged.map((one, index) => ({ ...one, stands: count.standing.includes(index) })) };
}
