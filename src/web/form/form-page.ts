// A form on a page, whichever it is: shown empty, prefilled, or with what was typed and what is wrong.
import type { Child } from 'hono/jsx';
import { EntryForm } from '../../../views/entry-form.tsx';
import type { FormState } from '../../../views/parts/field.tsx';
import type { Posted, Problem } from '../../book/codec.ts';
import type { Form } from '../../book/entry.ts';
import type { May } from '../../book/may.ts';
import { allIn, controlIn, formIn, type Words } from '../../book/us-words.ts';
import { authNeeded } from '../../ledger/authority.ts';
import type { Line } from '../../ledger/leaf.ts';
import { entryType } from '../../ledger/registry.ts';
import type { Thing } from '../../ledger/thing.ts';
import { formCautions } from '../job/cautions.ts';
import { type Ctx, policyFor, type Web, whoAsks } from '../session/context.ts';
import { draftTyped } from './drafts.ts';
import { expectedBeside } from './expected-beside.ts';
import { type Hidden, showForm } from './form.ts';
import { respond } from './negotiate.ts';
import type { Fieldset } from './write.ts';

export type Values = Readonly<Record<string, unknown>>;

/** A form on a page: an entry's or a sheet's fields and words, and where it posts. */
export interface FormOf {
  readonly fields: Fieldset;
  readonly form: Form<Fieldset>;
  readonly action: string;
  /** The entry type that the form writes, where it writes one. */
  readonly entry?: string;
  readonly job?: Thing;
  /** What is typed again to sign for it: the form asks from the start, or once the ledger does. */
  readonly asks?: May['asks'];
  readonly late?: boolean;
  readonly current?: string;
  readonly extra?: Hidden;
  /** The things a field may name, where they are fewer than all of their kind. */
  readonly named?: Readonly<Record<string, readonly Thing[]>>;
  readonly days?: FormState['days'];
  readonly above?: Child;
  readonly below?: Child;
  /** A second way to agree: what `agreed` then says, and its words. */
  readonly also?: readonly [value: string, words: string];
  /** The terms in force, by their name and their words, where both agree on them with it. */
  readonly terms?: { readonly name: string; readonly lines: readonly string[] };
  /** Where to go once the entries from this number on are written. */
  readonly next: (from: number, posted: Posted) => string | Promise<string>;
  /** What is wrong between fields. */
  readonly check?: (data: Values) => readonly Problem[];
  /** What must be read again, with a reason, before it is written. */
  readonly ask?: (data: Values) => Problem | null;
  /** Read aloud before it is written; a form without it is written at once. */
  readonly readBack?: (data: Values) => readonly string[];
  readonly lines: (data: Values) => readonly Line[];
}
interface ShownWith {
  readonly typed?: Posted;
  readonly problems?: readonly Problem[];
  readonly asked?: string;
  readonly since?: readonly number[];
  readonly asksNow?: May['asks'];
}

/** Shows the form, empty, prefilled or with what was typed and what is wrong. */
export async function showFormPage(web: Web, c: Ctx, of: FormOf, said: ShownWith = {}): Promise<Response> {
  const { problems = [], asked, since = [], asksNow } = said;
  const typed = (await draftTyped(web, c)) ?? said.typed;
  const { words } = policyFor(c);
  const { form, hidden: begun } = await showForm(web, c, of.fields, {
    ...(of.job ? { job: of.job } : {}),
    ...(typed ? { typed } : {}),
    ...(asked === undefined ? {} : { asked }),
    ...(of.named ? { named: of.named } : {}),
    problems,
  });
  const wording = formIn(words, of.form);
  const hidden = [...begun.filter(([name]) => !of.extra?.some(([other]) => other === name)), ...(of.extra ?? [])];
  const fields = shownFields(of, wording, hidden, words);
  const expected = await expectedBeside(web, of, form, policyFor(c).parameters);
  return respond(c, {
    title: wording.title,
    ...(of.current === undefined ? {} : { current: of.current }),
    status: since.length > 0 ? 409 : problems.length > 0 ? 422 : 200,
    json: { ...jsonOf(of, fields), hidden: Object.fromEntries(hidden), problems, since },
    body: EntryForm({
      ...wordsOf(of, wording),
      fields,
      since,
      form: { ...form, expected, ...(wording.often ? { often: wording.often } : {}), ...(of.days ? { days: of.days } : {}) },
      hidden,
      cautions: allIn(words, await formCautions(web, c, of, typed)),
      asks: of.readBack ? 'session' : (asksNow ?? asksOf(of, c)),
    }),
  });
}

/** What a form says around its fields. */
const wordsOf = ({ action, readBack, late = false, above, below }: FormOf, { title, button, sections }: Form<Fieldset>) => ({
  ...{ title, action, late, above, below },
  button: readBack ? 'Read it back' : (button ?? 'Write the entry'),
  ...(sections ? { sections } : {}),
});

/** What is typed again to sign for it: as the form says, or as the entry that it writes does. */
export const asksOf = ({ asks, entry }: FormOf, c: Ctx): May['asks'] =>
  asks ?? (entry === undefined ? 'session' : authNeeded(entryType(entry), { by: whoAsks(c).id }));

const shownFields = (of: FormOf, wording: Form<Fieldset>, hidden: Hidden, words: Words) =>
  Object.entries(of.fields)
    .filter(([name]) => !hidden.some(([other]) => other === name))
    .map(([name, { control, mayBeMissing }]) => ({
      name,
      label: wording.labels[name] ?? name,
      hint: wording.hints?.[name],
      optional: mayBeMissing,
      control: controlIn(words, control),
    }));

const jsonOf = ({ action, form }: FormOf, fields: readonly { readonly name: string; readonly label: string }[]) => ({
  title: form.title,
  action,
  fields: fields.map(({ name, label }) => ({ name, label })),
});

export const without = (posted: Posted, names: readonly string[]): Posted => new Map([...posted].filter(([name]) => !names.includes(name)));

/** Under which name a read-back posts the terms that were read back. */
export const READ_BACK_TERMS = 'termsRead';

/** What is typed to sign for something: never shown again, never kept. */
export const SECRETS: readonly string[] = ['pin', 'password'];
