// The calculator: one page for each calculation, answered by its own address, so that a result can be kept and sent. It writes nothing.
import { Hono } from 'hono';
import { CalculationView, CalculatorView } from '../../../views/calculator.tsx';
import type { Posted, Problem } from '../../book/codec.ts';
import { allIn, controlIn, type Words, wordsIn } from '../../book/us-words.ts';
import { entryType } from '../../ledger/registry.ts';
import { thingsInHouse } from '../../queries/jobs.ts';
import { SOURCES } from '../../trade/sources.ts';
import { respond } from '../form/negotiate.ts';
import { queried } from '../form/posted.ts';
import { type Fieldset, readFields } from '../form/write.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web } from '../session/context.ts';
import { type Calculation, estimateText, type Outcome, type Result } from './calculations/calculation.ts';
import { gauges, karat, metalSwap, plating, stock } from './calculations/metal.ts';
import { ringSizes, shank, sizeChange } from './calculations/rings.ts';
import { isProblem } from './calculations/shared.ts';
import { stone, units } from './calculations/stones.ts';

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
} as unknown as Readonly<Record<string, Calculation>>;

/** Entries whose weight may be an estimate, because no balance can have shown it. */
const TAKES_ESTIMATE = ['metal_added', 'metal_cut', 'stone_unset', 'stone_supplied', 'stone_weighed', 'lemel_gathered'] as const;

export const calculator: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/calculator', (c) => {
    const { words } = policyFor(c);
    const all = Object.entries(CALCULATIONS).map(([id, { title, asks }]) => ({ id, ...allIn(words, { title, asks }) }));
    return respond(c, { title: 'Calculator', current: '/calculator', json: { calculations: all }, body: CalculatorView({ all }) });
  });
  app.get('/calculator/use', (c) => {
    const { job = '', type = '', text = '', unit = 'g', formula = '' } = c.req.query();
    if (!TAKES_ESTIMATE.some((one) => one === type)) return c.notFound();
    const weight = { basis: 'estimate', text, unit, formula };
    const query = new URLSearchParams(Object.entries(weight).map(([part, value]): [string, string] => [`weight.${part}`, value]));
    return c.redirect(`/jobs/${encodeURIComponent(job)}/write/${type}?${query}`, 303);
  });
  app.get('/calculator/:calculation', async (c) => {
    const id = c.req.param('calculation');
    const of = Object.hasOwn(CALCULATIONS, id) ? CALCULATIONS[id] : undefined;
    return of ? page(web, c, of) : c.notFound();
  });
  return app;
};

async function page(web: Web, c: Ctx, of: Calculation): Promise<Response> {
  const asked = queried(c);
  const outcome = asked.size === 0 ? null : calculate(of, asked, c);
  const problems = Array.isArray(outcome) ? (outcome as readonly Problem[]) : [];
  const result = outcome === null || Array.isArray(outcome) ? null : (outcome as Result);
  const start = Object.entries(of.start ?? {}).map(([name, value]) => [name, [value ?? '']] as const);
  const { words } = policyFor(c);
  return respond(c, {
    title: wordsIn(words, of.title),
    current: '/calculator',
    status: problems.length > 0 ? 422 : 200,
    json: { asked: Object.fromEntries(asked), result, problems },
    body: CalculationView({
      ...allIn(words, { title: of.title, asks: of.asks }),
      problems: problems.map(({ field, say }) => ({ field, say: wordsIn(words, say) })),
      result: result && resultIn(words, result),
      fields: Object.entries(of.fields).map(([name, { control, mayBeMissing }]) => ({
        name,
        label: wordsIn(words, of.labels[name] ?? name),
        hint: allIn(words, of.hints?.[name]),
        optional: mayBeMissing,
        control: controlIn(words, control),
      })),
      typed: asked.size === 0 ? new Map(start) : asked,
      sources: [...new Set(result?.sources ?? [])].map((source) => SOURCES[source].title),
      use: result?.estimate ? await useIn(web, result) : null,
    }),
  });
}

/** Its rows and its note in the words of the country; the id of its formula stays. */
const resultIn = (words: Words, result: Result): Result => ({
  ...result,
  rows: allIn(words, result.rows),
  ...(result.note === undefined ? {} : { note: wordsIn(words, result.note) }),
});

/** What comes of what was typed, or everything that is wrong with it. */
function calculate(of: Calculation, asked: Posted, c: Ctx): Result | readonly Problem[] {
  const { data, problems } = readFields(of.fields as Fieldset, asked, c);
  const unfit = Object.entries(data).flatMap(([name, value]) => {
    const issue = of.fields[name]?.schema.safeParse(value).error?.issues[0];
    return issue ? [{ field: name, say: issue.message }] : [];
  });
  if (problems.length + unfit.length > 0) return [...problems, ...unfit];
  const outcome: Outcome = of.run(data);
  return isProblem(outcome) ? [outcome] : outcome;
}

/** The estimate, and the open jobs and entries it may go into. */
async function useIn(web: Web, { estimate, unit = 'g', formula }: Result) {
  const jobs = (await thingsInHouse(web.store, 'job')).filter(({ status }) => status === 'agreed' || status === 'open');
  return {
    text: estimate ? estimateText(estimate, unit) : '',
    unit,
    formula,
    jobs: jobs.map(({ id, says }) => [id, says.bag ?? ''] as const),
    types: TAKES_ESTIMATE.map((type) => [type, entryType(type).form.title] as const),
  };
}
