// A posted form, whichever it is: read, recorded, and shown again with what is wrong, or followed by where to look next.

import { EntryForm } from '../../views/entry-form.tsx';
import type { Posted, Problem } from '../book/codec.ts';
import type { Form } from '../book/entry.ts';
import type { Line } from '../ledger/leaf.ts';
import type { Thing } from '../ledger/thing.ts';
import { cautionWords } from './cautions.ts';
import { type Ctx, policyFor, type Web } from './context.ts';
import { expectedWords, type Hidden, showForm } from './form.ts';
import { goTo, respond, wantsJson } from './negotiate.ts';
import { type Fieldset, type Outcome, readFields, readOccurredAt, record } from './write.ts';

/** A form on a page: an entry's or a sheet's fields and words, and where it posts. */
export interface FormOf {
  readonly fields: Fieldset;
  readonly form: Form<Fieldset>;
  readonly action: string;
  readonly job?: Thing;
  readonly pin?: boolean;
  readonly late?: boolean;
  readonly current?: string;
  readonly extra?: Hidden;
  /** Where to go once the entries from this number on are written. */
  readonly next: (from: number) => string;
  readonly lines: (data: Readonly<Record<string, unknown>>) => readonly Line[];
}
interface Said {
  readonly typed?: Posted;
  readonly problems?: readonly Problem[];
  readonly asked?: string;
  readonly since?: readonly number[];
  readonly pinAsked?: boolean;
}

/** Shows the form, empty, prefilled or with what was typed and what is wrong. */
export async function showFormPage(
  web: Web,
  c: Ctx,
  of: FormOf,
  { typed, problems = [], asked, since = [], pinAsked = false }: Said = {},
): Promise<Response> {
  const { form, hidden } = await showForm(web, c, of.fields, {
    ...(of.job ? { job: of.job } : {}),
    ...(typed ? { typed } : {}),
    ...(asked === undefined ? {} : { asked }),
    problems,
  });
  const posted = new Set(hidden.map(([name]) => name));
  const fields = Object.entries(of.fields)
    .filter(([name]) => !posted.has(name))
    .map(([name, { control, mayBeMissing }]) => ({
      name,
      label: of.form.labels[name] ?? name,
      hint: of.form.hints?.[name],
      optional: mayBeMissing,
      control,
    }));
  const expected = of.job && form.things.piece?.length === 1 ? await expectedOfPiece(web, c, form.things.piece[0]?.[0] ?? '') : null;
  const status = since.length > 0 ? 409 : problems.length > 0 ? 422 : 200;
  return respond(c, {
    title: of.form.title,
    ...(of.current === undefined ? {} : { current: of.current }),
    status,
    json: {
      title: of.form.title,
      action: of.action,
      hidden: Object.fromEntries(hidden),
      fields: fields.map(({ name, label }) => ({ name, label })),
      problems,
      since,
    },
    body: EntryForm({
      title: of.form.title,
      action: of.action,
      button: of.form.button ?? 'Write the entry',
      fields,
      form: expected === null ? form : { ...form, expected: { weight: expected } },
      hidden: [...hidden, ...(of.extra ?? [])],
      cautions: (of.form.cautions ?? []).flatMap((id) => cautionWords(id, policyFor(c).country) ?? []),
      pin: (of.pin ?? false) || pinAsked,
      late: of.late ?? false,
      since,
    }),
  });
}

async function expectedOfPiece(web: Web, c: Ctx, id: string): Promise<string | null> {
  const [row] = await web.store.read('SELECT state FROM thing WHERE id = ?', [id]);
  return row ? expectedWords(JSON.parse(String(row.state)) as Thing, policyFor(c).parameters) : null;
}

/** Takes a posted form to the ledger and answers with the next page, or the same form with everything that was typed. */
export async function submitForm(web: Web, c: Ctx, of: FormOf, posted: Posted): Promise<Response> {
  const { data, problems } = readFields(of.fields, posted, c);
  const occurred = of.late ? readOccurredAt(posted, c) : { problems: [] };
  const all = [...problems, ...occurred.problems];
  if (all.length > 0) return showFormPage(web, c, of, { typed: posted, problems: all });
  const lines = of.lines(data).map((one) => ('at' in occurred && occurred.at !== undefined ? { ...one, occurredAt: occurred.at } : one));
  return answer(web, c, of, posted, await record(web, c, posted, lines));
}

async function answer(web: Web, c: Ctx, of: FormOf, posted: Posted, outcome: Outcome): Promise<Response> {
  if ('done' in outcome) {
    const { from, size } = outcome.done;
    return wantsJson(c) ? c.json({ written: { from, size }, next: of.next(from) }, 201) : goTo(c, of.next(from));
  }
  if ('reused' in outcome) {
    const { from } = outcome.reused;
    const say = `This form was already written as entry ${from}. Correct that entry, or open a fresh form.`;
    return showFormPage(web, c, of, { typed: posted, problems: [{ field: '', say }] });
  }
  const typed = withoutPin(posted);
  if ('conflict' in outcome) return showFormPage(web, c, of, { typed: withoutSeen(typed), since: outcome.conflict });
  const asked = outcome.asked?.field;
  const pinAsked = outcome.problems.some(({ field }) => field === 'pin');
  return showFormPage(web, c, of, { typed, problems: outcome.problems, pinAsked, ...(asked === undefined ? {} : { asked }) });
}

const withoutPin = (posted: Posted): Posted => new Map([...posted].filter(([name]) => name !== 'pin'));
const withoutSeen = (posted: Posted): Posted => new Map([...posted].filter(([name]) => !name.startsWith('seen.')));
