import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textOfUtf8, utf8 } from '../../src/log/bytes.ts';
import { type Json, jcs, LEAF_MAX_BYTES, profile, writable } from '../../src/log/canonical.ts';

const refusedBy = (outcome: object): unknown => ('refused' in outcome ? outcome.refused : 'accepted');
const nested = (depth: number): unknown => (depth === 0 ? 1 : { a: nested(depth - 1) });

describe('canonical JSON', () => {
  it.each([
    ['undefined', undefined],
    ['a member that is undefined', { a: undefined }],
    ['a function', () => 1],
    ['a symbol', Symbol('a')],
    ['a BigInt', 1n],
    ['NaN', Number.NaN],
    ['Infinity', Number.POSITIVE_INFINITY],
    ['a date, which has toJSON', new Date(0)],
    ['an object with toJSON', { toJSON: () => 1 }],
    ['a map', new Map([['a', 1]])],
    ['what only inherits from lists', Object.create(Array.prototype)],
    ['a boxed number', Object(1)],
    ['bytes', Uint8Array.of(1)],
    ['a list with a hole', new Array(2)],
    ['a list with a property', Object.assign([1], { a: 1 })],
    ['half a surrogate pair', '\ud83d'],
    ['half a surrogate pair in a key', { '\udc00': 1 }],
  ])('refuses %s', (_, value) => expect(() => jcs(value)).toThrow(TypeError));

  it('writes an object without a prototype like any other', () => {
    expect(jcs(Object.assign(Object.create(null), { a: 1 }))).toBe('{"a":1}');
    expect(writable(Object.assign(Object.create(null), { a: 1 }))).toEqual(utf8('{"a":1}'));
    expect(refusedBy(writable(Object.create(Array.prototype)))).toBe('not_data');
  });
  it('of the largest leaf is written, and of one byte more is not', () => {
    const filled = (bytes: number) => ({ a: 'x'.repeat(bytes - '{"a":""}'.length) });
    expect(writable(filled(LEAF_MAX_BYTES))).toHaveLength(LEAF_MAX_BYTES);
    expect(refusedBy(writable(filled(LEAF_MAX_BYTES + 1)))).toBe('too_large');
  });
  it('writes -0 as 0', () => expect(jcs([-0])).toBe('[0]')); // RFC 8785, section 3.2.2.3, by ECMAScript Number::toString
  it('writes an own member called __proto__', () => expect(jcs(JSON.parse('{"__proto__":1,"a":2}'))).toBe('{"__proto__":1,"a":2}'));

  it('says the same as JSON, whatever the order of the keys', () => {
    fc.assert(
      fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
        const plain: unknown = JSON.parse(JSON.stringify(value));
        expect(JSON.parse(jcs(plain))).toEqual(plain);
        expect(jcs(reversed(plain))).toBe(jcs(plain));
      }),
    );
  });
});

function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, member]) => [key, reversed(member)]),
  );
}

describe('the profile of a verifier', () => {
  it.each([
    ['{"a":1,"a":2}', 'not_canonical'],
    ['{"b":1,"a":2}', 'not_canonical'],
    ['[1.0]', 'not_canonical'],
    ['[1e2]', 'not_canonical'],
    ['[-0]', 'not_canonical'],
    ['[ 1]', 'not_canonical'],
    ['[1]\n', 'not_canonical'],
    ['["\\u0041"]', 'not_canonical'],
    ['["\\/"]', 'not_canonical'],
    ['["\\u000A"]', 'not_canonical'],
    ['[1.5]', 'not_whole'],
    ['[9007199254740992]', 'not_whole'],
    ['[1e400]', 'not_whole'],
    ['[null]', 'not_data'],
    ['["\\ud83d"]', 'lone_surrogate'],
    ['{"__proto__":1}', 'bad_key'],
    ['{"Weight":1}', 'bad_key'],
    ['{"weight_ng":1}', 'bad_key'],
    ['{"":1}', 'bad_key'],
    ['[1,]', 'not_json'],
    ['\ufeff[1]', 'not_json'],
    ['[NaN]', 'not_json'],
    ['', 'not_json'],
  ])('refuses %s: %s', (text, code) => expect(refusedBy(profile(utf8(text)))).toBe(code));

  it('refuses bytes that are not UTF-8', () => expect(refusedBy(profile(Uint8Array.of(0x22, 0xff, 0x22)))).toBe('not_utf8'));
  it('takes texts that are not NFC or hold control characters, which depend on the Unicode version', () => {
    expect(profile(utf8('["e\u0301"]'))).toEqual({ value: ['e\u0301'] });
    expect(profile(utf8('["\\u0001"]'))).toEqual({ value: ['\u0001'] });
  });
  it('takes eight levels and refuses nine', () => {
    expect(refusedBy(profile(utf8(jcs(nested(8)))))).toBe('accepted');
    expect(refusedBy(profile(utf8(jcs(nested(9)))))).toBe('too_deep');
    expect(refusedBy(profile(utf8(`${'['.repeat(30_000)}${']'.repeat(30_000)}`)))).toBe('too_deep');
  });
  it('takes 65,535 bytes and refuses one more', () => {
    const text = (bytes: number) => utf8(`["${'a'.repeat(bytes - 4)}"]`);
    expect(refusedBy(profile(text(LEAF_MAX_BYTES)))).toBe('accepted');
    expect(refusedBy(profile(text(LEAF_MAX_BYTES + 1)))).toBe('too_large');
  });
});

describe('what the writer may store', () => {
  it.each([
    ['a text with a combining accent', { data: { note: 'caf\u0065\u0301' } }, 'not_nfc', ['data', 'note']],
    ['half a character', { data: { note: '\ud83d' } }, 'lone_surrogate', ['data', 'note']],
    ['a tabulator', { data: { notes: ['a', 'b\tc'] } }, 'control_character', ['data', 'notes', '1']],
    ['a carriage return', { note: 'a\r\nb' }, 'control_character', ['note']],
    ['a C1 control', { note: '\u0085' }, 'control_character', ['note']],
    ['a fraction', { data: { reading: { ng: 1.5 } } }, 'not_whole', ['data', 'reading', 'ng']],
    ['2^53', { seq: 2 ** 53 }, 'not_whole', ['seq']],
    ['null', { a: null }, 'not_data', ['a']],
    ['undefined', { a: undefined }, 'not_data', ['a']],
    ['a BigInt', { a: 1n }, 'not_data', ['a']],
    ['a date', { at: new Date(0) }, 'not_data', ['at']],
    ['toJSON', { a: { toJSON: () => 1 } }, 'not_data', ['a', 'toJSON']],
    ['a list with a hole', { a: new Array(1) }, 'not_data', ['a']],
    ['a key with an underscore', { data: { gross_ng: 1 } }, 'bad_key', ['data', 'gross_ng']],
    ['nine levels', nested(9), 'too_deep', Array(8).fill('a')],
    ['65,536 bytes', { a: 'x'.repeat(65_528) }, 'too_large', []],
  ])('refuses %s and says where', (_, value, refused, path) => expect(writable(value)).toMatchObject({ refused, path }));

  it('takes several lines', () => expect(textOfUtf8(writable({ note: 'a\nb' }) as Uint8Array)).toBe('{"note":"a\\nb"}'));

  const key = fc.stringMatching(/^[a-z][A-Za-z0-9]{0,6}$/);
  const { value: anyValue } = fc.letrec<{ value: Json }>((tie) => ({
    value: fc.oneof(
      { maxDepth: 5 },
      fc.boolean(),
      fc.maxSafeInteger(),
      fc.string({ unit: 'grapheme' }).map((text) => text.normalize('NFC')),
      fc.array(tie('value'), { maxLength: 4 }),
      fc.dictionary(key, tie('value'), { maxKeys: 4, noNullPrototype: true }),
    ),
  }));
  it('is what a verifier reads back', () => {
    fc.assert(
      fc.property(anyValue, (value) => {
        const bytes = writable(value);
        fc.pre(!('refused' in bytes));
        expect(profile(bytes)).toEqual({ value });
      }),
    );
  });
  it('cannot be changed into other bytes of the same value', () => {
    fc.assert(
      fc.property(anyValue, fc.nat(), fc.integer({ min: 0x20, max: 0x7e }), (value, at, byte) => {
        const bytes = writable(value);
        fc.pre(!('refused' in bytes));
        const place = at % (bytes.length + 1);
        const longer = Uint8Array.of(...bytes.slice(0, place), byte, ...bytes.slice(place));
        expect(profile(longer)).not.toEqual({ value });
      }),
    );
  });
});
