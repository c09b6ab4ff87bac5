// Alloys and refining. Published densities and settlements are among the check rows.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ALLOYS,
  alloyToLowerNg,
  blendPermille,
  densityRange,
  ELEMENT_DENSITY,
  fineToRaiseNg,
  isDensityImplausible,
  massInOtherMetal,
  mixtureDensity,
} from '../../src/trade/alloys.ts';
import { ALLOY_BAND_PERCENT } from '../../src/trade/estimate.ts';
import { expectedFineNg, lowestFineOldUsNg } from '../../src/trade/refining.ts';
import { fineNg, karat } from '../../src/units/fineness.ts';
import { massNg } from '../../src/units/mass.ts';

const grams = fc.integer({ min: 1, max: 1_000_000 }).map((mg) => massNg(mg * 1_000_000));

describe('the density of an alloy', () => {
  it('lies between those of its metals', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), (gold) => {
        const density = mixtureDensity({ Au: gold, Cu: 1000 - gold });
        expect(density).toBeGreaterThan(ELEMENT_DENSITY.Cu);
        expect(density).toBeLessThan(ELEMENT_DENSITY.Au);
      }),
    );
  });

  it('is not the mean of its metals: 22K would be 18.45 and is 17.6', () => {
    expect(mixtureDensity({ Au: 916, Cu: 84 })).toBeLessThan(17.7);
  });

  it('needs parts that make a whole', () => {
    expect(() => mixtureDensity({ Au: 750, Ag: 150 })).toThrow(RangeError);
  });

  // Two tables in print: Stuller 2012 (STG), tmtpages.com table 4 (TMT: density, °C, °F)
  it.each([
    ['10K red', 11.59, undefined, undefined],
    ['10K white', 11.07, undefined, undefined],
    ['14K green', 14.2, 963, 1765],
    ['18K green', 15.9, 988, 1810],
    ['18K red', 15.18, 902, 1655],
    ['fine gold', 19.32, 1063, 1945],
  ] as const)('of %s stands in print as %d', (name, density, meltsC, meltsF) => {
    expect(ALLOYS[name]).toMatchObject({ density, ...(meltsC ? { meltsC, meltsF } : {}) });
  });

  it('melts at one temperature in both scales', () => {
    for (const alloy of Object.values(ALLOYS)) {
      if ('meltsC' in alloy) expect(Math.abs((alloy.meltsC * 9) / 5 + 32 - alloy.meltsF)).toBeLessThanOrEqual(1.5);
    }
  });

  it('printed as 20.80 for platinum with cobalt is doubtful, and so not the one we use', () => {
    const byRule = mixtureDensity({ Pt: 950, Co: 50 });
    const offPercent = (printed: number, rule: number) => Math.abs(printed / rule - 1) * 100;
    expect(offPercent(20.8, byRule)).toBeGreaterThan(ALLOY_BAND_PERCENT);
    expect(offPercent(ALLOYS.Pt950Co.density, byRule)).toBeLessThan(ALLOY_BAND_PERCENT);
    expect(offPercent(ALLOYS.sterling.density, mixtureDensity({ Ag: 925, Cu: 75 }))).toBeLessThan(ALLOY_BAND_PERCENT);
  });

  it('printed as 15.2 for 14ct yellow is refused; the tables themselves are not', () => {
    expect(isDensityImplausible('14ct yellow', 15.2)).toBe(true);
    expect(isDensityImplausible('14ct yellow', ALLOYS['14K yellow'].density)).toBe(false);
    expect(isDensityImplausible('18ct yellow', ALLOYS['18K yellow'].density)).toBe(false);
    expect(isDensityImplausible('bronze', 1)).toBe(false);
    expect(densityRange('bronze')).toBeNull();
  });
});

describe('karats', () => {
  it('raised or lowered keep every nanogram of fine gold', () => {
    const pair = fc.tuple(fc.integer({ min: 8, max: 23 }), fc.integer({ min: 8, max: 23 }));
    fc.assert(
      fc.property(grams, pair, (ng, [a, b]) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const fineBefore = fineNg(ng, karat(high));
        const lowered = massNg(ng + alloyToLowerNg(ng, high, low));
        expect(Math.abs(fineNg(lowered, karat(low)) - fineBefore)).toBeLessThanOrEqual(2);
        const addedNg = fineToRaiseNg(ng, low, high);
        expect(Math.abs(fineNg(massNg(ng + addedNg), karat(high)) - fineNg(ng, karat(low)) - addedNg)).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('are not raised by alloy nor lowered by fine gold', () => {
    expect(() => alloyToLowerNg(massNg(1), 14, 18)).toThrow(RangeError);
    expect(() => fineToRaiseNg(massNg(1), 18, 14)).toThrow(RangeError);
  });

  it('of a joint lie between those of work and solder', () => {
    fc.assert(
      fc.property(grams, grams, (work, solder) => {
        const blend = blendPermille([
          { massNg: work, permille: 750 },
          { massNg: solder, permille: 585 },
        ]);
        expect(blend).toBeGreaterThanOrEqual(585);
        expect(blend).toBeLessThanOrEqual(750);
      }),
    );
  });
});

describe('a lot of old US pieces', () => {
  it('may melt a karat low with nobody at fault', () => {
    fc.assert(
      fc.property(grams, fc.integer({ min: 8, max: 22 }), (ng, n) => {
        const parcels = [{ massNg: ng, karat: n }];
        const gap = expectedFineNg(parcels) - lowestFineOldUsNg(parcels);
        expect(Math.abs(gap - ng / 24)).toBeLessThanOrEqual(2);
      }),
    );
  });
});

describe('the same ring in another metal', () => {
  it('and back weighs what it weighed', () => {
    fc.assert(
      fc.property(grams, (ng) => {
        const swapped = massInOtherMetal(ng, 10.4, 13.07).massNg;
        expect(Math.abs(massInOtherMetal(swapped, 13.07, 10.4).massNg - ng)).toBeLessThanOrEqual(2);
      }),
    );
  });
});
