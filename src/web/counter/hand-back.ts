// The way home, in two steps: the stones are counted and who takes it is said; then it is read back and the PIN is asked. A count that
// does not agree stops it and offers the way home with an exception.
import { Hono } from 'hono';
import { ExceptionOffer } from '../../../views/parts/exception.tsx';
import { wordsIn } from '../../book/us-words.ts';
import type { Thing } from '../../ledger/thing.ts';
import { inAndOut } from '../../letter/in-and-out.ts';
import { entriesOf } from '../../queries/entries.ts';
import { thingAt } from '../../queries/things.ts';
import type { BeforeHandBack } from '../../sheets/hand-back.ts';
import { SHEETS } from '../../sheets/index.ts';
import { dayIn } from '../../units/dates.ts';
import { isRef, readBagCode } from '../../units/ids.ts';
import { jobThings } from '../form/form.ts';
import { type FormOf, showFormPage } from '../form/form-page.ts';
import { goTo } from '../form/negotiate.ts';
import { sheetForm } from '../form/sheet-form.ts';
import { receiveForm } from '../form/submit.ts';
import { jobAt } from '../job/job-at.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web } from '../session/context.ts';

/** Both ways home; each says of its own fields what is read aloud and written. */
const WAYS_HOME = {
  'hand-back': (known: KnownOf) => sheetForm(SHEETS['hand-back'], known),
  'hand-back-with-exception': (known: KnownOf) => sheetForm(SHEETS['hand-back-with-exception'], known),
} as const;
type WayHome = keyof typeof WAYS_HOME;
type KnownOf = (data: { readonly piece: string }) => BeforeHandBack;

export const handBack: Resource = (web) => {
  const app = new Hono<Env>();
  for (const way of ['hand-back', 'hand-back-with-exception'] as const) {
    const path = `/jobs/:job/${way}` as const;
    app.get(path, async (c) => {
      const job = await jobAt(web, c);
      return job ? showFormPage(web, c, await formOf(web, c, job, way), { typed: new Map(defaultsFor(c, way)) }) : c.notFound();
    });
    app.post(path, async (c) => {
      const job = await jobAt(web, c);
      return job ? receiveForm(web, c, await formOf(web, c, job, way)) : c.notFound();
    });
  }
  app.get('/b/:bag', (c) => goTo(c, `/bag?code=${encodeURIComponent(c.req.param('bag'))}`));
  app.get('/bag', async (c) => goTo(c, await whereNext(web, c.req.query('code') ?? '')));
  return app;
};

/** A bag that was scanned leads to what is next for it: its finish, its way home, or its job. */
async function whereNext(web: Web, typed: string): Promise<string> {
  const code = readBagCode(typed.split('/').at(-1) ?? '');
  const bag = code && (await thingAt(web.store, code, 'bag'));
  if (!bag) return `/find?q=${encodeURIComponent(typed)}`;
  const job = (await jobThings(web, bag.stream)).find(({ kind }) => kind === 'job');
  const step = job?.status === 'finished' ? '/hand-back' : job?.status === 'agreed' && job.stonesOut === 0 ? '/finish' : '';
  return `/jobs/${bag.stream}${step}`;
}

const defaultsFor = (c: Ctx, way: WayHome): [string, string[]][] => [
  ['to', ['customer']],
  ['shown', [wordsIn(policyFor(c).words, 'collection slip')]],
  ...(way === 'hand-back' ? [['signed', ['signature']] satisfies [string, string[]]] : []),
];

/** A packet with worn metal or old parts in it; a group of seats is a packet too, with nothing in it until its stones come out. */
const holdsMetal = ({ kind, stones, posted }: Thing): boolean =>
  kind === 'packet' && !stones && (posted.ng !== 0 || Object.keys(posted.open).length > 0);

async function formOf(web: Web, c: Ctx, job: Thing, way: WayHome): Promise<FormOf> {
  const kept = await entriesOf(web.store, job.id);
  const here = (await jobThings(web, job.id)).filter(({ gone }) => !gone);
  const pieces = here.filter(({ kind }) => kind === 'piece');
  const packets = here.filter(holdsMetal).flatMap(({ id }) => (isRef('packet', id) ? [id] : []));
  const day = dayIn(policyFor(c).zone);
  const sentence = inAndOut(kept, pieces[0]?.id ?? '', day);
  const sheet = WAYS_HOME[way](({ piece }) => ({ sentence: inAndOut(kept, piece, day), packets }));
  const isLast = pieces.length === 1 && job.stonesOut === 0;
  return {
    ...sheet,
    fields: packets.length > 0 ? sheet.fields : Object.fromEntries(Object.entries(sheet.fields).filter(([name]) => name !== 'packets')),
    action: c.req.path,
    job,
    asks: 'pin',
    current: '/',
    extra: [...(isLast ? [['closes', 'yes'] as const] : []), ...(pieces.length === 1 ? [['piece', pieces[0]?.id ?? ''] as const] : [])],
    above: ExceptionOffer({
      sentence,
      job: job.id,
      bag: job.says.bag ?? '',
      offers: way === 'hand-back' && c.req.method === 'POST',
    }),
    next: (from) => `/jobs/${job.id}?written=${from}`,
  };
}
