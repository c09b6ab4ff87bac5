// A difference is told as it is shown: rounded first, and only then said to be more or less.
import { describe, expect, it } from 'vitest';
import { gapOf, gapWords } from '../../src/units/rounded.ts';

const CENTIGRAM_NG = 10_000_000;
const SIDES = { more: 'more', less: 'less' };
const said = (ng: number, stepNg = CENTIGRAM_NG, unit: 'g' | 'ct' = 'g') =>
  gapWords(gapOf(ng, stepNg, unit), SIDES).replaceAll('\u00a0', ' ');

describe('a gap in words', () => {
  it.each([
    [170_000_000, '0.17 g more'],
    [-170_000_000, '0.17 g less'],
    [5_000_000, '0.01 g more'],
    [-5_000_000, '0.01 g less'],
    [4_999_999, 'no difference to 0.01 g'],
    [-4_999_999, 'no difference to 0.01 g'],
    [0, 'no difference to 0.01 g'],
  ])('of %i ng to 0.01 g is "%s"', (ng, words) => expect(said(ng)).toBe(words));

  it('names the step that is shown, in the unit that is shown, and a hundredth of a gram where none is known', () => {
    expect(said(99_999, 200_000, 'ct')).toBe('no difference to 0.001 ct');
    expect(said(-200_000, 200_000, 'ct')).toBe('0.001 ct less');
    expect(said(4_000_000, 0)).toBe('no difference to 0.01 g');
  });

  it('never gives nothing a side, whatever the difference and the step', () => {
    for (const stepNg of [200_000, 1_000_000, 10_000_000, 100_000_000])
      for (let ng = -2 * stepNg; ng <= 2 * stepNg; ng += stepNg / 40) {
        const { size, side } = gapOf(ng, stepNg);
        expect(/[1-9]/.test(size), `${ng} to ${stepNg}`).toBe(side !== 'none');
      }
  });
});
