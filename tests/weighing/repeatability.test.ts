// Ten readings of one weight: what they tell of a balance's spread.
import { describe, expect, it } from 'vitest';
import { massNg } from '../../src/units/mass.ts';
import { parametersOf, repeatabilityOf } from '../../src/weighing/worth.ts';

const plate = { unit: 'g', ranges: [{ maxNg: massNg(400_000_000_000), stepNg: massNg(10_000_000) }] } as const;
const READINGS = '50.00 50.01 50.00 50.00 50.01 50.00 49.99 50.00 50.01 50.00';

describe('the repeatability of a balance', () => {
  it('is the standard deviation of what it showed, with n − 1 (JCGM 100:2008, 4.2.2)', () => {
    // By hand, in mg: mean 50,002; six deviations of −2, three of 8, one of −12: 24 + 192 + 144 = 360; 360 ÷ 9 = 40; √40 = 6.324555.
    expect(repeatabilityOf(READINGS, 'g')?.sNg).toBe(6_324_555);
    expect(repeatabilityOf(READINGS, 'g')?.readings).toBe(10);
  });
  it('is taken from a paper as it stands, in the unit of the balance', () => {
    expect(repeatabilityOf('0.004', 'g')).toEqual({ sNg: 4_000_000, readings: Number.POSITIVE_INFINITY });
    expect(repeatabilityOf('0.002', 'ct')?.sNg).toBe(400_000);
  });
  it('stands in for what is assumed of a balance, from then on', () => {
    expect(parametersOf('b', plate, {}).repeatability.sNg).toBe(10_000_000);
    expect(parametersOf('b', plate, { repeatability: READINGS }).repeatability.sNg).toBe(6_324_555);
  });
});
