import { ENTRIES } from '../entries/index.js';
import { writable } from '../log/canonical.js';

const REGISTRY = ENTRIES;
/** Whether this program knows the type in that version. */
export const isEntryType = (type, version) => Object.hasOwn(REGISTRY, type) && version <= (REGISTRY[type]?.version ?? 0);
/** The entry type of that name; an unknown type or a later version throws, so that a replay never passes over an entry. */
export function entryType(type, version) {
  const entry = Object.hasOwn(REGISTRY, type) ? REGISTRY[type] : undefined;
  if (!entry) throw new Error(`unknown entry type ${type}`);
  if (version !== undefined && version > entry.version)
    throw new Error(`${type} version ${version} is newer than this program (${entry.version})`);
  return entry;
}
/** The leaf's open data in the form of the newest version of its type. */
export function openData(leaf) {
  const entry = entryType(leaf.type, leaf.ver);
  let data = leaf.data;
  for (let version = leaf.ver; version < entry.version; version++) {
    if (!entry.upcast) throw new Error(`${leaf.type} has no way from version ${version} to ${version + 1}`);
    data = entry.upcast(data, version);
  }
  return data;
}
/** Checks each field against its schema; the first problem, beside its field, or null. A field the entry does not have is a bug of the form. */
export function checkFields(entry, data) {
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
function checkText(data) {
  const bytes = writable(Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined)));
  if (!(bytes instanceof Uint8Array)) return { refused: 'invalid', say: bytes.say, field: bytes.path.join('.') };
  if (bytes.length <= DATA_MAX_BYTES) return null;
  return { refused: 'invalid', say: 'This is too much for one entry. Shorten the texts and put the rest in a note.' };
}
/** Every reading in the data, however deep its control puts it, with the path of its field. */
export function readingsIn(entry, data) {
  return Object.entries(entry.fields).flatMap(([name, field]) => walk(field.control, data[name], name));
}
function walk(control, value, path) {
  if (value === undefined) return [];
  if (control.kind === 'weight') return [{ path, reading: value }];
  if (control.kind === 'list') return value.flatMap((one, index) => walk(control.of, one, `${path}.${index}`));
  if (control.kind !== 'group') return [];
  return Object.entries(control.members).flatMap(([name, { control: inner }]) => walk(inner, value[name], `${path}.${name}`));
}
