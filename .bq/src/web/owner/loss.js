// Loss over time for the owner: charts by bench, work and metal, and the list of a period's jobs.
import { Hono } from 'hono';
import { LossView } from '../../../views/loss.js';
import { WeightsView } from '../../../views/weights.js';
import { OPERATIONS } from '../../book/usual-loss.js';
import { FROM_CHARTS, lossCharts, periodOf } from '../../projections/loss.js';
import { thingsAt } from '../../queries/things.js';
import { figuresOf, ownerJob, ownerPeriod, ownerTrend, VERDICT_WORDS } from '../../reckoning/words.js';
import { civilDateOf, formatCivilDate, instant } from '../../units/dates.js';
import { respond } from '../form/negotiate.js';
import { wordsFor } from '../job/words.js';
import { policyFor } from '../session/context.js';
import { lossHistory } from './loss-history.js';
import { daysOf, rangeOf } from './period.js';
export const loss = (web) => {
  const app = new Hono();
  app.get('/loss', async (c) => {
    const policy = policyFor(c);
    const { jobs, due } = await lossHistory(web);
    const names = await namesFor(web, jobs);
    const charts = lossCharts(jobs).map((chart) => shownChart(chart, names, policy));
    const note = `The ${jobs.length} finished jobs that were weighed in and out. Filings that were weighed are not loss.${stillDue(due)}`;
    return respond(c, { title: 'Loss', current: '/owner', json: { note, charts }, body: LossView({ charts, note }) });
  });
  app.get('/owner/weights', (c) => weights(web, c));
  return app;
};
async function weights(web, c) {
  const policy = policyFor(c);
  const days = daysOf(web, c);
  const { jobs, due } = await lossHistory(web);
  const period = periodOf(jobs, ...rangeOf(days, policy));
  const names = await namesFor(web, period.jobs);
  const rows = period.jobs.map((one) => ({
    ...{ job: one.job, bag: names(one.job), stands: one.stands },
    ...{ day: dayWords(one.atMs, policy), loss: gapWords(one.closed), says: VERDICT_WORDS[one.closed.verdict] },
  }));
  const page = { ...days, sentence: `${ownerPeriod(period)}${stillDue(due)}`, standing: period.standing.length, rows };
  return respond(c, { title: 'Weights of a period', current: '/owner', json: page, body: WeightsView(page) });
}
/** What is not in the figures yet, after a start or when a balance is corrected: it is said, never left out in silence. */
const stillDue = (due) => (due === 0 ? '' : ` ${due} finished jobs are still being reckoned and are not in it yet.`);
/** "0.03 g ± 0.05 g": a loss, or less than nothing, with two standard uncertainties. */
function gapWords(closed) {
  const { gap, give } = figuresOf(closed);
  return `${closed.lossNg < 0 ? '\u2212' : ''}${gap} ± ${give}`;
}
const dayWords = (ms, { zone }) => formatCivilDate(civilDateOf(instant(ms), zone));
async function namesFor(web, jobs) {
  const ids = jobs.flatMap(({ job, place }) => (place === null ? [job] : [job, place]));
  const known = new Map((await thingsAt(web.store, ids)).map((thing) => [thing.id, wordsFor(web, thing)]));
  return (id) => known.get(id) ?? id;
}
function shownChart(chart, names, policy) {
  const { place, operation, family, jobs, watch } = chart;
  const title = `${place === null ? 'Bench not said' : names(place)} · ${OPERATIONS[operation]} · ${family}`;
  const alarm = watch.chart === 'single jobs' ? undefined : watch.sums.alarms.findLast(({ side }) => side === 'loss');
  const trend = alarm ? ownerTrend(title, sinceWords(chart, alarm.since, policy), alarm.size, chart.runLength) : null;
  const enough = watch.chart === 'usual rate';
  return {
    ...{
      title,
      isOff: enough && trend !== null,
      sentence: enough ? (trend ?? ORDINARY) : `Too few jobs to judge (${chart.counted.length} of ${FROM_CHARTS}).`,
    },
    more: [...(!enough && trend ? [`An early sign, on few jobs. ${trend}`] : []), ...compared(chart)],
    losses: jobs.map((one) => ({ value: permille(one), leftOut: one.leftOut, ...pointOf(one, names, policy) })),
    usual: watch.chart === 'single jobs' ? 0 : 1000 * watch.rate.rate,
    sums: watch.chart === 'usual rate' ? { limit: chart.limit, points: sumPoints(chart, watch.sums, names, policy) } : null,
    rows: jobs.map((one) => ({ ...rowOf(one, names, policy) })),
  };
}
const ORDINARY = 'Ordinary: losses have not moved.';
const permille = ({ closed, workedG }) => closed.lossNg / 1e6 / workedG;
const pointOf = (one, names, policy) => ({
  href: `/jobs/${one.job}/reckoning`,
  words: `${names(one.job)}, ${dayWords(one.atMs, policy)}: ${ownerJob(one.closed)}`,
});
const rowOf = (one, names, policy) => ({
  ...{ job: one.job, bag: names(one.job), day: dayWords(one.atMs, policy), loss: `${permille(one).toFixed(1)} mg/g` },
  says: `${ownerJob(one.closed)}${one.leftOut ? ' Left out of what is usual until somebody says why.' : ''}`,
});
function sumPoints({ counted }, sums, names, policy) {
  return counted.map((one, i) => ({ value: sums.high[i] ?? 0, other: sums.low[i] ?? 0, ...pointOf(one, names, policy) }));
}
/** The day of the job at which the change probably began; early scores begin at the third job. */
function sinceWords({ counted, watch }, since, policy) {
  const first = counted[since + (watch.chart === 'self-starting' ? 2 : 0)];
  return first ? dayWords(first.atMs, policy) : 'the first job';
}
/** Beyond three, chance alone is one in several hundred comparisons. */
const compared = ({ againstOthers }) =>
  againstOthers === null || Math.abs(againstOthers) <= 3
    ? []
    : [`It loses ${againstOthers > 0 ? 'more' : 'less'} than the other benches at the same work, by more than chance explains.`];
