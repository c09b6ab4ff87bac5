// The kinds of value a field may hold: the schema of the leaf's value, and the control by which a form asks for it.
import { z } from 'zod';
import { type CivilDate, type Instant, isCivilDate } from '../units/dates.ts';
import { isRef, type Ref, type RefKind } from '../units/ids.ts';
import { CURRENCIES, type Money } from '../units/money.ts';
import { type Reading, readingSchema } from '../weighing/reading.ts';

/** How a form asks for a value and how its text is read; one generic view renders every control. */
export type Control =
  | { readonly kind: 'text'; readonly max: number; readonly lines: boolean; readonly secret?: true }
  | { readonly kind: 'choice'; readonly options: Readonly<Record<string, string>> }
  | { readonly kind: 'choices'; readonly options: Readonly<Record<string, string>> }
  | { readonly kind: 'count'; readonly max: number }
  | { readonly kind: 'decimal'; readonly unit: string }
  | { readonly kind: 'money' }
  | { readonly kind: 'day' }
  | { readonly kind: 'instant' }
  | { readonly kind: 'tick' }
  | { readonly kind: 'weight' }
  | { readonly kind: 'file' }
  | { readonly kind: 'ref' }
  | { readonly kind: 'fresh'; readonly of: FreshKind }
  | { readonly kind: 'any' }
  | { readonly kind: 'group'; readonly members: Readonly<Record<string, Member>> }
  | { readonly kind: 'list'; readonly of: Control; readonly max: number };
/** Kinds of thing whose names are made with the form. */
export type FreshKind = Exclude<RefKind, 'bag' | 'entry'>;
export interface Member {
  readonly label: string;
  readonly control: Control;
  readonly optional: boolean;
}
/** The member of a group that a posted name means; none for a name that every object knows. */
export const memberNamed = (control: Control, name: string): Member | undefined =>
  control.kind === 'group' && Object.hasOwn(control.members, name) ? control.members[name] : undefined;
export interface ValueKind<T> {
  readonly schema: z.ZodType<T>;
  readonly control: Control;
}

const TEXT_MAX = 4000;
const tooLong = (max: number) => `Write at most ${max.toLocaleString('en')} characters; put the rest in a second note.`;

/** One line of text, at most `max` characters. */
export const text = (max = 200): ValueKind<string> => ({
  schema: z
    .string()
    .min(1, 'Fill this in.')
    .max(max, tooLong(max))
    .regex(/^[^\n]*$/, 'Write this on one line.'),
  control: { kind: 'text', max, lines: false },
});
/** Several lines of text. */
export const lines = (max = TEXT_MAX): ValueKind<string> => ({
  schema: z.string().min(1, 'Fill this in.').max(max, tooLong(max)),
  control: { kind: 'text', max, lines: true },
});
/** One of a few stored codes, each with its words. */
export const choice = <const C extends string>(options: Readonly<Record<C, string>>): ValueKind<C> => ({
  schema: z.enum(Object.keys(options) as [C, ...C[]], 'Choose one of these.'),
  control: { kind: 'choice', options },
});
/** Any of a few stored codes, in the order of the list. */
export const choices = <const C extends string>(options: Readonly<Record<C, string>>): ValueKind<readonly C[]> => ({
  schema: z
    .array(z.enum(Object.keys(options) as [C, ...C[]], 'Choose from these.'))
    .max(Object.keys(options).length, 'Choose each of these once.'),
  control: { kind: 'choices', options },
});
/** A whole number from `min` to `max`. */
export const count = (max = 999, min = 0): ValueKind<number> => ({
  schema: z.int('Type a whole number.').min(min, `Type a whole number, ${min} or more.`).max(max, `Type a whole number up to ${max}.`),
  control: { kind: 'count', max },
});
/** A measured number kept as it was read, with a point: "17.35". */
export const decimal = (unit: string): ValueKind<string> => ({
  schema: z.string().regex(/^\d{1,6}(\.\d{1,6})?$/, `Type a number in ${unit}, for example 2.5.`),
  control: { kind: 'decimal', unit },
});
/** An amount of money in minor units with its currency. */
export const money = (): ValueKind<Money> => ({
  schema: z.strictObject({ minor: z.int().min(0), currency: z.enum(CURRENCIES as [Money['currency'], ...Money['currency'][]]) }),
  control: { kind: 'money' },
});
/** A day on the calendar. */
export const day = (): ValueKind<CivilDate> => ({
  schema: z.custom<CivilDate>((value) => typeof value === 'string' && isCivilDate(value), 'Give a day of the calendar.'),
  control: { kind: 'day' },
});
/** A moment, in milliseconds since 1970 UTC. */
export const moment = (): ValueKind<Instant> => ({
  schema: z.custom<Instant>((value) => Number.isSafeInteger(value) && Number(value) >= 0, 'Give a day and a time.'),
  control: { kind: 'instant' },
});
/** Something that was done or agreed; a box that must be ticked to be said at all. */
export const tick = (): ValueKind<true> => ({ schema: z.literal(true, 'Tick this to go on.'), control: { kind: 'tick' } });
/** What a balance said. */
export const weight = (): ValueKind<Reading> => ({ schema: readingSchema, control: { kind: 'weight' } });
/** SHA-256 of a stored file, 64 hexadecimal digits. */
export const file = (): ValueKind<string> => ({
  schema: z.string().regex(/^[0-9a-f]{64}$/, 'Choose a photograph.'),
  control: { kind: 'file' },
});
/** Any value that can stand in a leaf: in a correction alone, where the target's own field checks it. */
export const any = (): ValueKind<unknown> => ({ schema: z.json(), control: { kind: 'any' } });
/** The name of a thing that begins, made with the form and not shown; alone it fills no row of a list. */
export const fresh = <const K extends FreshKind>(kind: K): ValueKind<Ref<K>> => ({
  schema: z.custom<Ref<K>>((value) => typeof value === 'string' && isRef(kind, value), 'Open the form again.'),
  control: { kind: 'fresh', of: kind },
});
/** Several of one kind, at most `max`. */
export const list = <T>(of: ValueKind<T>, max = 20): ValueKind<readonly T[]> => ({
  schema: z.array(of.schema).min(1, 'Give at least one.').max(max, `Give at most ${max}.`),
  control: { kind: 'list', of: of.control, max },
});

type Members = Readonly<Record<string, { readonly label: string; readonly of: ValueKind<unknown>; readonly optional?: true }>>;
type GroupValue<M extends Members> = {
  readonly [N in keyof M as M[N] extends { optional: true } ? never : N]: M[N]['of'] extends ValueKind<infer T> ? T : never;
} & { readonly [N in keyof M as M[N] extends { optional: true } ? N : never]?: M[N]['of'] extends ValueKind<infer T> ? T : never };
/** Several values that belong together, each with its label. */
export function group<const M extends Members>(members: M): ValueKind<GroupValue<M>> {
  const schemas = Object.entries(members).map(([name, { of, optional }]) => [name, optional ? of.schema.exactOptional() : of.schema]);
  const controls = Object.entries(members).map(([name, { label, of, optional }]) => [
    name,
    { label, control: of.control, optional: optional === true },
  ]);
  return {
    schema: z.strictObject(Object.fromEntries(schemas)) as unknown as z.ZodType<GroupValue<M>>,
    control: { kind: 'group', members: Object.fromEntries(controls) },
  };
}
