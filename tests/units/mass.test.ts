// Mass as typed and as shown: nothing is lost between the two.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalsOfStep, formatMass, formatMassWithUnit, type MassUnit, massNg, NG_PER_UNIT, parseMass } from '../../src/units/mass.ts';

const unit = fc.constantFrom(...(Object.keys(NG_PER_UNIT) as MassUnit[]));
const read = (text: string, of: MassUnit) => {
  const parsed = parseMass(text, of);
  if ('problem' in parsed) throw new Error(`${text} ${of}: ${parsed.problem}`);
  return parsed.ng;
};

describe('a weight is typed', () => {
  it('is shown again as it was typed, in every unit', () => {
    const steps = fc.integer({ min: -29_999, max: 29_999 });
    fc.assert(
      fc.property(steps, fc.integer({ min: 0, max: 6 }), unit, (n, decimals, of) => {
        const digits = String(Math.abs(n)).padStart(decimals + 1, '0');
        const text = decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
        const typed = n < 0 ? `−${text}` : text;
        expect(formatMass(read(typed, of), of, decimals)).toBe(typed);
      }),
    );
  });

  it('reads back from grams and carats as the very same nanograms', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), fc.constantFrom('g' as const, 'ct' as const), (n, of) => {
        expect(read(formatMass(massNg(n * 20), of, 8), of)).toBe(n * 20);
      }),
    );
  });

  it('takes a comma as the decimal mark and a typographic minus', () => {
    expect(read('5,17', 'g')).toBe(5_170_000_000);
    expect(read('−0.02', 'g')).toBe(-20_000_000);
  });

  it('takes hundredths of a pennyweight, which are not whole nanograms', () => {
    // 2.37 dwt = 3.6857620008 g (24 grains of 64.79891 mg each, NIST HB 44 App. C)
    expect(read('2.37', 'dwt')).toBe(3_685_762_001);
    expect(formatMass(massNg(3_685_762_001), 'dwt', 2)).toBe('2.37');
  });

  it.each([
    ['', 'empty'],
    ['  ', 'empty'],
    ['.', 'not a number'],
    ['5.1.7', 'not a number'],
    ['1e3', 'not a number'],
    ['5 g', 'not a number'],
    ['1000001000', 'too large'],
    ['0.0000000001', 'too fine'],
  ])('refuses %j as %s', (text, problem) => {
    expect(parseMass(text, 'g')).toEqual({ problem });
  });

  it('is shown with halves away from zero, a true minus and no minus zero', () => {
    expect(formatMass(massNg(5_000_000), 'g', 2)).toBe('0.01');
    expect(formatMass(massNg(-5_000_000), 'g', 2)).toBe('−0.01');
    expect(formatMass(massNg(-4_999_999), 'g', 2)).toBe('0.00');
    expect(formatMassWithUnit(massNg(1_234_000_000), 'g', 1)).toBe('1.2\u00a0g');
  });

  it.each([
    ['0.01', 'g', 2],
    ['0.002', 'ct', 3],
    ['1', 'g', 0],
    ['0.01', 'dwt', 2],
    ['0.001', 'ozt', 3],
  ] as const)('shows a step of %s %s with %d decimals', (step, of, decimals) => {
    expect(decimalsOfStep(read(step, of), of)).toBe(decimals);
  });

  it('holds whole nanograms only', () => {
    expect(() => massNg(0.5)).toThrow(RangeError);
    expect(() => massNg(2 ** 53)).toThrow(RangeError);
  });
});
