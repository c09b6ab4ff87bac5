// One entry: written through the generic form, read whole, corrected. Every number on a page opens one of these.
import { Hono } from 'hono';
import { EntryView } from '../../../views/entry.tsx';
import { writeControl } from '../../book/codec.ts';
import { optional, stated } from '../../book/entry.ts';
import { NO_TERMS } from '../../book/terms.ts';
import { lines } from '../../book/values.ts';
import { ENTRIES } from '../../entries/index.ts';
import { authNeeded, neverAllowed } from '../../ledger/authority.ts';
import type { Kept, Line } from '../../ledger/leaf.ts';
import { entryType } from '../../ledger/registry.ts';
import { rememberedFields, saysNow } from '../../ledger/remember.ts';
import { entryAt, withCorrections } from '../../queries/entries.ts';
import { streamSize } from '../../queries/sizes.ts';
import { jobNamed } from '../../queries/things.ts';
import { shelfOn } from '../../store/shelf.ts';
import { type FormOf, showFormPage } from '../form/form-page.ts';
import { respond } from '../form/negotiate.ts';
import { queried } from '../form/posted.ts';
import { receiveForm } from '../form/submit.ts';
import { wholeNumber } from '../session/address.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web, whoAsks } from '../session/context.ts';
import { trouble } from '../session/trouble.ts';
import { isInDoubt } from './balance-story.ts';
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
  app.get('/entries/:seq', async (c) => {
    const kept = await entryAt(web.store, wholeNumber(c.req.param('seq')));
    if (!kept) return c.notFound();
    const stream = kept.leaf.links[0].s;
    const all = await withCorrections(web.store, [kept]);
    const line = (await ledgerLines(web, policyFor(c), all)).find(({ seq }) => seq === kept.seq);
    if (!line) return c.notFound();
    const details = await describe(web, policyFor(c), kept, await saysNow({ leaves: async () => all }, kept));
    const { leaf, hash } = kept;
    return respond(c, {
      title: `Entry ${kept.seq}`,
      current: '/trail',
      json: { seq: kept.seq, hash, leaf, says: line.said },
      body: EntryView({ line, details, job: await jobOf(web, stream), doubted: await isInDoubt(web.store, kept) }),
    });
  });
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

async function jobOf(web: Web, stream: string): Promise<{ id: string; bag: string } | null> {
  const job = await jobNamed(web.store, stream);
  return job && { id: stream, bag: job.says.bag ?? '' };
}

/** Entries that say something the program knows and nobody types: a digest, a checkpoint, what an entry said before, how many jobs there are. */
const WRITTEN_ELSEWHERE: readonly string[] = ['ledger_started', 'corrected', 'terms_set', 'ticket_issued', 'baseline_accepted'];

async function formOf(web: Web, c: Ctx): Promise<FormOf | null> {
  const type = c.req.param('type') ?? '';
  if (!Object.hasOwn(ENTRIES, type) || WRITTEN_ELSEWHERE.includes(type)) return null;
  const entry = entryType(type);
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
    ...(type === 'work_agreed' ? underTerms(policyFor(c).terms ?? NO_TERMS) : {}),
    next: (from) => (id === undefined ? `/entries/${from}` : `/jobs/${id}?written=${from}`),
    lines: (data) => [{ type, data }],
  };
}

/** An agreement names the terms in force; a form that was opened under others, or names some of its own, is opened again. */
const underTerms = (inForce: string): Pick<FormOf, 'extra' | 'check' | 'terms'> => ({
  extra: [['terms', inForce]],
  terms: { name: inForce, lines: [] },
  check: ({ terms }) =>
    terms === inForce ? [] : [{ field: '', say: 'The terms in force are not those of this form. Open it again, and agree on these.' }],
});

/** The form of one field of an entry, as the entry's own form asks for it, and why it is corrected. */
async function correctionOf(web: Web, c: Ctx): Promise<(FormOf & { readonly prefilled: [string, string[]][] }) | null> {
  const kept = await entryAt(web.store, wholeNumber(c.req.param('seq')));
  const name = c.req.param('field') ?? '';
  if (!kept) return null;
  const { fields, form } = entryType(kept.leaf.type);
  const field = Object.hasOwn(fields, name) ? fields[name] : undefined;
  if (!field?.correctable) return null;
  const all = await withCorrections(web.store, [kept]);
  const was = (await saysNow({ leaves: async () => all }, kept))[name];
  const { s: stream } = kept.leaf.links[0];
  const job = await jobOf(web, stream);
  return {
    fields: { [name]: optional(field as never), reason: stated(lines(500)) },
    form: {
      title: `Correct entry ${kept.seq}`,
      labels: { [name]: form.labels[name] ?? name, reason: 'Why' },
      hints: { reason: 'The customer may read this: no names.' },
      button: 'Write the correction',
    },
    asks: authNeeded(
      entryType('corrected'),
      { by: whoAsks(c).id },
      { target: await rememberedFields(shelfOn(web.store.read, web.store.keys), kept) },
    ),
    action: c.req.path,
    extra: [[`seen.${stream}`, String(await streamSize(web.store, stream))]],
    next: () => (job ? `/jobs/${job.id}` : `/entries/${kept.seq}`),
    lines: ({ [name]: is, reason }) => [correction(kept, name, was, is, reason)],
    prefilled: grouped(writeControl(field.control, was, name, policyFor(c).zone)),
  };
}

function correction(target: Kept, field: string, was: unknown, is: unknown, reason: unknown): Line {
  const said = { ...(was === undefined ? {} : { was }), ...(is === undefined ? {} : { is }) };
  return { type: 'corrected', data: { target: target.hash, seq: target.seq, field, ...said, reason } };
}

function grouped(pairs: readonly (readonly [string, string])[]): [string, string[]][] {
  const all = new Map<string, string[]>();
  for (const [name, value] of pairs) all.set(name, [...(all.get(name) ?? []), value]);
  return [...all];
}
