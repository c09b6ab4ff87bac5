// Whole-number products and quotients against BigInt and ordinary long division.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalText, divideRounded, mulDiv, type Rounding } from '../../src/units/muldiv.ts';

describe('a product is divided', () => {
  it('exactly where a number of the machine would overflow: 100 g at 916.7 ‰', () => {
    expect(mulDiv(100_000_000_000, 9167, 10_000, 'exact')).toBe(91_670_000_000);
    expect(mulDiv(9_007_199_254_740_991, 9_007_199_254_740_991, 9_007_199_254_740_991, 'exact')).toBe(9_007_199_254_740_991);
  });

  it.each([
    ['down', 2, -2],
    ['up', 3, -3],
    ['half up', 3, -3],
    ['half even', 2, -2],
  ] as const)('2.5 is rounded %s', (rounding, positive, negative) => {
    expect(mulDiv(5, 1, 2, rounding)).toBe(positive);
    expect(mulDiv(-5, 1, 2, rounding)).toBe(negative);
  });

  it('within half a unit for halves, within one otherwise', () => {
    const n = fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n });
    const d = fc.bigInt({ min: 1n, max: 10n ** 12n });
    fc.assert(
      fc.property(n, d, fc.constantFrom<Rounding>('down', 'up', 'half up', 'half even'), (top, bottom, rounding) => {
        const off = divideRounded(top, bottom, rounding) * bottom - top;
        const size = off < 0n ? -off : off;
        expect(rounding.startsWith('half') ? 2n * size <= bottom : size < bottom).toBe(true);
      }),
    );
  });

  it('or not at all when it must be exact and is not, or is beyond a safe integer', () => {
    expect(() => mulDiv(5, 1, 2, 'exact')).toThrow(RangeError);
    expect(() => mulDiv(2 ** 52, 4, 1, 'exact')).toThrow(RangeError);
    expect(() => mulDiv(1, 1, 0, 'down')).toThrow(RangeError);
    expect(() => mulDiv(0.5, 1, 1, 'down')).toThrow(RangeError);
  });

  it('and written with its decimals', () => {
    expect(decimalText(517n, 2)).toBe('5.17');
    expect(decimalText(7n, 2)).toBe('0.07');
    expect(decimalText(7n, 0)).toBe('7');
  });
});
