import { describe, expect, it } from 'vitest';
import { massNg } from '../../src/units/mass.ts';
import { sameItem } from '../../src/weighing/agreement.ts';
import { assumedParameters } from '../../src/weighing/balance.ts';
import {
  combined,
  covariance,
  driftAfterCheck,
  effectiveDof,
  readingVariance,
  uFromCalibration,
  uOfDifference,
  uOfSum,
  type Worth,
  worthOfEstimate,
  worthOfReading,
} from '../../src/weighing/uncertainty.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));
const fine = {
  ...assumedParameters({ id: 'B3', unit: 'g', ranges: [{ maxNg: g(200), stepNg: g(0.001) }], repeatabilityNg: g(0.001) }),
  uGain: 5.8e-5,
};

describe('an 86 g bangle weighed in and out on one 0.001 g balance', () => {
  const worth = worthOfReading(fine, g(86.214), { epoch: '2026a' });
  const inAndOut = (after: Worth) => [
    { sign: 1, worth },
    { sign: -1, worth: after },
  ];
  // Independent computation with numpy: 0.0017320508 g with the shared gain, 0.0072806758 g without.
  it('keeps 0.0017 g because the gain cancels', () => {
    expect(uOfSum(inAndOut(worth))).toBeCloseTo(0.0017320508, 9);
  });
  it('has 0.0073 g when the balance was calibrated in between', () => {
    expect(uOfSum(inAndOut(worthOfReading(fine, g(86.214), { epoch: '2026b' })))).toBeCloseTo(0.0072806758, 9);
  });
});

describe('shared factors', () => {
  it('add up in line when ten resistors hang on one standard', () => {
    // JCGM 100:2008, 5.2.2 (memory): ten resistors of 1 kΩ on one standard, u = 100 mΩ each: 1 Ω, not 0.32 Ω.
    const tenth = { uRandomG: 0, factors: [{ id: 'standard', sensitivityG: 0.1 }] };
    expect(uOfSum(Array.from({ length: 10 }, () => ({ sign: 1, worth: tenth })))).toBeCloseTo(1, 12);
  });
  it('make the covariance diag(random²) + Σ s·sᵀ', () => {
    const worths: Worth[] = [
      { uRandomG: 3, factors: [{ id: 'a', sensitivityG: 2 }] },
      {
        uRandomG: 1,
        factors: [
          { id: 'a', sensitivityG: 5 },
          { id: 'b', sensitivityG: 1 },
        ],
      },
    ];
    expect(covariance(worths)).toEqual([
      [13, 10],
      [10, 27],
    ]);
  });
  it('carry the tare of a stored container and the drift of a day', () => {
    const worth = worthOfReading(fine, g(10), {
      epoch: 'e',
      drift: { day: '2026-12-08', uRelative: driftAfterCheck(g(0.005), g(50)) },
      tare: { container: 'tray 3', uG: 0.002 },
    });
    expect(worth.factors.map(({ id }) => id)).toEqual(['gain:B3:e', 'drift:B3:2026-12-08', 'tare:tray 3']);
    expect(worth.factors[1]?.sensitivityG).toBeCloseTo(10 * 5.7735e-5, 8);
  });
});

describe('one reading', () => {
  it('gains nothing in linearity from being repeated', () => {
    const terms = { s: 0.006, step: 0.01, zeroStep: 0.01, linearity: 0.005 };
    expect(readingVariance({ ...terms, repeats: 1_000_000 })).toBeCloseTo(0.005 ** 2 / 3, 9);
  });
  it('is worth its s and steps over the repeats, its linearity and its place on the pan', () => {
    // By hand: (0.0012² + 2·0.001²/12)/4 + 0.002²/3 + (0.003/200·50)²/3 = 1.9225e-6 g².
    const balance = {
      ...fine,
      linearityNg: g(0.002),
      eccentricity: { ng: g(0.003), atNg: g(100) },
      repeatability: { sNg: g(0.0012), readings: 11 },
    };
    const worth = worthOfReading(balance, g(50), { epoch: 'e', repeats: 4, tare: { container: 'tray 3', uG: 0.002 } });
    expect(worth.uRandomG).toBeCloseTo(Math.sqrt(1.9225e-6), 9);
    expect(worth.factors).toEqual([
      { id: 'gain:B3:e', sensitivityG: expect.closeTo(0.0029, 12) },
      { id: 'tare:tray 3', sensitivityG: -0.002 },
    ]);
    expect(worth.sG).toBeCloseTo(0.0006, 12);
    expect([worth.dof, worth.sOf]).toEqual([10, 'B3:e']);
  });
  it('cannot be made beyond the balance', () => {
    expect(() => worthOfReading(fine, g(201), { epoch: 'e' })).toThrow(RangeError);
  });
  it('that is an estimate between limits is rectangular', () => {
    // JCGM 100, 4.3.7: half-width a gives a/√3.
    expect(worthOfEstimate(g(0.9), g(1.1)).uRandomG).toBeCloseTo(0.1 / Math.sqrt(3), 12);
  });
});

describe('degrees of freedom', () => {
  it('follow Welch and Satterthwaite', () => {
    // Two equal components of 9 degrees of freedom each: ν = (2s²)²/(2s⁴/9) = 18 (JCGM 100, G.4.1).
    const worth = { uRandomG: 0.006, factors: [], sG: 0.006, dof: 9 };
    const both = [
      { sign: 1, worth },
      { sign: -1, worth },
    ];
    expect(effectiveDof(both, uOfSum(both))).toBeCloseTo(18, 9);
  });
  it('are those of one estimate, however many weighings lean on the same few readings of a balance', () => {
    // Ten weighings with one s of 4 degrees of freedom: u² = 10 s², and s² is known no better for it: ν = (10 s²)²/((10 s²)²/4) = 4.
    const worth = { uRandomG: 0.006, factors: [], sG: 0.006, dof: 4, sOf: 'balance' };
    const ten = Array.from({ length: 10 }, () => ({ sign: 1, worth }));
    expect(effectiveDof(ten, uOfSum(ten))).toBeCloseTo(4, 9);
    const two = [...ten, ...ten.map(() => ({ sign: 1, worth: { ...worth, sOf: 'another' } }))];
    expect(effectiveDof(two, uOfSum(two))).toBeCloseTo(8, 9);
  });
  it('are endless when nothing came from few readings', () => {
    expect(effectiveDof([{ sign: 1, worth: { uRandomG: 0.01, factors: [] } }], 0.01)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('components', () => {
  it('of a difference are those of both readings, and what drifted between them', () => {
    // By hand: 2·(0.006² + 0.01²/12 + 0.01²/12) + 0.003²/3.
    const terms = { s: 0.006, step: 0.01, zeroStep: 0.01 };
    expect(uOfDifference(terms, { ...terms, s: 0 }, 0.003)).toBeCloseTo(Math.sqrt(0.006 ** 2 + 4e-4 / 12 + 3e-6), 12);
  });
  it('add up by squares, each by its shape', () => {
    // JCGM 100, 4.3.3 and 4.3.7: U/k, and a/√3.
    expect(
      combined([
        { shape: 'normal', u: 2 },
        { shape: 'rectangular', half: 6 },
        { shape: 'expanded', U: 6, k: 2 },
      ]),
    ).toBeCloseTo(5, 12);
    expect(combined([])).toBe(0);
  });
  it('of a calibration lie on a line between two loads, at half of U', () => {
    // By hand: U from 0.2 at 10 g to 0.6 at 110 g is 0.3 at 35 g.
    expect(uFromCalibration(35, { load: 10, U: 0.2 }, { load: 110, U: 0.6 })).toBeCloseTo(0.15, 12);
  });
});

describe('two weighings of what may be one item', () => {
  it('never agree merely because both are vague', () => {
    expect(sameItem(1.0, 1.1, 0.2, 0.2, 0.01).verdict).toBe('inconclusive');
    expect(sameItem(1.0, 1.0, 0.002, 0.002, 0.01).verdict).toBe('consistent');
  });
});
