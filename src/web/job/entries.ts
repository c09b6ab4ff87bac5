// One entry: written through the generic form, read whole, corrected. Every number on a page opens one of these.
import { Hono } from 'hono';
import { EntryView } from '../../../views/entry.tsx';
import { NO_TERMS } from '../../book/terms.ts';
import { ENTRIES } from '../../entries/index.ts';
import { neverAllowed } from '../../ledger/authority.ts';
import { readCorrected } from '../../ledger/corrections.ts';
import { entryType } from '../../ledger/registry.ts';
import { saysNow } from '../../ledger/remember.ts';
import { entryAt, withCorrections } from '../../queries/entries.ts';
import { jobNamed } from '../../queries/things.ts';
import { type FormOf, showFormPage } from '../form/form-page.ts';
import { respond } from '../form/negotiate.ts';
import { queried } from '../form/posted.ts';
import { receiveForm } from '../form/submit.ts';
import { wholeNumber } from '../session/address.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web, whoAsks } from '../session/context.ts';
import { trouble } from '../session/trouble.ts';
import { isInDoubt } from './balance-story.ts';
import { correctionOf, jobOf } from './correction-form.ts';
import { describe } from './describe.ts';
import { ledgerLines } from './ledger-lines.ts';

export const entries: Resource = (web) => {
  const app = new Hono<Env>();
  for (const path of ['/write/:type', '/jobs/:job/write/:type']) {
    app.get(path, async (c) => {
      const of = await formOf(web, c);
      if (!of) return c.notFound();
      const barred = neverAllowed(entryType(of.entry ?? ''), whoAsks(c).role);
      return barred ? trouble(c, 403, barred.say) : showFormPage(web, c, of, { typed: queried(c) });
    });
    app.post(path, async (c) => {
      const of = await formOf(web, c);
      return of ? receiveForm(web, c, of) : c.notFound();
    });
  }
  app.get('/entries/:seq', (c) => showEntry(web, c));
  app.get('/entries/:seq/correct/:field', async (c) => {
    const of = await correctionOf(web, c);
    return of ? showFormPage(web, c, of, { typed: new Map(of.prefilled) }) : c.notFound();
  });
  app.post('/entries/:seq/correct/:field', async (c) => {
    const of = await correctionOf(web, c);
    return of ? receiveForm(web, c, of) : c.notFound();
  });
  return app;
};

/** An entry whole: what it says by now, what corrects it, and its leaf. */
async function showEntry(web: Web, c: Ctx): Promise<Response> {
  const kept = await entryAt(web.store, wholeNumber(c.req.param('seq')));
  if (!kept) return c.notFound();
  const stream = kept.leaf.links[0].s;
  const all = await withCorrections(web.store, [kept]);
  const of = ({ seq }: { readonly seq: number }) => seq === kept.seq;
  const line = (await ledgerLines(web, policyFor(c), all)).find(of);
  const entry = readCorrected(all).find(of);
  if (!line || !entry) return c.notFound();
  const details = await describe(web, policyFor(c), kept, await saysNow({ leaves: async () => all }, kept));
  const { leaf, hash } = kept;
  return respond(c, {
    title: `Entry ${kept.seq}`,
    current: '/trail',
    json: { seq: kept.seq, hash, leaf, says: line.said },
    body: EntryView({ line, details, job: await jobOf(web, stream), doubted: await isInDoubt(web.store, entry) }),
  });
}

async function formOf(web: Web, c: Ctx): Promise<FormOf | null> {
  const type = c.req.param('type') ?? '';
  const entry = Object.hasOwn(ENTRIES, type) ? entryType(type) : undefined;
  if (!entry || entry.ownPage) return null;
  const id = c.req.param('job');
  const job = await jobNamed(web.store, id);
  if (id !== undefined && !job) return null;
  return {
    fields: entry.fields,
    form: entry.form,
    entry: type,
    action: c.req.path,
    ...(job ? { job } : {}),
    late: true,
    ...(entry.form.terms ? underTerms(entry.form.terms, policyFor(c).terms ?? NO_TERMS) : {}),
    next: (from) => (id === undefined ? `/entries/${from}` : `/jobs/${id}?written=${from}`),
    lines: (data) => [{ type, data }],
  };
}

/** An agreement names the terms in force; a form that was opened under others, or names some of its own, is opened again. */
const underTerms = (field: string, inForce: string): Pick<FormOf, 'extra' | 'check' | 'terms'> => ({
  extra: [[field, inForce]],
  terms: { name: inForce, lines: [] },
  check: ({ [field]: terms }) =>
    terms === inForce ? [] : [{ field: '', say: 'The terms in force are not those of this form. Open it again, and agree on these.' }],
});
