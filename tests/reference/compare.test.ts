// The judge is judged: a wrong answer must fail under every kind of tolerance.
import { describe, expect, it } from 'vitest';
import { difference } from './compare.ts';

const exact = { type: 'exact' } as const;

describe('a check row is judged', () => {
  it('exactly, with decimal strings read as numbers', () => {
    expect(difference('0.010', 0.01, exact)).toBeNull();
    expect(difference(0.3, 0.1 + 0.2, exact)).toBeNull();
    expect(difference(0.3, 0.3000001, exact)).not.toBeNull();
    expect(difference('pass', 'fail', exact)).not.toBeNull();
    expect(difference(true, 'true', exact)).not.toBeNull();
    expect(difference(null, undefined, exact)).not.toBeNull();
    expect(difference(0, Number.NaN, exact)).not.toBeNull();
  });

  it.each([
    ['abs', 0.5, 100.5, 100.6],
    ['rel', 0.01, 101, 101.1],
    ['abs1', 0.01, 101, 101.1],
  ] as const)('within %s %d of 100', (type, value, good, bad) => {
    expect(difference(100, good, { type, value })).toBeNull();
    expect(difference(100, bad, { type, value })).not.toBeNull();
  });

  it('against one for small values under abs1', () => {
    expect(difference(0.001, 0.01, { type: 'abs1', value: 0.01 })).toBeNull();
    expect(difference(0.001, 0.01, { type: 'rel', value: 0.01 })).not.toBeNull();
  });

  it('inside a range, ends included', () => {
    expect(difference([2.6, 2.7], 2.7, { type: 'inside' })).toBeNull();
    expect(difference([2.6, 2.7], 2.71, { type: 'inside' })).not.toBeNull();
    expect(difference([2.6, 2.7], undefined, { type: 'inside' })).not.toBeNull();
  });

  it('key by key, each with its own tolerance; a key without one is exact', () => {
    const tolerance = { type: 'abs', value: { d: 0.01 } } as const;
    expect(difference({ d: 1, word: 'a' }, { d: 1.005, word: 'a', more: 1 }, tolerance)).toBeNull();
    expect(difference({ d: 1, c: 1 }, { d: 1.005, c: 1.005 }, tolerance)).toBe('value.c: 1.005 is not 1');
    expect(difference({ d: 1 }, {}, tolerance)).not.toBeNull();
    expect(difference({ d: 1, words: 'x' }, { d: 1, words: 'y' }, tolerance)).toBeNull();
  });

  it('by the initial of a name where the tolerance is given so', () => {
    const tolerance = { type: 'abs', value: { d: 0.006, c: 0.06 } } as const;
    const expected = { insideDiameter: 12.45, insideCircumference: 39.1 };
    expect(difference(expected, { insideDiameter: 12.446, insideCircumference: 39.14 }, tolerance)).toBeNull();
    expect(difference(expected, { insideDiameter: 12.44, insideCircumference: 39.14 }, tolerance)).not.toBeNull();
    expect(difference(expected, { insideDiameter: 12.446, insideCircumference: 39.2 }, tolerance)).not.toBeNull();
  });

  it('by a judge in place of a value, which must say true', () => {
    expect(difference({ found: [1] }, { found: (list: number[]) => list.includes(1) }, exact)).toBeNull();
    expect(difference({ found: [2] }, { found: (list: number[]) => list.includes(1) }, exact)).not.toBeNull();
    expect(difference({ found: [2] }, { found: () => undefined }, exact)).not.toBeNull();
  });

  it('item by item in lists of equal length', () => {
    expect(difference([1, 2], [1, 2, 3], exact)).not.toBeNull();
    expect(difference([[1], [2]], [[1], [2.1]], { type: 'abs', value: 0.05 })).toBe('value[1][0]: 2.1 is not 2');
  });
});
