// A reading as a leaf may hold it, its net mass and its words.
import { describe, expect, it } from 'vitest';
import { refFromBytes } from '../../src/units/ids.ts';
import { massNg } from '../../src/units/mass.ts';
import { caratWords, netNg, type Reading, readingSchema, readingWords } from '../../src/weighing/reading.ts';

const balance = refFromBytes('balance', new Uint8Array(16).fill(7));
const weighed: Reading = { text: '5.17', unit: 'g', ng: massNg(5_170_000_000), basis: 'weighed', balance, stepNg: massNg(10_000_000) };
const { balance: _, stepNg: __, ...bare } = weighed;
const trouble = (reading: object): readonly string[] =>
  readingSchema.safeParse(reading).error?.issues.map(({ path }) => path.join('.')) ?? [];

describe('a reading', () => {
  it.each([
    ['as it was weighed', {}],
    ['of a comma', { text: '5,17' }],
    ['in carats', { text: '1.204', unit: 'ct', ng: 240_800_000, stepNg: 200_000 }],
    [
      'with all that may be said of it',
      { dry: 'unsure', repeats: ['5.17', '5.18'], because: 'again', raw: 'AA_-09az', formula: 'round brilliant' },
    ],
    ['with what was on the pan', { onPan: [{ thing: 'dish', tareNg: 100 }, { thing: 'thread' }] }],
    [
      'with the most of each',
      {
        repeats: Array(10).fill('5.17'),
        because: 'x'.repeat(500),
        raw: 'A'.repeat(400),
        formula: 'x'.repeat(60),
        onPan: Array(8).fill({ thing: 'x'.repeat(60) }),
      },
    ],
  ])('is taken %s', (_what, more) => expect(trouble({ ...weighed, ...more })).toEqual([]));
  it.each(['difference', 'estimate', 'count'])('by %s needs no balance', (basis) => expect(trouble({ ...bare, basis })).toEqual([]));
  it.each([
    ['balance', bare],
    ['balance', { ...bare, balance }],
    ['balance', { ...bare, stepNg: weighed.stepNg }],
    ['ng', { ...weighed, ng: 5_170_000_001 }],
    ['ng', { ...weighed, unit: 'ct' }],
    ['ng', { ...weighed, ng: 5.5 }],
    ['text', { ...weighed, text: '0.00', ng: 0 }],
    ['text', { ...weighed, text: '-5.17', ng: -5_170_000_000 }],
    ['text', { ...weighed, text: 'five' }],
    ['text', { ...weighed, text: '' }],
    ['text', { ...weighed, text: `5.17${' '.repeat(21)}` }],
    ['unit', { ...weighed, unit: 'kg' }],
    ['basis', { ...weighed, basis: 'guess' }],
    ['balance', { ...weighed, balance: 'B3' }],
    ['balance', { ...weighed, balance: 3 }],
    ['stepNg', { ...weighed, stepNg: 0.5 }],
    ['dry', { ...weighed, dry: 'maybe' }],
    ['repeats', { ...weighed, repeats: Array(11).fill('5.17') }],
    ['repeats.0', { ...weighed, repeats: [''] }],
    ['because', { ...weighed, because: '' }],
    ['because', { ...weighed, because: 'x'.repeat(501) }],
    ['raw', { ...weighed, raw: 'not base64url!' }],
    ['raw', { ...weighed, raw: 'AAAA=' }],
    ['raw', { ...weighed, raw: '=AAAA' }],
    ['raw', { ...weighed, raw: 'A'.repeat(401) }],
    ['formula', { ...weighed, formula: '' }],
    ['formula', { ...weighed, formula: 'x'.repeat(61) }],
    ['onPan', { ...weighed, onPan: Array(9).fill({ thing: 'dish' }) }],
    ['onPan.0.thing', { ...weighed, onPan: [{ thing: '' }] }],
    ['onPan.0.thing', { ...weighed, onPan: [{ thing: 'x'.repeat(61) }] }],
    ['onPan.0.tareNg', { ...weighed, onPan: [{ thing: 'dish', tareNg: 0.5 }] }],
    ['onPan.0', { ...weighed, onPan: [{ thing: 'dish', colour: 'red' }] }],
    ['', { ...weighed, colour: 'red' }],
  ])('is refused at %s: %j', (path, reading) => expect(trouble(reading)).toContain(path));
});

describe('a net mass', () => {
  it('is less all that was on the pan, and not known where one of it is not', () => {
    expect(netNg(weighed)).toBe(5_170_000_000);
    expect(netNg({ ...weighed, onPan: [] })).toBe(5_170_000_000);
    const two = [
      { thing: 'dish', tareNg: massNg(100) },
      { thing: 'clip', tareNg: massNg(20) },
    ];
    expect(netNg({ ...weighed, onPan: two })).toBe(5_169_999_880);
    expect(netNg({ ...weighed, onPan: [...two, { thing: 'thread' }] })).toBeNull();
    expect(netNg({ ...weighed, onPan: [{ thing: 'thread' }, ...two] })).toBeNull();
  });
});

describe('the words of a reading', () => {
  it('keep its decimals, with a point, and say how it was come by', () => {
    expect(readingWords(weighed)).toBe('5.17\u00a0g');
    expect(readingWords({ ...weighed, text: '5,170' })).toBe('5.170\u00a0g');
    expect(readingWords({ ...weighed, basis: 'difference' })).toBe('5.17\u00a0g by difference');
    expect(readingWords({ ...weighed, basis: 'estimate' })).toBe('5.17\u00a0g estimated');
    expect(readingWords({ ...weighed, basis: 'count' })).toBe('5.17\u00a0g by count');
    expect(readingWords({ ...weighed, onPan: [{ thing: 'thread' }] })).toBe('5.17\u00a0g gross');
    expect(readingWords({ ...weighed, onPan: [{ thing: 'dish', tareNg: massNg(1) }] })).toBe('5.17\u00a0g');
  });
  it('of a stone are in carats: 1 ct is 0.2 g', () => {
    expect(caratWords({ ...weighed, text: '1.204', unit: 'ct', ng: massNg(240_800_000) })).toBe('1.204\u00a0ct');
    expect(caratWords({ ...weighed, text: '0.24', ng: massNg(240_000_000) })).toMatch(/^1\.20*\u00a0ct$/);
    expect(caratWords({ ...weighed, onPan: [{ thing: 'thread' }] })).toMatch(/ct gross$/);
  });
});
