// Form text ↔ values, by control: what a form posts is read into the leaf's value, and a value is written back into a form.
import { isCivilDate, localText } from '../units/dates.ts';
import { type MassNg, type MassUnit, parseMass, splitUnit } from '../units/mass.ts';
import { type Currency, formatMoney, parseMoney } from '../units/money.ts';
import { BASES, MASS_UNITS, MASS_WORDS, type Reading } from '../weighing/reading.ts';
import type { Range } from './facts.ts';
import type { Control, Member } from './values.ts';

/** What was posted: every value of a name, in order. */
export type Posted = ReadonlyMap<string, readonly string[]>;
export interface Problem {
  readonly field: string;
  readonly say: string;
}
/** What reading a form needs to know of the shop. */
export interface Shop {
  readonly currency: Currency;
  /** Minutes to add to a local time to give UTC, at that local time, in the shop's zone. */
  readonly zone: string;
  readonly balances: ReadonlyMap<string, { readonly unit: MassUnit; readonly ranges: readonly Range[] }>;
  /** Tares on the list: what may be on the pan with a piece, and its weight. */
  readonly tares: ReadonlyMap<string, MassNg>;
}
/** A value, nothing (left empty), or what is wrong and what to do. */
export type Read = { readonly value: unknown } | { readonly problems: readonly Problem[] } | null;

/** Characters that turn the direction of what follows (UAX 9, 2.1–2.4), and those that stand around typed text in a sentence: no page could be trusted with them, and nothing typed is lost with them. */
const UNSEEN = /[\u202A-\u202E\u2066-\u2069\uE0F0\uE0F1]/g;

/** What was typed as it is written: composed (UAX 15, NFC), without blanks around it, and without what turns the sentence it will stand in. */
export const plainText = (typed: string): string => typed.replace(UNSEEN, '').normalize('NFC').trim();

const problem = (field: string, say: string): Read => ({ problems: [{ field, say }] });

/** Reads the value of a control posted under `name`; null where nothing was filled in. */
export function readControl(control: Control, posted: Posted, name: string, shop: Shop): Read {
  const typed = plainText((posted.get(name)?.[0] ?? '').replace(/\r\n?/g, '\n'));
  switch (control.kind) {
    case 'weight':
      return readWeight(posted, name, shop);
    case 'group':
      return readGroup(control.members, posted, name, shop);
    case 'list':
      return readList(control.of, posted, name, shop);
    case 'choices':
      return posted.has(name) ? { value: (posted.get(name) ?? []).filter((code) => code !== '') } : null;
    case 'any':
      return typed === '' ? null : { value: typed };
  }
  if (typed === '') return null;
  switch (control.kind) {
    case 'text':
    case 'choice':
    case 'ref':
    case 'fresh':
    case 'file':
      return { value: typed };
    case 'tick':
      return { value: true };
    case 'count':
      return /^\d{1,16}$/.test(typed) ? { value: Number(typed) } : problem(name, 'Type a whole number, 0 or more.');
    case 'decimal':
      return { value: typed.replace(',', '.') };
    case 'money': {
      const value = parseMoney(typed, shop.currency);
      return value ? { value } : problem(name, `Type an amount, for example ${formatMoney({ minor: 2850, currency: shop.currency })}.`);
    }
    case 'day':
      return isCivilDate(typed) ? { value: typed } : problem(name, 'Give the day as year, month, day: 2026-12-08.');
    case 'instant': {
      const ms = localInstant(typed, shop.zone);
      return ms === null ? problem(name, 'Give the day and the time, from 1970 on: 2026-12-08T14:30.') : { value: ms };
    }
  }
}

function readGroup(members: Readonly<Record<string, Member>>, posted: Posted, name: string, shop: Shop): Read {
  const value: Record<string, unknown> = {};
  const problems: Problem[] = [];
  const missing: Problem[] = [];
  let said = false;
  for (const [member, { control, optional }] of Object.entries(members)) {
    const read = readControl(control, posted, `${name}.${member}`, shop);
    if (read === null) {
      if (!optional) missing.push({ field: `${name}.${member}`, say: 'Fill this in.' });
    } else if ('value' in read) {
      value[member] = read.value;
      said ||= control.kind !== 'fresh';
    } else problems.push(...read.problems);
  }
  if (!said && problems.length === 0) return null;
  return problems.length + missing.length > 0 ? { problems: [...problems, ...missing] } : { value };
}

function readList(of: Control, posted: Posted, name: string, shop: Shop): Read {
  const rows = new Set(
    [...posted.keys()].flatMap(
      (key) => /^(0|[1-9]\d{0,3})(?:\.|$)/.exec(key.startsWith(`${name}.`) ? key.slice(name.length + 1) : '')?.[1] ?? [],
    ),
  );
  const values: unknown[] = [];
  const problems: Problem[] = [];
  for (const row of [...rows].map(Number).sort((a, b) => a - b)) {
    const read = readControl(of, posted, `${name}.${row}`, shop);
    if (read === null) continue;
    if ('value' in read) values.push(read.value);
    else problems.push(...read.problems);
  }
  if (problems.length > 0) return { problems };
  return values.length === 0 ? null : { value: values };
}

/** A weight: what the balance showed, which balance, what was with it on the pan, and a second reading with its reason where one was asked for. */
function readWeight(posted: Posted, name: string, shop: Shop): Read {
  const get = (part: string) => plainText(posted.get(`${name}.${part}`)?.[0] ?? '');
  const text = get('text');
  if (text === '') return null;
  const basis = BASES.find((one) => one === (get('basis') || 'weighed'));
  if (!basis) return problem(`${name}.basis`, 'Say how the weight is known: choose one of these.');
  const balanceId = basis === 'weighed' ? get('balance') : '';
  const balance = shop.balances.get(balanceId);
  if (basis === 'weighed' && !balance) return problem(`${name}.balance`, 'Say which balance it was read on.');
  const unit = balance?.unit ?? MASS_UNITS.find((one) => one === (get('unit') || 'g'));
  if (!unit) return problem(`${name}.unit`, `Choose the unit: ${MASS_UNITS.join(', ')}.`);
  const typed = figureIn(text, unit, balance !== undefined);
  if ('say' in typed) return problem(`${name}.text`, typed.say);
  const parsed = parseMass(typed.figure, unit);
  if ('problem' in parsed) return problem(`${name}.text`, MASS_WORDS[parsed.problem]);
  if (parsed.ng <= 0) return problem(`${name}.text`, 'A weight is more than zero. Type what the balance shows.');
  const stepNg = (balance?.ranges.find(({ maxNg }) => parsed.ng <= maxNg) ?? balance?.ranges.at(-1))?.stepNg;
  const second = figureIn(get('again'), unit, balance !== undefined);
  if ('say' in second) return problem(`${name}.again`, second.say);
  const again = second.figure;
  const repeat = again === '' ? null : parseMass(again, unit);
  if (repeat && 'problem' in repeat) return problem(`${name}.again`, MASS_WORDS[repeat.problem]);
  const onPan = (posted.get(`${name}.with`) ?? []).filter((thing) => thing !== '').map((thing) => withTare(thing, shop));
  const dry = get('dry');
  const because = get('because');
  const formula = get('formula');
  return {
    value: {
      ...{ text: typed.figure, unit, ng: parsed.ng, basis },
      ...(balance ? { balance: balanceId, stepNg } : {}),
      ...(onPan.length > 0 ? { onPan } : {}),
      ...(dry === '' ? {} : { dry }),
      ...(again === '' ? {} : { repeats: [again] }),
      ...(because === '' ? {} : { because }),
      ...(formula === '' || basis !== 'estimate' ? {} : { formula }),
    },
  };
}

/** What was typed without the unit behind it, or what to do where that is another unit than the balance shows or the field takes. */
function figureIn(text: string, unit: MassUnit, onBalance: boolean): { readonly figure: string } | { readonly say: string } {
  const typed = splitUnit(text);
  if (typed.unit === null || typed.unit === unit) return { figure: typed.figure };
  const where = onBalance ? `That balance shows ${unit}` : `The unit chosen is ${unit}`;
  return {
    say: `${where}, and ${typed.unit} is typed: type it in ${unit}, or choose ${onBalance ? 'the balance it was read on' : typed.unit}.`,
  };
}

function withTare(thing: string, { tares }: Shop): { thing: string; tareNg?: MassNg } {
  const tareNg = tares.get(thing);
  return tareNg === undefined ? { thing } : { thing, tareNg };
}

/** The form text of a value, by posted name; reading it back gives the value. */
export function writeControl(control: Control, value: unknown, name: string, zone: string): readonly (readonly [string, string])[] {
  if (value === undefined) return [];
  switch (control.kind) {
    case 'weight':
      return writeWeight(value as Reading, name);
    case 'group':
      return Object.entries(control.members).flatMap(([member, { control: inner }]) =>
        writeControl(inner, (value as Readonly<Record<string, unknown>>)[member], `${name}.${member}`, zone),
      );
    case 'list':
      return (value as readonly unknown[]).flatMap((one, row) => writeControl(control.of, one, `${name}.${row}`, zone));
    case 'choices':
      return (value as readonly string[]).map((code) => [name, code]);
    case 'money':
      return [[name, formatMoney(value as Parameters<typeof formatMoney>[0])]];
    case 'tick':
      return [[name, 'yes']];
    case 'instant':
      return [[name, localText(Number(value), zone)]];
    default:
      return [[name, String(value)]];
  }
}

function writeWeight(reading: Reading, name: string): readonly (readonly [string, string])[] {
  const { text, unit, basis, balance, dry, repeats, because, onPan, formula } = reading;
  const parts = { text, unit, basis, balance, dry, again: repeats?.[0], because, formula };
  const said = Object.entries(parts).flatMap(([part, value]) => (value === undefined ? [] : [[`${name}.${part}`, value] as const]));
  return [...said, ...(onPan ?? []).map(({ thing }) => [`${name}.with`, thing] as const)];
}

const LOCAL = /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?$/;
const DAY_MS = 86_400_000;

/**
 * The instant of a local time in the zone, or null where it is none or before 1970. A time that a clock change doubles gives its first
 * meaning; one that it skips is as long after the change as it seems to be.
 */
export function localInstant(text: string, zone: string): number | null {
  const [, day] = LOCAL.exec(text) ?? [];
  if (day === undefined || !isCivilDate(day) || day < '1970' || day >= '9999-12-31') return null;
  const asUtc = Date.parse(`${text}${text.length === 16 ? ':00' : ''}Z`);
  const offsetNear = (at: number) => Date.parse(`${localText(at, zone)}:00Z`) - Math.floor(at / 60_000) * 60_000;
  const before = asUtc - offsetNear(asUtc - DAY_MS);
  const after = asUtc - offsetNear(asUtc + DAY_MS);
  const meant = [before, after].sort((a, b) => a - b).find((at) => localText(at, zone) === text.slice(0, 16)) ?? before;
  return meant < 0 ? null : meant;
}
