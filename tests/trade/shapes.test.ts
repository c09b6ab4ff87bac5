// Estimates of metal: they grow with every dimension, say their formula, and move no metal where none moves. Printed figures are among the check rows.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clawMass } from '../../src/trade/claws.ts';
import { agreesWith, estimateOf, type MassEstimate, showsAt } from '../../src/trade/estimate.ts';
import { expectedWeight } from '../../src/trade/expected-weight.ts';
import { isLossWithin, LOSS_NORMS, lossNorm } from '../../src/trade/loss-norms.ts';
import { coatMass, flatBandAreaMm2 } from '../../src/trade/plating.ts';
import { blankLengthMm, sizingBesideRule, sizingLengths, sizingMass } from '../../src/trade/sizing.ts';
import { bandMass, bandMm3, roundWire, type Section, sheetMass, stockMass } from '../../src/trade/stock-shapes.ts';
import { WEAR_MG_PER_YEAR, wearMass } from '../../src/trade/wear.ts';
import { massNg } from '../../src/units/mass.ts';

const section = fc.constantFrom<Section>('round', 'rect', 'halfRound');
const mm = fc.double({ min: 0.2, max: 40, noNaN: true });
const density = fc.double({ min: 8, max: 22, noNaN: true });
const more = fc.double({ min: 1.01, max: 3, noNaN: true });

/** Every estimate here as a function of its dimensions, density last. */
const ESTIMATES: Readonly<Record<string, (a: number, b: number, c: number, density: number) => MassEstimate>> = {
  round: (d, _, length, rho) => stockMass(roundWire(d), length, rho),
  rect: (w, t, length, rho) => stockMass({ section: 'rect', widthMm: w, thicknessMm: t }, length, rho),
  halfRound: (w, t, length, rho) => stockMass({ section: 'halfRound', widthMm: w, thicknessMm: t }, length, rho),
  sheet: (l, w, t, rho) => sheetMass(l, w, t, rho),
  band: (w, t, inside, rho) => bandMass({ section: 'rect', widthMm: w, thicknessMm: t }, inside, rho),
  sizing: (w, t, sizes, rho) => sizingMass({ section: 'rect', widthMm: w, thicknessMm: t }, rho, sizes),
  claws: (d, h, _, rho) => clawMass(4, d, h, rho),
};

describe('an estimate of metal', () => {
  it.each(Object.keys(ESTIMATES))('%s never falls when a dimension or the density grows', (name) => {
    const estimate = ESTIMATES[name];
    if (!estimate) throw new Error(name);
    fc.assert(
      fc.property(mm, mm, mm, density, more, fc.nat({ max: 3 }), (a, b, c, rho, factor, which) => {
        const sizes: [number, number, number, number] = [a, b, c, rho];
        const grown = sizes.map((size, i) => (i === which ? size * factor : size)) as typeof sizes;
        expect(estimate(...grown).massNg).toBeGreaterThanOrEqual(estimate(...sizes).massNg);
      }),
    );
  });

  it('names its formula and version, and has a band', () => {
    for (const estimate of Object.values(ESTIMATES)) {
      const { formula, plusMinusNg } = estimate(2, 1.5, 3, 13.07);
      expect(formula).toMatch(/^[a-z-]+-\d$/);
      expect(plusMinusNg).toBeGreaterThan(0);
    }
  });

  it('of sizes that are no sizes is refused', () => {
    expect(() => stockMass(roundWire(Number.NaN), 1, 1)).toThrow(RangeError);
    expect(() => sheetMass(-1, 1, 1, 1)).toThrow(RangeError);
  });

  it('of a bent band is that of the hollow cylinder it becomes', () => {
    fc.assert(
      fc.property(mm, mm, mm, (w, t, inside) => {
        const cylinder = (Math.PI / 4) * w * ((inside + 2 * t) ** 2 - inside ** 2);
        expect(bandMm3({ section: 'rect', widthMm: w, thicknessMm: t }, inside) / cylinder).toBeCloseTo(1, 9);
      }),
    );
  });

  it('of a blank bent round is that of its length of stock', () => {
    fc.assert(
      fc.property(section, mm, mm, mm, density, (shape, w, t, inside, rho) => {
        const stock = { section: shape, widthMm: w, thicknessMm: t };
        const straight = stockMass(stock, blankLengthMm(inside, t), rho);
        expect(Math.abs(straight.massNg - bandMass(stock, inside, rho).massNg)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('a sizing', () => {
  const joints = fc.record({ kerfMm: fc.double({ min: 0, max: 0.5, noNaN: true }), filedMm: fc.double({ min: 0, max: 1, noNaN: true }) });
  const round = fc.double({ min: 40, max: 75, noNaN: true });

  it('lets in or takes out exactly what the finger asks, saw cuts and filing counted', () => {
    fc.assert(
      fc.property(round, round, joints, (from, to, how) => {
        const { insertMm, cutOutMm, lemelMm } = sizingLengths(from, to, how);
        expect(insertMm - cutOutMm - lemelMm).toBeCloseTo(to - from, 9);
        for (const length of [insertMm, cutOutMm, lemelMm]) expect(length).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('down a size takes two saw cuts and the filing out of what goes, up a size one', () => {
    const joints = { kerfMm: 0.2, filedMm: 0.3 };
    expect(sizingLengths(54.42, 51.87, joints)).toEqual({
      insertMm: 0,
      cutOutMm: expect.closeTo(1.85, 9),
      lemelMm: expect.closeTo(0.7, 9),
    });
    expect(sizingLengths(51.87, 54.42, joints)).toEqual({
      insertMm: expect.closeTo(3.05, 9),
      cutOutMm: 0,
      lemelMm: expect.closeTo(0.5, 9),
    });
  });

  it('to the same size cuts nothing', () => {
    expect(sizingLengths(54, 54, { kerfMm: 0.2, filedMm: 0.3 })).toEqual({ insertMm: 0, cutOutMm: 0, lemelMm: 0 });
  });

  it('by stretching moves no metal', () => {
    expect(sizingMass({ section: 'rect', widthMm: 2, thicknessMm: 1.5 }, 13.07, 2, 'stretch').massNg).toBe(0);
    expect(sizingMass({ section: 'rect', widthMm: 2, thicknessMm: 1.5 }, 13.07, -2).massNg).toBeGreaterThan(0);
  });

  it('of a metal without a printed rule of thumb has none beside it', () => {
    expect(sizingBesideRule('bronze', { widthMm: 7, thicknessMm: 1.6 }, 2)).toBeNull();
  });
});

describe('small masses', () => {
  it('of rhodium and of one lost melee do not show at a hundredth of a gram', () => {
    const band = flatBandAreaMm2(17.32, 4, 1.6);
    expect(showsAt(massNg(10_000_000), coatMass('rhodium', band, 0.5).massNg)).toBe(false);
    expect(showsAt(massNg(10_000_000), massNg(6_000_000))).toBe(false);
    expect(showsAt(massNg(1_000_000), massNg(6_000_000))).toBe(true);
  });

  // Steinhauser, Gold Bulletin 41 (2008) 51: 6.15 mg a year
  it('of forty years of wear make a quarter of a gram', () => {
    expect(wearMass(40, WEAR_MG_PER_YEAR['wedding ring, 18K'].mg).massNg).toBe(246_000_000);
  });
});

describe('estimates together', () => {
  it('make an expected weight with the sum of their bands', () => {
    const added = { sign: 1, ...estimateOf(0.5, 10, 'stock-rect-1') } as const;
    const stone = { sign: -1, massNg: massNg(200_000_000) } as const;
    expect(expectedWeight(massNg(5_000_000_000), [added, stone])).toEqual({ massNg: 5_300_000_000, plusMinusNg: 50_000_000 });
  });

  it('agree with a weighing inside the band, ends included, and ask beyond it', () => {
    const one = estimateOf(1, 5, 'diamond-round-1');
    expect([0.95, 1.05].map((g) => agreesWith(one, massNg(g * 1e9)))).toEqual(['consistent', 'consistent']);
    expect([0.949, 1.051].map((g) => agreesWith(one, massNg(Math.round(g * 1e9))))).toEqual(['flag', 'flag']);
  });
});

describe('loss norms', () => {
  it('are dated, moved fivefold within a year, and are unknown where none was read', () => {
    const mechanised = (effective: string) => lossNorm(effective, 'plain mechanised')?.goldOrPlatinum;
    expect(lossNorm('2024-05-27', 'plain')?.goldOrPlatinum).toBe(0.5);
    expect(mechanised('2025-02')).toBe(0.9);
    expect(lossNorm('2030', 'plain')).toBeNull();
    expect(new Set(LOSS_NORMS.map(({ effective, item }) => `${effective} ${item}`)).size).toBe(LOSS_NORMS.length);
  });

  it('hold to the nanogram', () => {
    expect(isLossWithin(massNg(40_000_000_000), massNg(900_000_000), 2.25)).toBe(true);
    expect(isLossWithin(massNg(40_000_000_000), massNg(900_000_001), 2.25)).toBe(false);
  });
});
