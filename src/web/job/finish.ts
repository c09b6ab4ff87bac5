// The finish sheet of a small job: taken up, sized, weighed out, looked over and finished, in one command.
import { Hono } from 'hono';
import { NotInStock } from '../../../views/parts/notices.tsx';
import { METAL_WORDS, type MetalCode, metalOf } from '../../book/metals.ts';
import { sizesIn } from '../../book/ring-size-words.ts';
import { stonesWords } from '../../book/words.ts';
import { readCorrected } from '../../ledger/corrections.ts';
import { expectedOf, usualOff } from '../../ledger/expected.ts';
import { holderOf, type Thing } from '../../ledger/thing.ts';
import { entriesOf } from '../../queries/entries.ts';
import type { BeforeFinish } from '../../sheets/finish.ts';
import { SHEETS } from '../../sheets/index.ts';
import { jobThings, newRef } from '../form/form.ts';
import { type FormOf, showFormPage } from '../form/form-page.ts';
import { sheetForm } from '../form/sheet-form.ts';
import { receiveForm } from '../form/submit.ts';
import { type Ctx, type Env, policyFor, type Resource, thingsOf, type Web, whoAsks } from '../session/context.ts';
import { jobAt } from './job-at.ts';

export const finish: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/jobs/:job/finish', async (c) => {
    const found = await formOf(web, c);
    return found ? showFormPage(web, c, found.of, { typed: found.typed }) : c.notFound();
  });
  app.post('/jobs/:job/finish', async (c) => {
    const found = await formOf(web, c);
    return found ? receiveForm(web, c, found.of) : c.notFound();
  });
  return app;
};

const SIZING = ['method', 'from', 'to', 'stock', 'lot', 'packet', 'moved'];

/** The form for the one piece of a job; a job of several is finished entry by entry. */
async function formOf(web: Web, c: Ctx): Promise<{ readonly of: FormOf; readonly typed: Map<string, string[]> } | null> {
  const job = await jobAt(web, c);
  const pieces = job ? (await jobThings(web, job.id)).filter(({ kind, gone }) => kind === 'piece' && !gone) : [];
  const [piece] = pieces;
  if (!job || !piece || pieces.length > 1) return null;
  const known = await knownOf(web, c, job, piece);
  const named = { stock: await ofMetal(web, 'stock', piece), lot: await ofMetal(web, 'lot', piece), packet: [] };
  const { from, to } = sizesIn(job.says.details);
  const extra = [['piece', piece.id] as const, ['packet', newRef(web, 'packet')] as const];
  const isShort = known.isSizing && !known.moved && named.stock.length === 0;
  const above = isShort ? { above: NotInStock({ metal: known.metal, words: METAL_WORDS[known.metal] }) } : {};
  const typed = { from, stock: only(named.stock), lot: only(named.lot) };
  return {
    of: { ...sheetOf(known), action: c.req.path, job, named, ...pageOf(job, piece, known, to), ...above, extra },
    typed: new Map(Object.entries(typed).flatMap(([name, value]) => (value === '' ? [] : [[name, [value]]]))),
  };
}

/** What the ledger says of the piece and its job, as the sheet needs it. */
async function knownOf(web: Web, c: Ctx, job: Thing, piece: Thing): Promise<BeforeFinish> {
  const expected = expectedOf(piece, policyFor(c).parameters);
  const facts = readCorrected(await entriesOf(web.store, job.id)).flatMap((entry) => entry.facts);
  return {
    heldByMe: holderOf(piece, job) === whoAsks(c).id,
    stones: piece.stones ?? 0,
    metal: (piece.says.metal ?? 'other') as MetalCode,
    expectedNg: expected?.ng ?? null,
    marginNg: expected?.marginNg ?? 0,
    usualNg: usualOff(piece, job, 'finished').ng,
    moved: facts.some((one) => one.fact === 'flow' && one.matter.kind === 'metal' && (one.from === piece.id || one.to === piece.id)),
    isSizing: /\bsize-(up|down)\b/.test(job.says.work ?? ''),
    wanted: sizesIn(job.says.details).to,
    sized: piece.says.ringSize ?? '',
    cutMetal: job.title['cut metal'] === 'customer' ? 'customer' : 'shop',
  };
}

/** The sheet's own part of the form: it asks only for what this job can still need. */
function sheetOf(known: BeforeFinish) {
  const metal = known.moved ? ['stock', 'lot', 'packet', 'moved'] : [known.cutMetal === 'customer' ? 'lot' : 'packet'];
  const hidden = known.isSizing ? metal : SIZING;
  const sheet = sheetForm(SHEETS.finish, () => known);
  return { ...sheet, fields: Object.fromEntries(Object.entries(sheet.fields).filter(([name]) => !hidden.includes(name))) };
}

function pageOf(job: Thing, piece: Thing, known: BeforeFinish, wanted: string) {
  const { form } = SHEETS.finish;
  const stones = known.stones === 0 ? 'No stones in it' : `${stonesWords(known.stones)}, all tight`;
  const isOpen = known.isSizing && !known.moved;
  const goes = known.cutMetal === 'customer' ? 'Worn metal goes home in a packet, as agreed.' : '';
  return {
    form: {
      ...form,
      title: `Finish ${job.says.bag}: ${piece.says.description ?? 'piece'}`,
      labels: { ...form.labels, stonesHold: stones },
      hints: {
        ...form.hints,
        ...(wanted === '' ? {} : { to: `Wanted: ${wanted}.` }),
        ...(goes === '' ? {} : { method: goes }),
        ...(isOpen ? { weight: 'Expected before anything is let in or cut out.' } : {}),
      },
    } as FormOf['form'],
    current: '/bench',
    next: (written: number) => `/jobs/${job.id}?written=${written}`,
  };
}

const only = (things: readonly Thing[]): string => (things.length === 1 ? (things[0]?.id ?? '') : '');

/** Stocks or open lots of the piece's metal; a lot of the same family will do. */
async function ofMetal(web: Web, kind: 'stock' | 'lot', piece: Thing): Promise<readonly Thing[]> {
  const metal = piece.says.metal ?? 'other';
  const all = (await thingsOf(web, kind)).filter((thing) => thing.status !== 'sealed' && thing.status !== 'closed');
  return all.filter((thing) => thing.says.metal === metal || (kind === 'lot' && familyOf(thing) === familyOf(piece)));
}
const familyOf = ({ says }: Thing): string => metalOf(says.metal ?? 'other').family;
