// Accepting a baseline of loss: the owner reads what the jobs of one chart show, and signs that what follows is judged against them.
import { Hono } from 'hono';
import { BaselineAbove } from '../../../views/parts/baseline.tsx';
import { chartKey } from '../../book/loss-charts.ts';
import { baselineAccepted } from '../../entries/baseline-accepted.ts';
import { logSize } from '../../queries/sizes.ts';
import { type FormOf, showFormPage, type Values } from '../form/form-page.ts';
import { receiveForm } from '../form/submit.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web } from '../session/context.ts';
import { BASELINE_PATH, baselineHref } from './baseline-at.ts';
import { namesFor, shownChart } from './loss.ts';
import { lossHistory } from './loss-history.ts';

export const baseline: Resource = (web) => {
  const app = new Hono<Env>();
  app.get(BASELINE_PATH, async (c) => {
    const of = await formOf(web, c);
    return of ? showFormPage(web, c, of) : c.notFound();
  });
  app.post(BASELINE_PATH, async (c) => {
    const of = await formOf(web, c);
    return of ? receiveForm(web, c, of) : c.notFound();
  });
  return app;
};

async function formOf(web: Web, c: Ctx): Promise<FormOf | null> {
  const policy = policyFor(c);
  const { due, charts } = await lossHistory(web);
  const chart = charts(policy.baselines).find((one) => baselineHref(one) === c.req.path);
  if (!chart) return null;
  const size = await logSize(web.store);
  const jobsBy = (entries: unknown) => chart.counted.filter(({ seq }) => seq < Number(entries)).length;
  const { title, sentence, usual } = shownChart(chart, await namesFor(web, chart.jobs.slice(-1)), policy);
  const { form, fields } = baselineAccepted;
  const jobs = jobsBy(size);
  return {
    fields,
    form: { ...form, title: `Accept these ${jobs} jobs as the baseline` },
    entry: baselineAccepted.type,
    action: c.req.path,
    current: '/owner',
    extra: [
      ...([
        ['bench', chart.place ?? ''],
        ['operation', chart.operation],
        ['metal', chart.family],
      ] as const),
      ...([
        ['jobs', String(jobs)],
        ['size', String(size)],
      ] as const),
    ],
    above: BaselineAbove({ title, sentence, usual: usual.toFixed(1), jobs, accepted: policy.baselines.has(chartKey(chart)) }),
    next: () => '/loss',
    check: ({ jobs: read, size: until }: Values) => (due === 0 && read === jobsBy(until) ? [] : [LOOK_AGAIN]),
    lines: (data) => [{ type: baselineAccepted.type, data }],
  };
}

const LOOK_AGAIN = { field: '', say: 'The jobs are no longer those that you were shown. Look at them again, then sign.' };
