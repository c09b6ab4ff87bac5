// Karats and permille: two ways of saying a fraction, which agree only where the fractions do.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fineNg, formatFineness, isSameFineness, karat, permille, permilleOf, readFineness } from '../../src/units/fineness.ts';
import { massNg } from '../../src/units/mass.ts';

describe('a fineness', () => {
  it('reads back as it was shown', () => {
    const karats = fc.integer({ min: 1, max: 24 }).map(karat);
    const permilles = fc.integer({ min: 100, max: 999 }).map(permille);
    const halves = fc.integer({ min: 1000, max: 9999 }).map((n) => permille(n / 10));
    fc.assert(
      fc.property(fc.oneof(karats, permilles, halves), (fineness) => {
        const back = readFineness(formatFineness(fineness));
        expect(back && isSameFineness(back, fineness)).toBe(true);
      }),
    );
  });

  it.each([
    ['14K', 583.333_333],
    ['18ct', 750],
    ['19.2ct', 800],
    ['9 carat', 375],
    ['585', 585],
    ['916.7', 916.7],
    ['.925', 925],
    ['0.75', 750],
  ])('%s is %d ‰', (text, expected) => {
    const read = readFineness(text);
    expect(read && permilleOf(read)).toBeCloseTo(expected, 5);
  });

  it.each(['25K', '0K', '14', '1000.5', '.5.5', 'gold', ''])('%j is none', (text) => {
    expect(readFineness(text)).toBeNull();
  });

  it('of 14 karat is not 585, of 18 karat is 750', () => {
    expect(isSameFineness(karat(14), permille(585))).toBe(false);
    expect(isSameFineness(karat(18), permille(750))).toBe(true);
  });

  it('gives fine metal that a whole lot and its parts agree on to a nanogram each', () => {
    const masses = fc.array(fc.integer({ min: 0, max: 1e12 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(masses, fc.integer({ min: 1, max: 24 }), (parts, n) => {
        const whole = fineNg(massNg(parts.reduce((sum, part) => sum + part, 0)), karat(n));
        const summed = parts.reduce((sum, part) => sum + fineNg(massNg(part), karat(n)), 0);
        expect(Math.abs(whole - summed)).toBeLessThanOrEqual(parts.length);
      }),
    );
  });
});
