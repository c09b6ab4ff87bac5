// Form text → values: whatever is posted gives a value, nothing, or a sentence; local times around the changes of the clock.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localInstant, readControl, type Shop } from '../../src/book/codec.ts';
import type { Control } from '../../src/book/values.ts';
import { ENTRIES } from '../../src/entries/index.ts';

const shop: Shop = { currency: 'GBP', zone: 'Europe/London', balances: new Map(), tares: new Map() };
const sayOf = (posted: Readonly<Record<string, string>>, control: Control, name: string) => {
  const read = readControl(control, new Map(Object.entries(posted).map(([key, value]) => [key, [value]])), name, shop);
  return read && 'problems' in read ? read.problems.map(({ field }) => field) : read;
};

describe('a weight', () => {
  it.each([
    ['200 g', 'g', '200'],
    ['3,50g', 'g', '3,50'],
    ['1.25 ct.', 'ct', '1.25'],
    ['0.5 Carats', 'ct', '0.5'],
    ['3 dwt', 'dwt', '3'],
  ])('may have its own unit typed behind it: %s', (text, unit, figure) => {
    const posted = { 'w.text': text, 'w.basis': 'estimate', 'w.unit': unit };
    expect(sayOf(posted, { kind: 'weight' }, 'w')).toMatchObject({ value: { text: figure, unit } });
  });
  it.each([
    ['text', '200 g', 'ct', /unit chosen is ct, and g is typed.*or choose g\./],
    ['again', '1.25 ct', 'g', /unit chosen is g, and ct is typed.*or choose ct\./],
    ['text', '12 gr', 'g', /type it in g/],
  ] as const)('is stopped beside the field where another unit is typed behind it: %s %s', (part, text, unit, says) => {
    const posted = { 'w.text': '1', 'w.basis': 'estimate', 'w.unit': unit, [`w.${part}`]: text };
    const read = readControl({ kind: 'weight' }, new Map(Object.entries(posted).map(([name, value]) => [name, [value]])), 'w', shop);
    expect(read).toMatchObject({ problems: [{ field: `w.${part}`, say: expect.stringMatching(says) }] });
  });
  it('is no number where what stands behind it is no unit', () => {
    expect(sayOf({ 'w.text': '5 stone', 'w.basis': 'estimate', 'w.unit': 'g' }, { kind: 'weight' }, 'w')).toEqual(['w.text']);
    expect(sayOf({ 'w.text': '5 constructor', 'w.basis': 'estimate', 'w.unit': 'g' }, { kind: 'weight' }, 'w')).toEqual(['w.text']);
  });
  it('in a unit or on a basis that no form offers is answered beside its field', () => {
    const weight = { kind: 'weight' } as const;
    expect(sayOf({ 'w.text': '5.17', 'w.basis': 'estimate', 'w.unit': 'stone' }, weight, 'w')).toEqual(['w.unit']);
    expect(sayOf({ 'w.text': '5.17', 'w.basis': 'estimate', 'w.unit': 'constructor' }, weight, 'w')).toEqual(['w.unit']);
    expect(sayOf({ 'w.text': '5.17', 'w.basis': 'guessed', 'w.unit': 'g' }, weight, 'w')).toEqual(['w.basis']);
    expect(sayOf({ 'w.text': '5.17', 'w.basis': 'estimate', 'w.unit': 'ct' }, weight, 'w')).toMatchObject({ value: { unit: 'ct' } });
  });
});

describe('a text', () => {
  it('keeps nothing that turns the sentence it will stand in, and everything else', () => {
    const line = { kind: 'text', max: 200, lines: false } as const;
    // UAX 9: explicit embeddings and overrides U+202A to U+202E, isolates U+2066 to U+2069; a right-to-left word needs none of them.
    expect(sayOf({ t: 'ring \u202Emg 05.2\u202C \u2067x\u2069 \u{1F48D} שלום\u200F' }, line, 't')).toEqual({
      value: 'ring mg 05.2 x \u{1F48D} שלום\u200F',
    });
    expect(sayOf({ t: '\u202D+44 20 7946 0000\u202C' }, line, 't')).toEqual({ value: '+44 20 7946 0000' });
    expect(sayOf({ t: ' \u202E ' }, line, 't')).toBeNull();
    expect(sayOf({ 'w.text': '\u202D5.17\u202C', 'w.basis': 'estimate', 'w.unit': 'g' }, { kind: 'weight' }, 'w')).toMatchObject({
      value: { text: '5.17' },
    });
  });
  it('cannot end what marks it as typed', () => {
    expect(sayOf({ t: 'a \uE0F1claw\uE0F0' }, { kind: 'text', max: 200, lines: false }, 't')).toEqual({ value: 'a claw' });
  });
});

describe('a local time', () => {
  // Changes of the clock as in the IANA time zone database: London ends summer time on 25 Oct 2026 at 01:00 UTC, New York on 1 Nov 2026 at
  // 06:00 UTC, Lord Howe (half an hour) on 4 Apr 2026 at 15:00 UTC; New York begins it on 8 Mar 2026 at 07:00 UTC, London on 29 Mar at 01:00.
  it.each([
    ['2026-10-25T01:30', 'Europe/London', '2026-10-25T00:30Z'],
    ['2026-11-01T01:30', 'America/New_York', '2026-11-01T05:30Z'],
    ['2026-04-05T01:45', 'Australia/Lord_Howe', '2026-04-04T14:45Z'],
  ])('that a clock change doubles has its first meaning: %s in %s', (text, zone, utc) => {
    expect(localInstant(text, zone)).toBe(Date.parse(utc));
  });
  it.each([
    ['2026-03-08T02:30', 'America/New_York', '2026-03-08T07:30Z'],
    ['2026-03-29T01:30', 'Europe/London', '2026-03-29T01:30Z'],
  ])('that a clock change skips is as long after it: %s in %s', (text, zone, utc) => {
    expect(localInstant(text, zone)).toBe(Date.parse(utc));
  });
  it.each([
    ['2026-12-08T14:30', 'Europe/London', '2026-12-08T14:30Z'],
    ['2026-07-08T14:30', 'America/New_York', '2026-07-08T18:30Z'],
    ['2026-07-08T14:30:30', 'Asia/Kolkata', '2026-07-08T09:00:30Z'],
  ])('is read in its zone: %s in %s', (text, zone, utc) => {
    expect(localInstant(text, zone)).toBe(Date.parse(utc));
  });
  it.each(['1959-05-01T10:00', '0000-01-01T00:00', '9999-12-31T23:59', '2026-02-30T10:00', '2026-02-28T24:00', '2026-02-28T10:60'])(
    'that no entry can hold is answered beside its field: %s',
    (text) => {
      expect(sayOf({ at: text }, { kind: 'instant' }, 'at')).toEqual(['at']);
    },
  );
});

describe('whatever is posted', () => {
  const fields = Object.values(ENTRIES).flatMap((entry) => Object.entries(entry.fields).map(([name, { control }]) => ({ name, control })));
  const parts = ['', '.text', '.unit', '.basis', '.balance', '.with', '.again', '.dry', '.0', '.0.name', '.00', '.1e3', '.__proto__'];
  const value = fc.oneof(fc.string(), fc.constantFrom('5.17', 'g', 'stone', 'weighed', 'estimate', '1959-05-01T10:00', '__proto__', '-0'));
  it('is read into a value, nothing, or sentences, and never throws', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...fields),
        fc.array(fc.tuple(fc.constantFrom(...parts), fc.array(value)), { maxLength: 8 }),
        (of, said) => {
          const read = readControl(of.control, new Map(said.map(([part, values]) => [of.name + part, values])), of.name, shop);
          if (read && 'problems' in read) for (const { say } of read.problems) expect(say).toMatch(/[.!?]$/);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('is refused by every field in a sentence of our own, however long or strange', () => {
    const long = 'x'.repeat(5000);
    const strange = (control: Control, name: string): [string, string[]][] => {
      if (control.kind === 'list') return strange(control.of, `${name}.0`);
      if (control.kind === 'group')
        return Object.entries(control.members).flatMap(([part, member]) => strange(member.control, `${name}.${part}`));
      if (control.kind === 'choices') return [[name, ['<b>', ...Array.from({ length: 60 }, () => '<b>')]]];
      if (control.kind !== 'weight') return [[name, [control.kind === 'count' ? '9'.repeat(16) : long]]];
      const parts = {
        text: ['5.17'],
        basis: ['estimate'],
        dry: ['maybe'],
        again: ['0'.repeat(30)],
        because: [long],
        formula: [long],
        with: Array(9).fill(long),
      };
      return Object.entries(parts).map(([part, values]): [string, string[]] => [`${name}.${part}`, values]);
    };
    const said = Object.values(ENTRIES).flatMap((entry) =>
      Object.entries(entry.fields).flatMap(([name, { control, schema }]) => {
        const read = readControl(control, new Map(strange(control, name)), name, shop);
        if (!read) return [];
        return 'problems' in read
          ? read.problems.map(({ say }) => say)
          : (schema.safeParse(read.value).error?.issues ?? []).map(({ message }: { message: string }) => message);
      }),
    );
    expect(said.length).toBeGreaterThan(100);
    for (const say of new Set(said)) expect(say).toMatch(/^(?!Invalid|Too |Unrecognized|Expected)[A-Z].*[.!?]$/);
  });
});
