// The finish sheet of a small job: taken up, sized, weighed out, looked over and finished, in one command.
import { Hono } from 'hono';
import { type MetalCode, metalOf } from '../../book/metals.ts';
import { sizesIn } from '../../book/ring-size-words.ts';
import { stonesWords } from '../../book/words.ts';
import { expectedOf } from '../../ledger/expected.ts';
import { holderOf, type Thing } from '../../ledger/thing.ts';
import { SHEETS } from '../../sheets/index.ts';
import { jobThings } from '../form/form.ts';
import { type FormOf, showFormPage } from '../form/form-page.ts';
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

const SIZING = ['method', 'from', 'to', 'stock', 'lot'];

/** The form for the one piece of a job; a job of several is finished entry by entry. */
async function formOf(web: Web, c: Ctx): Promise<{ readonly of: FormOf; readonly typed: Map<string, string[]> } | null> {
  const job = await jobAt(web, c);
  const pieces = job ? (await jobThings(web, job.id)).filter(({ kind, gone }) => kind === 'piece' && !gone) : [];
  const [piece] = pieces;
  if (!job || !piece || pieces.length > 1) return null;
  const { fields, form, check, lines } = SHEETS.finish;
  const isSizing = /\bsize-(up|down)\b/.test(job.says.work ?? '');
  const named = { stock: await ofMetal(web, 'stock', piece), lot: await ofMetal(web, 'lot', piece) };
  const hidden = isSizing ? SIZING.filter((name) => (name === 'stock' || name === 'lot') && named[name].length === 0) : SIZING;
  const known = {
    heldByMe: holderOf(piece, job) === whoAsks(c).id,
    stones: piece.stones ?? 0,
    metal: (piece.says.metal ?? 'other') as MetalCode,
    expectedNg: expectedOf(piece, policyFor(c).parameters)?.ng ?? null,
  };
  const { from, to } = sizesIn(job.says.details);
  const stones = known.stones === 0 ? 'No stones in it' : `${stonesWords(known.stones)}, all tight`;
  const of: FormOf = {
    fields: Object.fromEntries(Object.entries(fields).filter(([name]) => !hidden.includes(name))),
    form: {
      ...form,
      title: `Finish ${job.says.bag}: ${piece.says.description ?? 'piece'}`,
      labels: { ...form.labels, stonesHold: stones },
      hints: { ...form.hints, ...(to === '' ? {} : { to: `Wanted: ${to}.` }) },
    } as FormOf['form'],
    action: c.req.path,
    job,
    named,
    extra: [['piece', piece.id]],
    current: '/bench',
    next: (written) => `/jobs/${job.id}?written=${written}`,
    check: (data) => check?.(data as never, known) ?? [],
    lines: (data) => lines(data as never, known),
  };
  const typed = { from, stock: only(named.stock), lot: only(named.lot) };
  return { of, typed: new Map(Object.entries(typed).flatMap(([name, value]) => (value === '' ? [] : [[name, [value]]]))) };
}

const only = (things: readonly Thing[]): string => (things.length === 1 ? (things[0]?.id ?? '') : '');

/** Stocks or open lots of the piece's metal; a lot of the same family will do. */
async function ofMetal(web: Web, kind: 'stock' | 'lot', piece: Thing): Promise<readonly Thing[]> {
  const metal = piece.says.metal ?? 'other';
  const all = (await thingsOf(web, kind)).filter((thing) => thing.status !== 'sealed' && thing.status !== 'closed');
  return all.filter((thing) => thing.says.metal === metal || (kind === 'lot' && familyOf(thing) === familyOf(piece)));
}
const familyOf = ({ says }: Thing): string => metalOf(says.metal ?? 'other').family;
