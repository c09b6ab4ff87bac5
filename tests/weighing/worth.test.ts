// What a reading is worth on a balance of which its plate, its papers or nothing is known; figures worked out by hand.
import { describe, expect, it } from 'vitest';
import { refFromBytes } from '../../src/units/ids.ts';
import { massNg } from '../../src/units/mass.ts';
import { enScore, guardBand, sameItem } from '../../src/weighing/agreement.ts';
import {
  assumedParameters,
  leastLoadNg,
  loadProblem,
  maintenanceToleranceNg,
  permissibleError,
  stepProblem,
} from '../../src/weighing/balance.ts';
import { dailyCheck, uspAccuracy, uspLeastWeight, weighingsInDoubt } from '../../src/weighing/check.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { effectiveDof, readingVariance, uOfDifference, uOfSum, worthOfEstimate, worthOfReading } from '../../src/weighing/uncertainty.ts';
import { parametersOf, repeatabilityOf, worthOf } from '../../src/weighing/worth.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));
const ranges = [{ maxNg: g(400), stepNg: g(0.01) }];
const balance = refFromBytes('balance', new Uint8Array(16).fill(7));
const reading = (grams: number, more: Partial<Reading> = {}): Reading => ({
  ...{ text: grams.toFixed(2), unit: 'g', ng: g(grams), basis: 'weighed', balance, stepNg: g(0.01) },
  ...more,
});

describe('a balance of which only its plate is known', () => {
  // e = d = 0.01 g, class II: at a fifth of 400 g, 8,000 e, the error in service is 2 e = 0.02 g (SI 1995/1907 Sch. 2, Table 3 and para 4.2).
  const assumed = assumedParameters({ id: 'b', unit: 'g', ranges });
  it('has one step of repeatability and linearity, and the gain its class allows, rectangular', () => {
    expect(assumed).toMatchObject({
      eNg: g(0.01),
      linearityNg: g(0.01),
      repeatability: { sNg: g(0.01), readings: Number.POSITIVE_INFINITY },
    });
    expect(assumed.eccentricity).toEqual({ ng: 0, atNg: g(80) });
    expect(assumed.uGain).toBeCloseTo(0.02 / 80 / Math.sqrt(3), 12);
  });
  it('has 3 e where a fifth of its load is beyond the class, and the repeatability that was stated', () => {
    // 0.01 g × 100,000 divisions = 1,000 g is the most of class II; a fifth of 10 kg is beyond it.
    const large = assumedParameters({ id: 'b', unit: 'g', ranges: [{ maxNg: g(10_000), stepNg: g(0.01) }], repeatabilityNg: g(0.004) });
    expect(large.uGain).toBeCloseTo(0.03 / 2000 / Math.sqrt(3), 12);
    expect(large.repeatability.sNg).toBe(g(0.004));
    expect(() => assumedParameters({ id: 'b', unit: 'g', ranges: [] })).toThrow('no range');
  });
});

describe('what was said of a balance', () => {
  const plate = { unit: 'g' as const, ranges };
  it('stands in for what is assumed, mark by mark', () => {
    const said = { class: 'I', verificationStep: '0.1', linearity: '0.003', eccentricity: '0.02', repeatability: '0.004' };
    expect(parametersOf('b', plate, said)).toMatchObject({
      ...{ accuracyClass: 'I', eNg: g(0.1), linearityNg: g(0.003) },
      repeatability: { sNg: g(0.004), readings: Number.POSITIVE_INFINITY },
    });
    // A third of the largest load (OIML R 76-1:2006, 3.6.2, from memory).
    expect(parametersOf('b', plate, said).eccentricity).toEqual({ ng: g(0.02), atNg: Math.round(400e9 / 3) });
    expect(parametersOf('b', plate, {})).toMatchObject({
      accuracyClass: 'II',
      eNg: g(0.01),
      linearityNg: g(0.01),
      eccentricity: { ng: 0 },
    });
    for (const none of ['none', 'verified', '']) expect(parametersOf('b', plate, { class: none }).accuracyClass).toBe('II');
    for (const one of ['I', 'II', 'III', 'IIII']) expect(parametersOf('b', plate, { class: one }).accuracyClass).toBe(one);
  });
  it('of its repeatability is one figure, or readings of one weight', () => {
    expect(repeatabilityOf('0.004', 'g')).toEqual({ sNg: g(0.004), readings: Number.POSITIVE_INFINITY });
    // 20.00 20.02 20.04: s = 0.02.
    expect(repeatabilityOf('20.00 20.02 20.04', 'g')).toEqual({ sNg: g(0.02), readings: 3 });
    expect(repeatabilityOf(undefined, 'g')).toBeNull();
    expect(repeatabilityOf('', 'g')).toBeNull();
    expect(repeatabilityOf('much', 'g')).toBeNull();
  });
});

describe('a reading is worth', () => {
  const known = { ...assumedParameters({ id: 'b', unit: 'g', ranges, repeatabilityNg: g(0.006) }), linearityNg: g(0.003), uGain: 1e-4 };
  // s² + 2 d²/12 + lin²/3 in g²: 36 + 100/6 + 3 = 55.667 (× 1e-6).
  const u = Math.sqrt(36e-6 + 100e-6 / 6 + 3e-6);
  it('its own spread and roundings, and a share of the gain', () => {
    const worth = worthOf(reading(10), known, { epoch: 'e' });
    expect(worth.uRandomG).toBeCloseTo(u, 12);
    expect(worth.factors).toEqual([{ id: 'gain:b:e', sensitivityG: expect.closeTo(1e-3, 12) }]);
    expect(worth).toMatchObject({ dof: Number.POSITIVE_INFINITY, sOf: 'b:e' });
    expect(worth.sG).toBeCloseTo(0.006, 12);
  });
  it('two readings where it is a difference, and a tenth of itself where it is an estimate, a count or on no balance', () => {
    expect(worthOf(reading(10, { basis: 'difference' }), known, { epoch: 'e' }).uRandomG).toBeCloseTo(Math.SQRT2 * u, 12);
    // Half-width a tenth: 1 g at 10 g, rectangular (JCGM 100, 4.3.7).
    for (const guess of [reading(10, { basis: 'estimate' }), reading(10, { basis: 'count' }), reading(401)]) {
      expect(worthOf(guess, known, { epoch: 'e' })).toEqual({ uRandomG: expect.closeTo(guess.ng / 1e10 / Math.sqrt(3), 9), factors: [] });
    }
    expect(worthOf(reading(10), undefined, { epoch: 'e' }).uRandomG).toBeCloseTo(1 / Math.sqrt(3), 9);
    expect(worthOf(reading(400), known, { epoch: 'e' }).factors).toHaveLength(1);
  });
  it('one more reading where a tare was taken off, shared by all in that container', () => {
    const onPan = [
      { thing: 'dish', tareNg: g(2) },
      { thing: 'clip', tareNg: g(1) },
    ];
    const worth = worthOf(reading(10, { onPan }), known, { epoch: 'e' });
    expect(worth.factors.map(({ id }) => id)).toEqual(['gain:b:e', 'tare:dish + clip']);
    expect(worth.factors[1]?.sensitivityG).toBeCloseTo(-u, 12);
    expect(worthOf(reading(10, { onPan: [{ thing: 'thread' }] }), known, { epoch: 'e' }).factors).toHaveLength(1);
  });
  it('more for a load off the middle of the pan: half the difference seen, in the share of the load', () => {
    const off = { ...known, eccentricity: { ng: g(0.02), atNg: g(100) } };
    // 0.02 g at 100 g: ±0.01 % of the load; 10 g ± 0.001 g, rectangular.
    expect(worthOfReading(off, g(10), { epoch: 'e' }).uRandomG).toBeCloseTo(Math.sqrt(u ** 2 + 1e-6 / 3), 12);
  });
  it('s/√n of what was read n times, the linearity staying', () => {
    const four = worthOfReading(known, g(10), { epoch: 'e', repeats: 4 });
    expect(four.uRandomG).toBeCloseTo(Math.sqrt((36e-6 + 100e-6 / 6) / 4 + 3e-6), 12);
    expect(four.sG).toBeCloseTo(0.003, 12);
    const few = { ...known, repeatability: { sNg: g(0.006), readings: 5 } };
    expect(worthOfReading(few, g(10), { epoch: 'e' }).dof).toBe(4);
  });
  it('more on a day of drift', () => {
    const worth = worthOfReading(known, g(10), { epoch: 'e', drift: { day: 'd', uRelative: 2e-4 } });
    expect(worth.factors[1]).toEqual({ id: 'drift:b:d', sensitivityG: expect.closeTo(2e-3, 12) });
  });
});

describe('sums', () => {
  it('of terms without a shared error add in squares, whatever their signs', () => {
    const terms = [3, 4].map((uRandomG, i) => ({ sign: i === 0 ? 1 : -1, worth: { uRandomG, factors: [] } }));
    expect(uOfSum(terms)).toBe(5);
    expect(uOfSum([])).toBe(0);
  });
  it('share an error by its sign: it cancels between in and out and doubles between two that came in', () => {
    const worth = {
      uRandomG: 0,
      factors: [
        { id: 'gain', sensitivityG: 3 },
        { id: 'other', sensitivityG: 4 },
      ],
    };
    expect(
      uOfSum([
        { sign: 1, worth },
        { sign: -1, worth },
      ]),
    ).toBe(0);
    expect(
      uOfSum([
        { sign: 1, worth },
        { sign: 1, worth },
      ]),
    ).toBe(10);
  });
  it('have the degrees of freedom of what came from few readings, beside what did not', () => {
    // u⁴/(s⁴/ν) with u² = 25, s² = 9, ν = 4: 625/(81/4).
    const terms = [
      { sign: 1, worth: { uRandomG: 3, factors: [], sG: 3, dof: 4 } },
      { sign: -1, worth: { uRandomG: 4, factors: [] } },
    ];
    expect(effectiveDof(terms, 5)).toBeCloseTo(625 / (81 / 4), 9);
  });
  it('and differences of two readings have the variance of both and of the drift between', () => {
    const terms = { s: 3, step: 0, zeroStep: 0 };
    expect(uOfDifference(terms, { ...terms, s: 4 }, 0)).toBe(5);
    expect(uOfDifference(terms, { ...terms, s: 4 }, 3)).toBeCloseTo(Math.sqrt(28), 12);
    expect(readingVariance({ s: 0, step: 0, zeroStep: 0, eccentricity: { relative: 0.5, load: 6 } })).toBe(3);
    expect(worthOfEstimate(g(1), g(1), [{ id: 'f', sensitivityG: 1 }])).toEqual({ uRandomG: 0, factors: [{ id: 'f', sensitivityG: 1 }] });
  });
});

describe('limits, on both sides', () => {
  it.each([
    // SI 1995/1907 Sch. 2, Table 3; class II's 5,000 e as OIML R 76-1 (from memory).
    ['I', 0.001, 50, 0.0005],
    ['I', 0.001, 50.001, 0.001],
    ['I', 0.001, 200, 0.001],
    ['I', 0.001, 200.001, 0.0015],
    ['II', 0.01, 50, 0.005],
    ['II', 0.01, 50.01, 0.01],
    ['II', 0.01, 200, 0.01],
    ['II', 0.01, 200.01, 0.015],
    ['III', 0.1, 50, 0.05],
    ['III', 0.1, 50.1, 0.1],
    ['III', 0.1, 200.1, 0.15],
    ['IIII', 5, 250, 2.5],
    ['IIII', 5, 255, 5],
    ['IIII', 5, 1005, 7.5],
  ] as const)('of the error of class %s, e %d g, at %d g: %d g', (accuracyClass, e, load, error) => {
    expect(permissibleError(accuracyClass, g(e), g(load))).toEqual({ initialNg: g(error), inServiceNg: g(2 * error) });
  });
  it('of each class’s largest load', () => {
    expect(permissibleError('II', g(0.01), g(1000))).not.toBeNull();
    expect(permissibleError('II', g(0.01), g(1000.01))).toBeNull();
    expect(permissibleError('IIII', g(5), g(5000))).not.toBeNull();
    expect(permissibleError('IIII', g(5), g(5005))).toBeNull();
    expect(permissibleError('I', g(0.001), g(1e5))).not.toBeNull();
  });
  it.each([
    ['I', 0.001, 0.001, 0.1],
    ['I', 0.1, 0.1, 10],
    ['II', 0.1, 0.1, 5],
    ['II', 0.05, 0.05, 1],
    ['III', 0.1, 0.1, 2],
    ['IIII', 5, 5, 50],
  ] as const)('of the least load of class %s, e %d g, d %d g: %d g', (accuracyClass, e, d, least) =>
    expect(leastLoadNg(accuracyClass, g(e), g(d))).toBe(g(least)),
  );
  it.each([
    ['I', 'g', 0.001, 0.0001, null],
    ['I', 'g', 0.001, 0.00005, null],
    ['II', 'g', 0.001, 0.00005, 'step is not finer than e by up to ten'],
    ['I', 'g', 0.01, 0.00005, 'step is not finer than e by up to ten'],
    ['II', 'g', 0.0005, 0.0005, 'e is too small for the class'],
    ['II', 'g', 0.001, 0.001, null],
    ['III', 'g', 0.1, 0.1, null],
    ['III', 'g', 0.1, 0.05, 'class shows no finer step'],
    ['IIII', 'g', 5, 5, null],
    ['IIII', 'g', 5, 2, 'class shows no finer step'],
    ['IIII', 'g', 2, 2, 'e is too small for the class'],
    ['II', 'g', 0.05, 0.01, 'e must be a power of ten'],
    ['II', 'g', 0.01, 0.05, 'step is not finer than e by up to ten'],
  ] as const)('of e and d: class %s in %s, e %d, d %d: %s', (accuracyClass, unit, e, d, problem) =>
    expect(stepProblem(accuracyClass, unit, g(e), g(d))).toBe(problem),
  );
  it.each([
    ['I', 50_000, 1],
    ['I', 50_001, 2],
    ['I', 200_001, 3],
    ['II', 5_000, 1],
    ['II', 5_001, 2],
    ['II', 20_000, 2],
    ['II', 20_001, 3],
    ['III', 2_000, 2],
    ['III', 4_000, 3],
    ['IIII', 50, 1],
    ['IIII', 51, 2],
    ['IIII', 200, 2],
    ['IIII', 400, 3],
    ['IIII', 401, 5],
  ] as const)('of the US tolerance of class %s at %d d: %d d', (accuracyClass, divisions, tolerance) =>
    expect(maintenanceToleranceNg(accuracyClass, g(0.01), massNg(divisions * g(0.01)))).toBe(tolerance * g(0.01)),
  );
  it('of a load: at the least, at the plate’s least, and at the largest', () => {
    const one = { accuracyClass: 'II' as const, eNg: g(0.01), ranges };
    expect(loadProblem(one, g(400))).toBeNull();
    expect(loadProblem({ ...one, minNg: g(1) }, g(1))).toBeNull();
    expect(loadProblem({ ...one, minNg: g(0.1) }, g(0.15))).toBe('coarse for this load');
  });
  it('of a check: two sides, the half of the limit and the limit itself', () => {
    expect([50.01, 50.011, 49.995, 49.994].map((shown) => dailyCheck('II', g(0.01), g(50), g(shown))?.result)).toEqual([
      'warn',
      'fail',
      'pass',
      'warn',
    ]);
    expect(dailyCheck('II', g(0.01), g(50), g(49.99))).toEqual({ deviationNg: -g(0.01), allowedNg: g(0.01), result: 'warn' });
  });
  it('of doubt: a weighing at the moment of a check is judged by that check', () => {
    const at = (atMs: number, result: 'pass' | 'warn' | 'fail') => ({ atMs, result });
    const one = [{ id: 'w', atMs: 10 }];
    expect(weighingsInDoubt([at(10, 'fail')], one)).toEqual(['w']);
    expect(weighingsInDoubt([at(9, 'fail'), at(10, 'pass')], one)).toEqual(['w']);
    expect(weighingsInDoubt([at(9, 'pass'), at(10, 'pass')], one)).toEqual([]);
    expect(weighingsInDoubt([at(9, 'warn'), at(11, 'pass'), at(12, 'fail')], one)).toEqual([]);
    expect(weighingsInDoubt([at(5, 'fail'), at(9, 'pass')], one)).toEqual([]);
    expect(weighingsInDoubt([], one)).toEqual([]);
  });
  it('of USP <41>: 0.41 d, 0.10 %, and a weight of 5 to 100 % of the capacity', () => {
    expect(uspLeastWeight(g(0.004), g(0.01))).toEqual({ sNg: 4_100_000, leastNg: 8_200_000_000 });
    expect(uspLeastWeight(g(0.005), g(0.01))).toEqual({ sNg: 5_000_000, leastNg: 10_000_000_000 });
    expect(uspAccuracy(g(10), g(200), g(10.01))).toEqual({ percent: 0.1, pass: true });
    expect(uspAccuracy(g(10), g(200), g(9.99)).pass).toBe(true);
    expect(uspAccuracy(g(10), g(200), g(10.011)).pass).toBe(false);
    expect(uspAccuracy(g(9.99), g(200), g(9.99)).pass).toBe(false);
    expect(uspAccuracy(g(200), g(200), g(200)).pass).toBe(true);
    expect(uspAccuracy(g(200.01), g(200), g(200.01)).pass).toBe(false);
  });
});

describe('agreement', () => {
  it('is a difference over both uncertainties, with its sign', () => {
    expect(enScore(7, 2, 3, 4)).toBe(1);
    expect(sameItem(2, 7, 3, 4, 10)).toEqual({ difference: 5, U: 5, en: 1, zeta: 2, verdict: 'consistent' });
    expect(sameItem(7, 2, 3, 4, 5).verdict).toBe('consistent');
    expect(sameItem(7, 2, 3, 4, 4.99).verdict).toBe('inconclusive');
    expect(sameItem(2, 7.01, 3, 4, 10).verdict).toBe('different');
    expect(sameItem(7.01, 2, 3, 4, 10).verdict).toBe('different');
  });
  it.each([
    [8, 'pass'],
    [8.01, 'conditional pass'],
    [10, 'conditional pass'],
    [10.01, 'conditional fail'],
    [12, 'conditional fail'],
    [12.01, 'fail'],
    [-12.01, 'fail'],
    [-8, 'pass'],
  ] as const)('with a guard band of 2 at a limit of 10: %d is a %s (ILAC-G8:09/2019, 4.2.3)', (deviation, state) =>
    expect(guardBand(deviation, 10, 2)).toBe(state),
  );
});
