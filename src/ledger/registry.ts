// The one place where an entry type's own types are erased, so that generic code can call decide, facts and say.
import type { Doubt, EntryType, Field, Form, Now, Refusal, Stamp, Tell } from '../book/entry.ts';
import type { Fact } from '../book/facts.ts';
import type { States } from '../book/holding.ts';
import type { Asker, May } from '../book/may.ts';
import type { Control } from '../book/values.ts';
import { ENTRIES } from '../entries/index.ts';
import { writable } from '../log/canonical.ts';
import type { Ref } from '../units/ids.ts';
import type { Reading } from '../weighing/reading.ts';
import type { Leaf } from './leaf.ts';

export type Values = Readonly<Record<string, unknown>>;
export type Views = Readonly<Record<string, States[keyof States] | undefined>>;
/** An entry type with its fields' types erased. */
export interface AnyEntry extends Pick<EntryType, 'type' | 'version' | 'commutes' | 'ownPage' | 'next' | 'upcast'> {
  readonly fields: Readonly<Record<string, Field<unknown>>>;
  readonly subject: string;
  readonly form: Form<Readonly<Record<string, Field<unknown>>>>;
  readonly may: May | ((view: Views, data: Values, asker: Asker) => May);
  decide(view: Views, data: Values, now: Now): Refusal | null;
  doubt?(view: Views, data: Values): Doubt | null;
  facts(data: Values, stamp: Stamp): readonly Fact[];
  say(data: Values, name: (of: Ref) => string): string;
  readonly tell: Tell<Values>;
}
/** Entry types by name. */
export type Registry = Readonly<Record<string, AnyEntry>>;
const REGISTRY = ENTRIES as unknown as Registry;

/** All of them. */
export const ENTRY_TYPES: readonly AnyEntry[] = Object.values(REGISTRY);

/** Whether this program knows the type in that version. */
export const isEntryType = (type: string, version: number): boolean =>
  Object.hasOwn(REGISTRY, type) && version <= (REGISTRY[type]?.version ?? 0);

/** The entry type of that name; an unknown type or a later version throws, so that a replay never passes over an entry. */
export function entryType(type: string, version = 1, registry = REGISTRY): AnyEntry {
  const entry = Object.hasOwn(registry, type) ? registry[type] : undefined;
  if (!entry) throw new Error(`unknown entry type ${type}`);
  if (version > entry.version) throw new Error(`${type} version ${version} is newer than this program (${entry.version})`);
  return entry;
}

/** The leaf's open data in the form of the newest version of its type. */
export function openData(leaf: Pick<Leaf, 'type' | 'ver' | 'data'>, registry = REGISTRY): Values {
  const entry = entryType(leaf.type, leaf.ver, registry);
  let data: Values = leaf.data;
  for (let version = leaf.ver; version < entry.version; version++) {
    if (!entry.upcast) throw new Error(`${leaf.type} has no way from version ${version} to ${version + 1}`);
    data = entry.upcast(data, version);
  }
  return data;
}

/** Checks each field against its schema; the first problem, beside its field, or null. A field the entry does not have is a bug of the form. */
export function checkFields(entry: AnyEntry, data: Values): Refusal<'invalid'> | null {
  for (const name of Object.keys(data)) {
    if (!Object.hasOwn(entry.fields, name)) return { refused: 'invalid', say: `${entry.type} has no field ${name}.`, field: name };
  }
  for (const [name, field] of Object.entries(entry.fields)) {
    const value = data[name];
    if (value === undefined) {
      if (!field.mayBeMissing) return { refused: 'invalid', say: 'Fill this in.', field: name };
      continue;
    }
    const issue = field.schema.safeParse(value).error?.issues[0];
    if (issue) return { refused: 'invalid', say: issue.message, field: [name, ...issue.path].join('.') };
  }
  return checkText(data);
}

/** The stamp and the digests of sealed fields need room beside the data. */
const DATA_MAX_BYTES = 60_000;

function checkText(data: Values): Refusal<'invalid'> | null {
  const bytes = writable(Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined)));
  if (!(bytes instanceof Uint8Array)) return { refused: 'invalid', say: bytes.say, field: bytes.path.join('.') };
  if (bytes.length <= DATA_MAX_BYTES) return null;
  return { refused: 'invalid', say: 'This is too much for one entry. Shorten the texts and put the rest in a note.' };
}

/** Every reading in the data, however deep its control puts it, with the path of its field. */
export function readingsIn(
  entry: AnyEntry,
  data: Readonly<Record<string, unknown>>,
): readonly { readonly path: string; readonly reading: Reading }[] {
  return Object.entries(entry.fields).flatMap(([name, field]) => walk(field.control, data[name], name));
}

function walk(control: Control, value: unknown, path: string): readonly { readonly path: string; readonly reading: Reading }[] {
  if (value === undefined) return [];
  if (control.kind === 'weight') return [{ path, reading: value as Reading }];
  if (control.kind === 'list') return (value as readonly unknown[]).flatMap((one, index) => walk(control.of, one, `${path}.${index}`));
  if (control.kind !== 'group') return [];
  return Object.entries(control.members).flatMap(([name, { control: inner }]) => walk(inner, (value as Values)[name], `${path}.${name}`));
}
