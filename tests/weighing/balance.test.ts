import { describe, expect, it } from 'vitest';
import { massNg } from '../../src/units/mass.ts';
import {
  assumedParameters,
  leastDivisionsUs,
  leastLoadNg,
  loadProblem,
  maintenanceToleranceNg,
  permissibleError,
  rangeFor,
  stepProblem,
} from '../../src/weighing/balance.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));

describe('errors a balance may have', () => {
  it('are counted in e, not in the finer digit a balance shows', () => {
    // UK SI 1995/1907 Sch. 2, Table 3: 8.243 g is 824 e of 0.01 g.
    expect(permissibleError('II', g(0.01), g(8.243))).toEqual({ initialNg: g(0.005), inServiceNg: g(0.01) });
  });
  it('do not exist beyond the class', () => {
    expect(permissibleError('III', g(0.1), g(1000))).not.toBeNull();
    expect(permissibleError('III', g(0.1), g(1000.1))).toBeNull();
  });
});

describe('e and the step', () => {
  // SI 1995/1907 Sch. 2, paras 2.2.1 to 2.2.3 and 3.1.
  it.each([
    ['II', 0.01, 0.01, null],
    ['II', 0.01, 0.001, null],
    ['I', 0.001, 0.00001, null],
    ['II', 0.01, 0.003, 'step is not 1, 2 or 5'],
    ['II', 0.03, 0.03, 'step is not 1, 2 or 5'],
    ['II', 0.03, 0.01, 'e is not 1, 2 or 5'],
    ['III', 0.05, 0.05, 'e is too small for the class'],
    ['III', 0.1, 0.01, 'class shows no finer step'],
    ['II', 0.02, 0.01, 'e must be a power of ten'],
    ['II', 0.01, 0.0005, 'step is not finer than e by up to ten'],
    ['II', 0.01, 0.02, 'step is not finer than e by up to ten'],
  ] as const)('class %s, e %d g, d %d g: %s', (accuracyClass, e, d, problem) => {
    expect(stepProblem(accuracyClass, 'g', g(e), g(d))).toBe(problem);
  });
  it('is asked in the unit it shows', () => {
    expect(stepProblem('II', 'ct', massNg(2_000_000), massNg(200_000))).toBeNull();
  });
});

describe('the least load', () => {
  it('is counted in the finer step where there is one', () => {
    // SI 1995/1907 Sch. 2, Table 1: class II 20 e; para 3.1: d in place of e.
    expect(leastLoadNg('II', g(0.01), g(0.01))).toBe(g(0.2));
    expect(leastLoadNg('II', g(0.01), g(0.001))).toBe(g(0.02));
  });
  it('is 50 divisions on a coarse class II scale for precious metals', () => {
    // Minnesota Commerce, precious-metal scales: d = 0.1 g, smallest item 5 g.
    expect(leastDivisionsUs('II', g(0.1)) * g(0.1)).toBe(g(5));
    expect(leastDivisionsUs('II', g(0.01)) * g(0.01)).toBe(g(0.2));
  });
});

describe('the US maintenance tolerance', () => {
  // NIST HB 44 s. 2.20 Table 6; class III's loads 500, 2000, 4000 d also in Mettler-Toledo's acceptance chart, at half of these.
  it.each([
    [500, 1],
    [501, 2],
    [2001, 3],
    [4001, 5],
  ])('of class III at %i d is %i d', (divisions, tolerance) => {
    expect(maintenanceToleranceNg('III', g(0.1), massNg(divisions * g(0.1)))).toBe(tolerance * g(0.1));
  });
});

describe('a balance with two ranges', () => {
  const dual = {
    ranges: [
      { maxNg: g(60), stepNg: g(0.001) },
      { maxNg: g(320), stepNg: g(0.01) },
    ],
  };
  it('reads a load in the smallest range that carries it', () => {
    expect(rangeFor(dual, g(60))?.stepNg).toBe(g(0.001));
    expect(rangeFor(dual, g(60.01))?.stepNg).toBe(g(0.01));
    expect(rangeFor(dual, g(321))).toBeNull();
  });
  it('is assumed no better than its steps when nothing else is known', () => {
    const assumed = assumedParameters({ id: 'b', unit: 'g', ...dual });
    expect(assumed.repeatability.sNg).toBe(g(0.001));
    expect(assumed.eNg).toBe(g(0.001));
  });
});

describe('the balance for a load', () => {
  const balance = { accuracyClass: 'II' as const, eNg: g(0.01), ranges: [{ maxNg: g(200), stepNg: g(0.01) }] };
  // Least load 20 d (SI 1995/1907 Sch. 2, Table 1); 50 d to be fit for precious metal (Oregon Dept of Agriculture).
  it.each([
    [0.19, 'below its least load'],
    [0.2, 'coarse for this load'],
    [0.49, 'coarse for this load'],
    [0.5, null],
    [200.01, 'beyond the balance'],
  ])('of %d g: %s', (load, problem) => {
    expect(loadProblem(balance, g(load))).toBe(problem);
  });
  it('goes by its plate where the plate speaks', () => {
    expect(loadProblem({ ...balance, minNg: g(1) }, g(0.9))).toBe('below its least load');
  });
});
