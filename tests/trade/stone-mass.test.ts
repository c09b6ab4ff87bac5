// Stones by their measurements. Worked examples in print are among the check rows.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isFractionPlausible, paperCarats, statedRange } from '../../src/trade/carat-words.ts';
import { GEMS } from '../../src/trade/gems.ts';
import { GIRDLE_FACTORS, type Girdle, STONE_FORMULAS, type StoneFormulaId } from '../../src/trade/stone-formulas.ts';
import {
  besideEstimate,
  colouredMass,
  diamondMass,
  girdleFactor,
  roundByDiameter,
  simulantRatio,
  sphereMass,
} from '../../src/trade/stone-mass.ts';
import { massNg } from '../../src/units/mass.ts';
import { inUnit, massOf } from '../../src/units/mass-units.ts';

const ids = Object.keys(STONE_FORMULAS) as StoneFormulaId[];
const mass = (id: StoneFormulaId, lengthMm: number, widthMm: number, depthMm: number) => {
  const size = { lengthMm, widthMm, depthMm };
  return STONE_FORMULAS[id].kind === 'diamond' ? diamondMass(id, size, 'open') : colouredMass(id, size, 4, 'open');
};

describe('a stone is estimated', () => {
  it.each(ids)('by %s: heavier when it is larger in one shape, or deeper', (id) => {
    const size = fc.double({ min: 1, max: 15, noNaN: true });
    const more = fc.double({ min: 1.01, max: 2, noNaN: true });
    fc.assert(
      fc.property(size, size, size, more, (a, b, depth, factor) => {
        const [length, width] = [Math.max(a, b), Math.min(a, b)];
        const one = mass(id, length, width, depth).massNg;
        expect(mass(id, length * factor, width * factor, depth).massNg).toBeGreaterThan(one);
        expect(mass(id, length, width, depth * factor).massNg).toBeGreaterThan(one);
        expect(mass(id, length, width, depth).formula).toBe(id);
      }),
    );
  });

  it('within a twentieth in the open and three twentieths in a setting', () => {
    const size = { lengthMm: 6.5, widthMm: 6.5, depthMm: 3.9 };
    const [open, set] = [diamondMass('diamond-round-1', size, 'open'), diamondMass('diamond-round-1', size, 'obstructed')];
    expect(open.plusMinusNg / open.massNg).toBeCloseTo(0.05, 6);
    expect(set.plusMinusNg / set.massNg).toBeCloseTo(0.15, 6);
  });

  it('by the formulas of its own kind only', () => {
    const size = { lengthMm: 6, widthMm: 6, depthMm: 4 };
    expect(() => diamondMass('coloured-round-1', size, 'open')).toThrow(RangeError);
    expect(() => colouredMass('diamond-round-1', size, 4, 'open')).toThrow(RangeError);
  });

  it('as a sphere by its own volume', () => {
    const carats = inUnit(sphereMass(7.5, 2.7, 'open').massNg, 'carat');
    expect(carats).toBeCloseTo(((4 / 3) * Math.PI * 3.75 ** 3 * 2.7) / 1000 / 0.2, 6);
  });

  it('with thicker girdles never lighter, in every column', () => {
    const girdles = Object.keys(GIRDLE_FACTORS) as Girdle[];
    for (const diameterMm of [3.5, 5, 8]) {
      const factors = girdles.map((girdle) => girdleFactor(girdle, diameterMm));
      expect(factors).toEqual(factors.toSorted((a, b) => a - b));
    }
    // printed as 1.05, which would be thicker than very thick
    expect(girdleFactor('medium+', 7)).toBe(1.005);
  });

  it('so that printed slips stand out: 0.065 ct for 1.1 mm, 1.00575 for a marquise', () => {
    const small = (carats: string) => besideEstimate(roundByDiameter(1.1), massOf(carats, 'carat'));
    expect(small('0.065')).toMatchObject({ verdict: 'flag', offPercent: expect.closeTo(1234, 0) });
    expect(small('0.0065').offPercent).toBeLessThan(40);
    const coefficients = ids.flatMap((id) => {
      const { coefficient } = STONE_FORMULAS[id];
      return typeof coefficient === 'number' ? [coefficient] : coefficient.map(([, value]) => value);
    });
    expect(Math.max(...coefficients)).toBeLessThan(0.02);
  });

  it('and a zirconia stands out beside a diamond where a moissanite does not', () => {
    const diamond = diamondMass('diamond-round-1', { lengthMm: 6.5, widthMm: 6.5, depthMm: 3.9 }, 'obstructed');
    const same = (specificGravity: number) => massNg(Math.round(diamond.massNg * simulantRatio('diamond', specificGravity)));
    expect(besideEstimate(diamond, same(GEMS.cubicZirconia.nominal)).verdict).toBe('flag');
    expect(besideEstimate(diamond, same(GEMS.moissanite.nominal))).toMatchObject({
      verdict: 'consistent',
      offPercent: expect.closeTo(-8.8, 1),
    });
  });

  // Tables by length over width: marquise (GGM), pear and emerald cut (GCAL, ESS)
  it.each([
    ['diamond-marquise-1', 1.5, 0.00565],
    ['diamond-marquise-1', 2, 0.0058],
    ['diamond-marquise-1', 2.25, 0.00583],
    ['diamond-marquise-1', 2.5, 0.00585],
    ['diamond-marquise-1', 2.75, 0.0059],
    ['diamond-marquise-1', 9, 0.00595],
    ['diamond-pear-1', 1, 0.00615],
    ['diamond-pear-1', 1.66, 0.0059],
    ['diamond-pear-1', 2, 0.00575],
    ['diamond-emerald-1', 2, 0.01],
    ['diamond-emerald-1', 2.5, 0.0106],
  ] as const)('by %s at a ratio of %d takes %d', (id, ratio, coefficient) => {
    const width = 4;
    const carats = inUnit(mass(id, ratio * width, width, 3).massNg, 'carat');
    expect(carats / (ratio * width * width * 3)).toBeCloseTo(coefficient, 7);
  });

  it('by its diameter alone more widely below 2 mm', () => {
    const band = (across: number) => roundByDiameter(across).plusMinusNg / roundByDiameter(across).massNg;
    expect(band(1.9)).toBeCloseTo(0.3, 4);
    expect(band(2)).toBeCloseTo(0.15, 4);
  });

  it('with the range of specific gravity its sources print', () => {
    const facts = readFileSync(join(import.meta.dirname, '../reference/trade-facts.json'), 'utf8');
    const { rows } = JSON.parse(facts) as { rows: { fn: string; input: { gem: keyof typeof GEMS }; expected: number[] }[] };
    const ranges = rows.filter(({ fn }) => fn === 'nominalSgInside');
    expect(ranges.length).toBe(Object.keys(GEMS).length);
    for (const { input, expected } of ranges) expect(GEMS[input.gem].range, input.gem).toEqual(expected);
  });

  it('and its nominal specific gravity lies within its own range', () => {
    for (const [gem, { nominal, range }] of Object.entries(GEMS)) {
      expect(nominal, gem).toBeGreaterThanOrEqual(range[0]);
      expect(nominal, gem).toBeLessThanOrEqual(range[1]);
    }
  });
});

describe('carats are said', () => {
  it('never above the reading but for a last 9', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (thousandths) => {
        const shown = Math.round(Number(paperCarats(massNg(thousandths * 200_000))) * 1000);
        expect(shown).toBe(thousandths % 10 === 9 ? thousandths + 1 : thousandths - (thousandths % 10));
      }),
    );
  });

  it('within a range that holds what was stated, narrower with a third decimal', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 3 }), (n, decimals) => {
        const stated = (n / 10 ** decimals).toFixed(decimals);
        const [low, high] = statedRange(stated);
        expect(low).toBeLessThanOrEqual(Number(stated));
        expect(high).toBeGreaterThanOrEqual(Number(stated));
        expect(high - low).toBeCloseTo(decimals === 3 ? 0.0009 : 0.009, 9);
      }),
    );
    for (const text of ['', '.', 'half', '1.2.3']) expect(() => statedRange(text)).toThrow(RangeError);
  });

  it('as fractions that only charts give a range', () => {
    expect(isFractionPlausible('1/2 ct', massOf('0.58', 'carat'))).toBe(false);
    expect(isFractionPlausible('1/2', massOf('0.44', 'carat'))).toBe(true);
    expect(isFractionPlausible('2/5 ct', massOf('0.4', 'carat'))).toBeNull();
  });
});
