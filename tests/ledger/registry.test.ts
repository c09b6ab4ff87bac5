// The list of entry types as generic code asks it: which are known, what data they take, and where readings are in them.
import { describe, expect, it } from 'vitest';
import { type Field, optional, stated } from '../../src/book/entry.ts';
import { any, count, group, list, text, weight } from '../../src/book/values.ts';
import { type AnyEntry, checkFields, ENTRY_TYPES, entryType, isEntryType, readingsIn } from '../../src/ledger/registry.ts';
import { massNg } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';

const entry = (fields: Readonly<Record<string, Field<never>>>): AnyEntry => ({
  ...entryType('note_added'),
  fields: fields as unknown as AnyEntry['fields'],
});
const field = (of: object) => of as Field<never>;

describe('an entry type', () => {
  it('is known by its own name, in its version and those before it', () => {
    for (const { type, version } of ENTRY_TYPES) {
      expect([1, version, version + 1].map((one) => isEntryType(type, one))).toEqual([true, true, false]);
      expect(entryType(type)).toBe(entryType(type, version));
      expect(() => entryType(type, version + 1)).toThrow(/newer than this program/);
    }
    for (const name of ['toString', 'nothing', '']) {
      expect([isEntryType(name, 1), isEntryType(name, 0)]).toEqual([false, false]);
      expect(() => entryType(name)).toThrow(/unknown entry type/);
    }
  });
});

describe('the data of an entry', () => {
  it('needs what may not be missing, and nothing else; a member that says nothing is none', () => {
    const of = entry({ text: field(stated(text(5))), more: field(optional(stated(text(5)))) });
    expect(checkFields(of, { text: 'x' })).toBeNull();
    expect(checkFields(of, { text: 'x', more: undefined })).toBeNull();
    expect(checkFields(of, { more: 'x' })).toMatchObject({ refused: 'invalid', field: 'text' });
    expect(checkFields(of, { text: 'x', more: '123456' })).toMatchObject({ field: 'more' });
    expect(checkFields(of, { text: 'x', toString: 'x' })).toMatchObject({ field: 'toString' });
  });
  it('is told by the place in it that is wrong, of its form or of its text', () => {
    const of = entry({
      parts: field(stated(list(group({ name: { label: 'Name', of: any() }, many: { label: 'How many', of: count(3) } })))),
    });
    const [good, over, split] = [
      { name: 'a', many: 3 },
      { name: 'b', many: 4 },
      { name: 'cafe\u0301', many: 1 },
    ];
    expect(checkFields(of, { parts: [good, good] })).toBeNull();
    expect(checkFields(of, { parts: [good, over] })).toMatchObject({ field: 'parts.1.many' });
    expect(checkFields(of, { parts: [good, split] })).toMatchObject({ refused: 'invalid', field: 'parts.1.name' });
  });
  it('is 60,000 bytes at most, as it is written', () => {
    const of = entry({ all: field(stated(any())) });
    // {"all":"…"} has ten bytes beside the text, and an é has two.
    expect(checkFields(of, { all: 'x'.repeat(59_990) })).toBeNull();
    expect(checkFields(of, { all: 'x'.repeat(59_991) })).toMatchObject({ refused: 'invalid', say: expect.stringContaining('too much') });
    expect(checkFields(of, { all: 'é'.repeat(29_995) })).toBeNull();
    expect(checkFields(of, { all: 'é'.repeat(29_996) })).toMatchObject({ refused: 'invalid' });
  });
});

describe('the readings in an entry', () => {
  it('are found however deep they stand, with the way to them', () => {
    const read = (grams: string): Reading => ({ text: grams, unit: 'g', ng: massNg(1), basis: 'weighed' });
    const inside = group({ at: { label: 'Weight', of: weight() }, name: { label: 'Name', of: text(5) } });
    const of = entry({
      weight: field(optional(stated(weight()))),
      parts: field(stated(list(inside))),
      one: field(optional(stated(inside))),
    });
    const [a, b, c, d] = ['1', '2', '3', '4'].map(read);
    const found = readingsIn(of, {
      weight: a,
      parts: [{ at: b, name: 'x' }, { name: 'y' }, { at: c, name: 'z' }],
      one: { at: d, name: 'w' },
    });
    expect(found).toEqual([
      { path: 'weight', reading: a },
      { path: 'parts.0.at', reading: b },
      { path: 'parts.2.at', reading: c },
      { path: 'one.at', reading: d },
    ]);
    expect(readingsIn(of, { parts: [{ at: b, name: 'x' }] })).toEqual([{ path: 'parts.0.at', reading: b }]);
  });
});
