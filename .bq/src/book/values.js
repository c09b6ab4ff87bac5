// The kinds of value a field may hold: the schema of the leaf's value, and the control by which a form asks for it.
import { z } from 'zod';
import { isCivilDate } from '../units/dates.js';
import { isRef } from '../units/ids.js';
import { CURRENCIES } from '../units/money.js';
import { readingSchema } from '../weighing/reading.js';

const TEXT_MAX = 4000;
const tooLong = (max) => `Write at most ${max.toLocaleString('en')} characters; put the rest in a second note.`;
/** One line of text, at most `max` characters. */
export const text = (max = 200) => ({
  schema: z
    .string()
    .min(1, 'Fill this in.')
    .max(max, tooLong(max))
    .regex(/^[^\n]*$/, 'Write this on one line.'),
  control: { kind: 'text', max, lines: false },
});
/** Several lines of text. */
export const lines = (max = TEXT_MAX) => ({
  schema: z.string().min(1, 'Fill this in.').max(max, tooLong(max)),
  control: { kind: 'text', max, lines: true },
});
/** One of a few stored codes, each with its words. */
export const choice = (options) => ({
  schema: z.enum(Object.keys(options), 'Choose one of these.'),
  control: { kind: 'choice', options },
});
/** Any of a few stored codes, in the order of the list. */
export const choices = (options) => ({
  schema: z.array(z.enum(Object.keys(options))).max(Object.keys(options).length),
  control: { kind: 'choices', options },
});
/** A whole number from `min` to `max`. */
export const count = (max = 999, min = 0) => ({
  schema: z.int('Type a whole number.').min(min, `Type a whole number, ${min} or more.`).max(max, `Type a whole number up to ${max}.`),
  control: { kind: 'count', max },
});
/** A measured number kept as it was read, with a point: "17.35". */
export const decimal = (unit) => ({
  schema: z.string().regex(/^\d{1,6}(\.\d{1,6})?$/, `Type a number in ${unit}, for example 2.5.`),
  control: { kind: 'decimal', unit },
});
/** An amount of money in minor units with its currency. */
export const money = () => ({
  schema: z.strictObject({ minor: z.int().min(0), currency: z.enum(CURRENCIES) }),
  control: { kind: 'money' },
});
/** A day on the calendar. */
export const day = () => ({
  schema: z.custom((value) => typeof value === 'string' && isCivilDate(value), 'Give a day of the calendar.'),
  control: { kind: 'day' },
});
/** A moment, in milliseconds since 1970 UTC. */
export const moment = () => ({
  schema: z.custom((value) => Number.isSafeInteger(value) && Number(value) >= 0, 'Give a day and a time.'),
  control: { kind: 'instant' },
});
/** Something that was done or agreed; a box that must be ticked to be said at all. */
export const tick = () => ({ schema: z.literal(true, 'Tick this to go on.'), control: { kind: 'tick' } });
/** What a balance said. */
export const weight = () => ({ schema: readingSchema, control: { kind: 'weight' } });
/** SHA-256 of a stored file, 64 hexadecimal digits. */
export const file = () => ({
  schema: z.string().regex(/^[0-9a-f]{64}$/, 'Choose a photograph.'),
  control: { kind: 'file' },
});
/** Any value that can stand in a leaf: in a correction alone, where the target's own field checks it. */
export const any = () => ({ schema: z.json(), control: { kind: 'any' } });
/** The name of a thing that begins, made with the form and not shown; alone it fills no row of a list. */
export const fresh = (kind) => ({
  schema: z.custom((value) => typeof value === 'string' && isRef(kind, value), 'Open the form again.'),
  control: { kind: 'fresh', of: kind },
});
/** Several of one kind, at most `max`. */
export const list = (of, max = 20) => ({
  schema: z.array(of.schema).min(1, 'Give at least one.').max(max, `Give at most ${max}.`),
  control: { kind: 'list', of: of.control, max },
});
/** Several values that belong together, each with its label. */
export function group(members) {
  const schemas = Object.entries(members).map(([name, { of, optional }]) => [name, optional ? of.schema.exactOptional() : of.schema]);
  const controls = Object.entries(members).map(([name, { label, of, optional }]) => [
    name,
    { label, control: of.control, optional: optional === true },
  ]);
  return {
    schema: z.strictObject(Object.fromEntries(schemas)),
    control: { kind: 'group', members: Object.fromEntries(controls) },
  };
}
