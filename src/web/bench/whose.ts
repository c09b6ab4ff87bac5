// "Whose is this?": a piece or stone without a label on the pan, and which of those that are here it could be by its weight. It writes nothing.
import { Hono } from 'hono';
import { type WhoseLine, WhoseView } from '../../../views/whose.tsx';
import { optional, stated, weight } from '../../book/entry.ts';
import { controlIn, type Words, wordsIn } from '../../book/us-words.ts';
import { choice, decimal } from '../../book/values.ts';
import type { Thing } from '../../ledger/thing.ts';
import { type Found, type Held, stepOf, type Whose, whoseIs } from '../../ledger/whose.ts';
import { isNoWeight } from '../../projections/history.ts';
import { thingsInHouse } from '../../queries/jobs.ts';
import { foundWords } from '../../reckoning/stone-words.ts';
import { toStep } from '../../units/rounded.ts';
import { caratWords, type Reading, readingWords } from '../../weighing/reading.ts';
import { balancesShown } from '../form/balances-shown.ts';
import { respond } from '../form/negotiate.ts';
import { queried } from '../form/posted.ts';
import { readFields } from '../form/write.ts';
import { wordsFor } from '../job/words.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web } from '../session/context.ts';

const FIELDS = {
  what: stated(choice({ piece: 'A piece', stone: 'A loose stone' })),
  weight: weight(),
  sizeMm: optional(stated(decimal('mm'))),
};
const LABELS = { what: 'What is it?', weight: 'Weight, clean and dry', sizeMm: 'A stone’s longest way across, in mm' } as const;

export const whose: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/whose', (c) => page(web, c));
  return app;
};

async function page(web: Web, c: Ctx): Promise<Response> {
  const asked = queried(c);
  const { data, problems } = asked.size === 0 ? { data: {}, problems: [] } : readFields(FIELDS, asked, c);
  const read = data.weight as Reading | undefined;
  const unfit = read && isNoWeight(read) ? [{ field: 'weight', say: 'Dry it and weigh it alone: such a weight is not its own.' }] : [];
  const all = [...problems, ...unfit];
  const policy = policyFor(c);
  const found = asked.size > 0 && all.length === 0 && read ? foundIn(data, read) : null;
  const answer = found ? await answerOf(web, c, found) : null;
  return respond(c, {
    title: 'Whose is this?',
    current: '/bench',
    status: all.length > 0 ? 422 : 200,
    json: { answer, problems: all },
    body: WhoseView({
      answer,
      fields: Object.entries(FIELDS).map(([name, { control, mayBeMissing: isOptional }]) => ({
        name,
        label: wordsIn(policy.words, LABELS[name as keyof typeof LABELS]),
        optional: isOptional,
        control: controlIn(policy.words, control),
      })),
      form: { typed: asked, problems: all, balances: balancesShown(policy), tares: [...policy.tares.keys()], things: {} },
    }),
  });
}

const foundIn = (data: Readonly<Record<string, unknown>>, reading: Reading): Found => ({
  what: data.what === 'stone' ? 'stone' : 'piece',
  reading,
  sizeMm: data.sizeMm === undefined ? null : Number(data.sizeMm),
});

async function answerOf(web: Web, c: Ctx, found: Found) {
  const { parameters, words } = policyFor(c);
  const things = await thingsInHouse(web.store);
  const jobs = new Map(things.filter(({ kind }) => kind === 'job').map((job) => [job.id, job]));
  const held: Whose = whoseIs(found, things, jobs, parameters);
  const lines = (some: readonly Held[]) => some.map((one) => lineOf(web, one, jobs, words));
  const counts = { could: held.could.length, cannot: held.cannot.length + held.otherSize.length, unknown: held.unknown.length };
  const weighed = found.what === 'stone' ? caratWords(found.reading) : readingWords(found.reading);
  return {
    said: foundWords(found.what, weighed, counts, held.isOnly, held.alsoShare).map((say) => wordsIn(words, say)),
    ...{ could: lines(held.could), unknown: lines(held.unknown), cannot: lines(held.cannot), otherSize: lines(held.otherSize) },
  };
}

function lineOf(web: Web, held: Held, jobs: ReadonlyMap<string, Thing>, words: Words): WhoseLine {
  const { thing, ng } = held;
  const unit = thing.kind === 'piece' ? 'g' : 'ct';
  const noted = thing.says.sizeMm === undefined ? '' : `noted as ${thing.says.sizeMm}\u00a0mm`;
  const weighs = ng === null ? 'not weighed by itself' : `${toStep(ng, stepOf(held), unit)} by what was written`;
  return {
    job: thing.stream,
    bag: jobs.get(thing.stream)?.says.bag ?? '',
    metal: thing.says.metal ?? 'other',
    what: wordsFor(web, thing),
    weighs: wordsIn(words, [weighs, noted].filter(Boolean).join(', ')),
  };
}
