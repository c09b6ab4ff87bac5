// Loss over time for the owner: charts by bench, work and metal, and the list of a period's jobs.
import { Hono } from 'hono';
import type { RunPoint } from '../../../views/charts/run.tsx';
import { type ChartShown, LossView } from '../../../views/loss.tsx';
import { WeightsView } from '../../../views/weights.tsx';
import { OPERATIONS } from '../../book/usual-loss.ts';
import { type CheckedJob, type LossChart, type LossJob, periodOf } from '../../projections/loss.ts';
import { thingsAt } from '../../queries/things.ts';
import type { Closure } from '../../reckoning/closure.ts';
import { FROM_USUAL_RATE } from '../../reckoning/drift.ts';
import { figuresOf, ownerPeriod, ownerTrend, signedLoss, VERDICT_WORDS } from '../../reckoning/words.ts';
import { dayIn } from '../../units/dates.ts';
import { respond } from '../form/negotiate.ts';
import { wordsFor } from '../job/words.ts';
import { type Ctx, type Env, type Policy, policyFor, type Resource, type Web } from '../session/context.ts';
import { baselineHref } from './baseline-at.ts';
import { lossHistory } from './loss-history.ts';
import { daysOf, rangeOf } from './period.ts';

/** Words for places and bags of jobs, by id. */
type Names = (id: string) => string;

export const loss: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/loss', async (c) => {
    const policy = policyFor(c);
    const { jobs, due, charts: draw } = await lossHistory(web);
    const drawn = draw(policy.baselines);
    const names = await namesFor(
      web,
      drawn.flatMap((chart) => chart.jobs.slice(-DRAWN_MAX)),
    );
    const charts = drawn.map((chart) => shownChart(chart, names, policy));
    const note = `The ${jobs.length} finished jobs of work that leaves dust, checked by weight. Filings that were weighed are not loss.${stillDue(due)}`;
    return respond(c, { title: 'Loss', current: '/owner', json: { due, note, charts }, body: LossView({ charts, note }) });
  });
  app.get('/owner/weights', (c) => weights(web, c));
  return app;
};

async function weights(web: Web, c: Ctx): Promise<Response> {
  const policy = policyFor(c);
  const days = daysOf(web, c);
  const { checked, learned, due } = await lossHistory(web);
  const period = periodOf(checked, learned, ...rangeOf(days, policy));
  const names = await namesFor(web, period.jobs);
  const rows = period.jobs.map((one) => ({
    ...{ job: one.job, bag: names(one.job), stands: one.stands },
    ...{ day: dayWords(one.atMs, policy), loss: lossWords(one.closed), says: VERDICT_WORDS[one.closed.verdict] },
  }));
  const page = { ...days, sentence: `${ownerPeriod(period)}${stillDue(due)}`, standing: period.standing.length, rows };
  return respond(c, { title: 'Weights of a period', current: '/owner', json: page, body: WeightsView(page) });
}

/** What is not in the figures yet, after a start or when a balance is corrected: it is said, never left out in silence. */
const stillDue = (due: number): string => (due === 0 ? '' : ` ${due} finished jobs are still being reckoned and are not in it yet.`);

const lossWords = (closed: Closure): string => signedLoss(figuresOf(closed));

const dayWords = (ms: number, { zone }: Policy) => dayIn(zone)(ms);

/** Words for these jobs and the places they were at. */
export async function namesFor(web: Web, jobs: readonly (CheckedJob & { readonly place?: string | null })[]): Promise<Names> {
  const ids = jobs.flatMap(({ job, place }) => [job, place ?? []].flat());
  const known = new Map((await thingsAt(web.store, ids)).map((thing) => [thing.id, wordsFor(web, thing)]));
  return (id) => known.get(id) ?? id;
}

/** A chart as it is told and drawn. */
export function shownChart(chart: LossChart, names: Names, policy: Policy): ChartShown {
  const { place, operation, family, watch } = chart;
  const jobs = chart.jobs.slice(-DRAWN_MAX);
  const title = `${place === null ? 'Bench not said' : names(place)} · ${OPERATIONS[operation]} · ${family}`;
  const alarm = watch.chart === 'single jobs' ? undefined : watch.sums.alarms.findLast(({ side }) => side === 'loss');
  const trend = alarm ? ownerTrend(title, sinceWords(chart, alarm.since, policy), alarm.size, chart.runLength) : null;
  const enough = watch.chart === 'usual rate' || watch.chart === 'accepted baseline';
  return {
    ...{
      title,
      isOff: enough && trend !== null,
      sentence: enough ? (trend ?? ordinaryWords(chart)) : `Too few jobs to judge (${chart.counted.length} of ${FROM_USUAL_RATE}).`,
    },
    accept: watch.chart === 'usual rate' ? { href: baselineHref(chart), jobs: chart.counted.length } : null,
    more: [
      ...judgedWords(chart),
      ...(!enough && trend ? [`An early sign, on few jobs. ${trend}`] : []),
      ...compared(chart),
      ...drawnOf(chart),
    ],
    losses: jobs.map((one) => ({ value: permille(one), leftOut: one.leftOut, ...pointOf(one, names, policy) })),
    usual: watch.chart === 'single jobs' ? 0 : 1000 * watch.rate.rate,
    sums: enough && chart.counted.length > 0 ? { limit: chart.limit, points: sumPoints(chart, watch.sums, names, policy) } : null,
    rows: jobs.map((one) => ({ ...rowOf(one, names, policy) })),
  };
}
/** Every job is judged; so many of a chart are drawn and listed. */
const DRAWN_MAX = 100;
const drawnOf = ({ jobs }: LossChart): readonly string[] =>
  jobs.length <= DRAWN_MAX ? [] : [`The last ${DRAWN_MAX} of ${jobs.length} jobs are drawn; all of them are judged.`];
/** So many jobs a change by one usual spread may take before it shows (simulated: 95 times in 100 by then). */
const TO_SHOW = 80;
const ordinaryWords = ({ counted }: LossChart): string =>
  counted.length === 0
    ? 'No job was finished here since the baseline was accepted.'
    : `Ordinary: no alarm in ${counted.length === 1 ? '1 job' : `${counted.length} jobs`}.${counted.length < TO_SHOW ? ' A small change takes more jobs than these to show.' : ''}`;
const judgedWords = ({ watch, baseline }: LossChart): readonly string[] =>
  watch.chart === 'accepted baseline' ? [`Later jobs are judged against the ${baseline} jobs that were accepted as the baseline.`] : [];

const permille = ({ closed, workedG }: LossJob): number => closed.lossNg / 1e6 / workedG;

const pointOf = (one: LossJob, names: Names, policy: Policy): Pick<RunPoint, 'href' | 'words'> => ({
  href: `/jobs/${one.job}/reckoning`,
  words: `${names(one.job)}, ${dayWords(one.atMs, policy)}: ${lossWords(one.closed)}`,
});

const rowOf = (one: LossJob, names: Names, policy: Policy): ChartShown['rows'][number] => ({
  ...{ job: one.job, bag: names(one.job), day: dayWords(one.atMs, policy), loss: `${permille(one).toFixed(1)} mg/g` },
  says: `${lossWords(one.closed)}${one.leftOut ? ' Left out of what is usual until somebody says why.' : ''}`,
});

function sumPoints(
  { counted }: LossChart,
  sums: { high: readonly number[]; low: readonly number[] },
  names: Names,
  policy: Policy,
): readonly RunPoint[] {
  const from = Math.max(0, counted.length - DRAWN_MAX);
  return counted
    .slice(from)
    .map((one, i) => ({ value: sums.high[from + i] ?? 0, other: sums.low[from + i] ?? 0, ...pointOf(one, names, policy) }));
}

/** The day of the job at which the change probably began; early scores begin at the third job. */
function sinceWords({ counted }: LossChart, since: number, policy: Policy): string {
  const first = counted[since];
  return first ? dayWords(first.atMs, policy) : 'the first job';
}

/** Beyond three, chance alone is one in several hundred comparisons. */
const compared = ({ againstOthers }: LossChart): readonly string[] =>
  againstOthers === null || Math.abs(againstOthers) <= 3
    ? []
    : [`It loses ${againstOthers > 0 ? 'more' : 'less'} than the other benches at the same work, by more than chance explains.`];
