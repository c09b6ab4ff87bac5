// From a posted form to the ledger and back: parse, check the PIN, record, and turn the answer into what the person must do next.
import type { Posted, Problem } from '../../book/codec.ts';
import { readControl } from '../../book/codec.ts';
import type { Field } from '../../book/entry.ts';
import type { Answer, Line } from '../../ledger/leaf.ts';
import type { Thing } from '../../ledger/thing.ts';
import type { Instant } from '../../units/dates.ts';
import { wholeNumber } from '../session/address.ts';
import { type Ctx, type Person, policyFor, type Web, whoAsks } from '../session/context.ts';
import { first } from './posted.ts';

export type Fieldset = Readonly<Record<string, Field<unknown>>>;
export interface ReadForm {
  readonly data: Readonly<Record<string, unknown>>;
  readonly problems: readonly Problem[];
}

/** Reads the fields of an entry or sheet from what was posted under their names. */
export function readFields(fields: Fieldset, posted: Posted, c: Ctx): ReadForm {
  const data: Record<string, unknown> = {};
  const problems: Problem[] = [];
  for (const [name, field] of Object.entries(fields)) {
    const read = readControl(field.control, posted, name, policyFor(c));
    if (read && 'problems' in read) problems.push(...read.problems);
    else if (read) data[name] = read.value;
    else if (!field.mayBeMissing) problems.push({ field: name, say: 'Fill this in.' });
  }
  return { data, problems };
}

/** When it happened, where a late entry says so; now otherwise. */
export function readOccurredAt(posted: Posted, c: Ctx): { readonly at?: Instant; readonly problems: readonly Problem[] } {
  const read = readControl({ kind: 'instant' }, posted, 'occurredAt', policyFor(c));
  if (!read) return { problems: [] };
  return 'value' in read ? { at: read.value as Instant, problems: [] } : { problems: read.problems };
}

export type Outcome =
  | { readonly done: Extract<Answer, { answer: 'written' }> }
  | { readonly reused: Extract<Answer, { answer: 'written' }> }
  | { readonly conflict: readonly number[] }
  | { readonly problems: readonly Problem[]; readonly asked?: Problem };

/** Whose form it is, and the terms that were agreed on with it. */
export interface Beside {
  readonly job?: Thing;
  readonly terms?: string;
}

/** Records the lines under the form's own key; a form sent twice is answered once, and asks for no second PIN. */
export async function record(web: Web, c: Ctx, posted: Posted, lines: readonly Line[], { job, terms }: Beside): Promise<Outcome> {
  const person = whoAsks(c);
  const session = c.get('session');
  const id = first(posted, 'formKey');
  if (!/^[0-9a-z]{26}$/.test(id)) return { problems: [{ field: 'formKey', say: 'This form has lost its key. Open it again.' }] };
  const before = await web.store.recorded({ id, by: person.id, lines });
  if (before) return toOutcome(before);
  const kind = (['password', 'pin'] as const).find((secret) => first(posted, secret) !== '');
  const trouble = kind && session ? await secretTrouble(web, person.id, session.token, kind, first(posted, kind)) : null;
  if (trouble) return { problems: [trouble] };
  const answer = await web.store.record({
    id,
    by: person.id,
    auth: kind ?? 'session',
    device: session?.device ?? 'none',
    ...(job ? { job: job.id } : {}),
    ...(terms === undefined ? {} : { terms }),
    seen: seenIn(posted),
    lines,
  });
  if (answer.answer === 'written') await web.access.dropDraft(id);
  return toOutcome(answer);
}

/** The count of each stream as the form was shown. */
export const seenIn = (posted: Posted): Readonly<Record<string, number>> =>
  Object.fromEntries(
    [...posted].flatMap(([name, [text]]) => {
      const count = name.startsWith('seen.') ? wholeNumber(text) : null;
      return count === null ? [] : [[name.slice(5), count]];
    }),
  );

/** Why a PIN or password, typed at a session or screen of that token, is not taken, beside its field; null when it is right. */
export async function secretTrouble(
  web: Web,
  person: Person['id'],
  token: string | null,
  kind: 'pin' | 'password',
  secret: string,
): Promise<Problem | null> {
  const words = kind === 'pin' ? 'PIN' : 'password';
  if (secret === '') return { field: kind, say: `Type your ${words}.` };
  const tried = await web.access.tryCredential(person, token, kind, secret);
  if (tried.is === 'right') return null;
  web.note({ happened: tried.is === 'wrong' ? `${kind}_wrong` : 'not_tried', person });
  const seconds = Math.ceil(tried.waitMs / 1000);
  if (tried.is === 'not tried')
    return { field: kind, say: `Wait ${seconds} seconds, then type it again: after so many wrong ones your ${words} was not tried.` };
  return {
    field: kind,
    say: `That is not your ${words}.${seconds > 0 ? ` Wait ${seconds} seconds before you try again.` : ' Try again.'}`,
  };
}

/** The same of the password beside a form that writes no entry, and is the owner's alone. */
export const passwordTrouble = (web: Web, c: Ctx, posted: Posted): Promise<Problem | null> =>
  secretTrouble(web, whoAsks(c).id, c.get('session')?.token ?? null, 'password', first(posted, 'password'));

/** What the person must do next, of what the ledger answered. */
export function toOutcome(answer: Answer): Outcome {
  switch (answer.answer) {
    case 'written':
      return { done: answer };
    case 'form reused':
      return { reused: answer.recorded };
    case 'conflict':
      return { conflict: answer.since };
    case 'refused':
      return { problems: [{ field: answer.field ?? '', say: answer.say }] };
    case 'asked': {
      const asked = { field: answer.field ?? '', say: answer.say };
      return { problems: [asked], asked };
    }
  }
}
