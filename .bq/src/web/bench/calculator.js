// The calculator: one page for each calculation, answered by its own address, so that a result can be kept and sent. It writes nothing.
import { Hono } from 'hono';
import { CalculationView, CalculatorView } from '../../../views/calculator.js';
import { entryType } from '../../ledger/registry.js';
import { thingsInHouse } from '../../queries/jobs.js';
import { SOURCES } from '../../trade/sources.js';
import { respond } from '../form/negotiate.js';
import { queried } from '../form/posted.js';
import { readFields } from '../form/write.js';
import { estimateText } from './calculations/calculation.js';
import { gauges, karat, metalSwap, plating, stock } from './calculations/metal.js';
import { ringSizes, shank, sizeChange } from './calculations/rings.js';
import { isProblem } from './calculations/shared.js';
import { stone, units } from './calculations/stones.js';

const CALCULATIONS = {
  shank,
  'size-change': sizeChange,
  'ring-sizes': ringSizes,
  stock,
  gauges,
  karat,
  'metal-swap': metalSwap,
  plating,
  stone,
  units,
};
/** Entries whose weight may be an estimate, because no balance can have shown it. */
const TAKES_ESTIMATE = ['metal_added', 'metal_cut', 'stone_unset', 'stone_supplied', 'stone_weighed', 'lemel_gathered'];
export const calculator = (web) => {
  const app = new Hono();
  app.get('/calculator', (c) => {
    const all = Object.entries(CALCULATIONS).map(([id, { title, asks }]) => ({ id, title, asks }));
    return respond(c, { title: 'Calculator', current: '/calculator', json: { calculations: all }, body: CalculatorView({ all }) });
  });
  app.get('/calculator/use', (c) => {
    const { job = '', type = '', text = '', unit = 'g', formula = '' } = c.req.query();
    if (!TAKES_ESTIMATE.some((one) => one === type)) return c.notFound();
    const weight = { basis: 'estimate', text, unit, formula };
    const query = new URLSearchParams(Object.entries(weight).map(([part, value]) => [`weight.${part}`, value]));
    return c.redirect(`/jobs/${encodeURIComponent(job)}/write/${type}?${query}`, 303);
  });
  app.get('/calculator/:calculation', async (c) => {
    const id = c.req.param('calculation');
    const of = Object.hasOwn(CALCULATIONS, id) ? CALCULATIONS[id] : undefined;
    return of ? page(web, c, of) : c.notFound();
  });
  return app;
};
async function page(web, c, of) {
  const asked = queried(c);
  const outcome = asked.size === 0 ? null : calculate(of, asked, c);
  const problems = Array.isArray(outcome) ? outcome : [];
  const result = outcome === null || Array.isArray(outcome) ? null : outcome;
  const start = Object.entries(of.start ?? {}).map(([name, value]) => [name, [value ?? '']]);
  return respond(c, {
    title: of.title,
    current: '/calculator',
    status: problems.length > 0 ? 422 : 200,
    json: { asked: Object.fromEntries(asked), result, problems },
    body: CalculationView({
      title: of.title,
      asks: of.asks,
      fields: Object.entries(of.fields).map(([name, { control, mayBeMissing }]) => ({
        name,
        label: of.labels[name] ?? name,
        hint: of.hints?.[name],
        optional: mayBeMissing,
        control,
      })),
      typed: asked.size === 0 ? new Map(start) : asked,
      problems,
      result,
      sources: [...new Set(result?.sources ?? [])].map((source) => SOURCES[source].title),
      use: result?.estimate ? await useIn(web, result) : null,
    }),
  });
}
/** What comes of what was typed, or everything that is wrong with it. */
function calculate(of, asked, c) {
  const { data, problems } = readFields(of.fields, asked, c);
  const unfit = Object.entries(data).flatMap(([name, value]) => {
    const issue = of.fields[name]?.schema.safeParse(value).error?.issues[0];
    return issue ? [{ field: name, say: issue.message }] : [];
  });
  if (problems.length + unfit.length > 0) return [...problems, ...unfit];
  const outcome = of.run(data);
  return isProblem(outcome) ? [outcome] : outcome;
}
/** The estimate, and the open jobs and entries it may go into. */
async function useIn(web, { estimate, unit = 'g', formula }) {
  const jobs = (await thingsInHouse(web.store, 'job')).filter(({ status }) => status === 'agreed' || status === 'open');
  return {
    text: estimate ? estimateText(estimate, unit) : '',
    unit,
    formula,
    jobs: jobs.map(({ id, says }) => [id, says.bag ?? '']),
    types: TAKES_ESTIMATE.map((type) => [type, entryType(type).form.title]),
  };
}
