// What every entry type must hold, whatever it is about.
import { readdirSync } from 'node:fs';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { Fields } from '../../src/book/entry.ts';
import type { Fact } from '../../src/book/facts.ts';
import type { AskCode, RefusalCode } from '../../src/entries/index.ts';
import { isRef } from '../../src/units/ids.ts';
import { nameOf } from '../vectors/samples.ts';
import { deciding, kindOf, piece, sampleOf, stamp, stone, table } from './views.ts';

const SOURCE = new URL('../../src/entries/', import.meta.url);
const files = readdirSync(SOURCE).filter((name) => name !== 'index.ts');

/** Entries whose usual line needs another state than work agreed. */
const USUAL: Readonly<Record<string, object>> = {
  piece_returned: { piece: piece({ jobStatus: 'finished' }) },
  device_withdrawn: { shop: { kind: 'shop', says: { 'device:dev-1': 'Counter' } } },
  stone_unset: { stone: stone({ loose: false }) },
};

const openOf = (fields: Fields, data: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(Object.entries(data).filter(([name]) => [null, 'as its target'].includes(fields[name]?.sealed ?? null)));

/** What must be filled in. */
const leastOf = (fields: Fields, data: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(Object.entries(data).filter(([name]) => !fields[name]?.mayBeMissing));
/** The same with nothing ticked of what may be several. */
const tickless = (fields: Fields, data: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(Object.entries(data).map(([name, value]) => [name, fields[name]?.control.kind === 'choices' ? [] : value]));

/** Every thing a fact names. */
function named(one: Fact): readonly string[] {
  if (one.fact === 'flow') return [one.from, one.to].filter((end) => end !== 'outside' && end !== 'between jobs');
  if (one.fact === 'place') return [one.of, one.at];
  return [one.of];
}

describe('the list of entries', () => {
  it('holds one entry type for each file, under its own name', () => {
    expect(table.map(([name, { type }]) => [name, type])).toEqual(table.map(([name]) => [name, name]));
    expect(table.map(([name]) => `${name.replaceAll('_', '-')}.ts`).toSorted()).toEqual(files.toSorted());
  });

  it('knows every code that an entry refuses or asks with, and no other', () => {
    expectTypeOf<'piece_is_gone' | 'stone_count_differs'>().toExtend<RefusalCode>();
    expectTypeOf<'cut_exceeds_piece' | 'added_exceeds_source'>().toExtend<AskCode>();
    expectTypeOf<string>().not.toExtend<AskCode>();
    expectTypeOf<string>().not.toExtend<RefusalCode>();
  });

  it('gives no field a name that forms keep for themselves', () => {
    const kept = ['formKey', 'pin', 'password', 'agreed', 'change', 'addRow', 'occurredAt', 'draft', 'seen', 'rows', 'termsRead'];
    const names = table.flatMap(([, { fields }]) => Object.keys(fields as Fields));
    expect(names.filter((name) => kept.includes(name))).toEqual([]);
  });
});

describe.each(table)('%s', (type, entry) => {
  const fields = entry.fields as Fields;
  const sample = sampleOf(type);

  it('has a label for every field, hints for its own fields alone, and a subject that it names or begins', () => {
    expect(Object.keys(entry.form.labels)).toEqual(Object.keys(fields));
    for (const label of Object.values(entry.form.labels)) expect(label).not.toBe('');
    for (const hinted of Object.keys(entry.form.hints ?? {})) expect(fields).toHaveProperty(hinted);
    const subject = fields[String(entry.subject)];
    expect(subject?.role).not.toBe('tells');
    expect(subject?.mayBeMissing).toBe(false);
  });

  it('keeps its field names in the form a leaf allows, and corrects nothing that was said or named', () => {
    for (const [name, { role, correctable, kinds }] of Object.entries(fields)) {
      expect(name).toMatch(/^[a-z][A-Za-z0-9]*$/);
      if (role !== 'tells') expect(correctable).toBe(false);
      expect(kinds.length > 0).toBe(role !== 'tells');
      if (role === 'begins') expect(kinds).toHaveLength(1);
    }
  });

  it('has a sample that its own fields take', () => {
    for (const [name, { schema, mayBeMissing, kinds }] of Object.entries(fields)) {
      const value = sample[name];
      if (value === undefined) expect(mayBeMissing, name).toBe(true);
      else expect(schema.safeParse(value).error?.issues ?? [], name).toEqual([]);
      const kind = kindOf(value);
      if (kinds.length > 0 && value !== undefined) expect(kind && isRef(kind, String(value)) && kinds.includes(kind), name).toBe(true);
    }
    expect(Object.keys(sample).every((name) => name in fields)).toBe(true);
  });

  it('goes in on a usual day', () => {
    expect(deciding(entry)(USUAL[type] ?? {})).toBeNull();
  });

  it('gives facts about nothing but what its fields name', () => {
    const refs = Object.keys(fields)
      .filter((name) => fields[name]?.role !== 'tells')
      .map((name) => sample[name]);
    const open = openOf(fields, sample);
    for (const said of [open, leastOf(fields, open)])
      for (const one of entry.facts(said, stamp))
        for (const id of named(one)) expect(refs.filter((ref) => ref !== undefined)).toContain(id);
  });

  it('says what happened when only the needed fields are filled in, and shows nothing that is sealed', () => {
    const open = openOf(fields, sample);
    const least = leastOf(fields, open);
    const bare = tickless(fields, open);
    const goesIn = deciding(entry)(USUAL[type] ?? {}, bare) === null;
    for (const said of [least, open, ...(goesIn ? [bare] : [])].map((data) => entry.say(data, nameOf))) {
      expect(said).toMatch(/^\S.*\S$/s);
      expect(said).not.toMatch(/undefined|NaN|\[object|[,:;] *[,:;]|: *$/);
    }
    expect(() => entry.facts(least, stamp)).not.toThrow();
  });

  it('tells a customer of it in words of its own, as it says it, or not at all', () => {
    const open = openOf(fields, sample);
    const least = leastOf(fields, open);
    const { tell } = entry;
    if (typeof tell !== 'function') return expect([null, 'as said']).toContain(tell);
    for (const said of [least, open]) expect(tell(said)).toMatch(/^(?!.*(undefined|NaN|\[object))\S.*\S$/s);
  });
});
