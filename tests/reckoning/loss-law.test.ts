import { describe, expect, it } from 'vitest';
import { studentTail } from '../../src/reckoning/distributions.ts';
import { ACTION_ALPHA, dustUpper, levelAt, lossTail, NOTE_ALPHA, scoreOf, Z95 } from '../../src/reckoning/loss-law.ts';

describe('dust and weighing error together', () => {
  it('is the error alone where the dust is small, and the dust alone where the error is', () => {
    const small = { uG: 0.01, stepNg: 0, usual: { meanG: 1e-9, tauG: 1e-9 } };
    for (const r of [-0.02, 0.003, 0.031, 0.06]) expect(lossTail(r * 1e9, small) / studentTail(r / 0.01, 1e9)).toBeCloseTo(1, 4);
    const usual = { meanG: 0.1, tauG: 0.08 };
    for (const [z, p] of [
      [Z95, 0.05],
      [3.0902323061678132, 0.001],
    ] as const)
      expect(lossTail(dustUpper(usual, z) * 1e9, { uG: 1e-6, stepNg: 0, usual }) / p).toBeCloseTo(1, 3);
  });
  it('falls as the loss rises, from a chance of one to none', () => {
    const spread = { uG: 0.012, stepNg: 10_000_000, usual: { meanG: 0.03, tauG: 0.04 } };
    const ps = Array.from({ length: 400 }, (_, i) => lossTail((i - 100) * 10_000_000, spread));
    expect(ps.every((p, i) => p >= 0 && p <= 1 && (i === 0 || p <= (ps[i - 1] ?? 0)))).toBe(true);
    expect(ps[0]).toBeCloseTo(1, 9);
  });
  it('flags at the smallest step whose chance is allowed, dust or none', () => {
    for (const meanG of [0, 0.0004, 0.02, 0.3])
      for (const alpha of [NOTE_ALPHA, ACTION_ALPHA]) {
        const spread = { uG: 0.0163, stepNg: 10_000_000, usual: { meanG, tauG: 0.8 * meanG } };
        const { flagNg } = levelAt(alpha, spread);
        expect(lossTail(flagNg, spread)).toBeLessThanOrEqual(alpha);
        expect(lossTail(flagNg - 10_000_000, spread)).toBeGreaterThan(alpha);
      }
  });
});

describe('the law against quadrature by another program', () => {
  // scipy 1.17.1: integrate.quad of norm.sf or t.sf over lognormal dust; norm.isf of that; brentq on it, or the first step that is rare enough.
  const LOSSES = [-0.02, 0, 0.01, 0.03, 0.08, 0.15, 0.3, 0.6];
  const spreadOf = (uG: number, meanG: number, tauG: number, dof: number, stepG: number) => ({
    ...{ uG, dof, stepNg: Math.round(stepG * 1e9) },
    ...(meanG > 0 ? { usual: { meanG, tauG } } : {}),
  });

  it.each<[number, number, number, number, number, number[]]>([
    [
      0.011,
      0.05,
      0.05,
      Number.POSITIVE_INFINITY,
      0,
      [0.999339834, 0.964073868, 0.883319107, 0.596385375, 0.169646301, 0.042194918, 0.00515749684, 0.000337019899],
    ],
    [
      0.011,
      0.005,
      0.007,
      Number.POSITIVE_INFINITY,
      0,
      [0.982655023, 0.645826251, 0.322658375, 0.0297285634, 0.000837151666, 8.04603797e-5, 4.33790757e-6, 1.56335388e-7],
    ],
    [
      0.002,
      0.12,
      0.1,
      Number.POSITIVE_INFINITY,
      0,
      [1, 0.999999139, 0.998564121, 0.93851827, 0.577523629, 0.251384403, 0.0521056189, 0.00494958699],
    ],
    [
      0.05,
      0.02,
      0.02,
      Number.POSITIVE_INFINITY,
      0,
      [0.772441012, 0.641709582, 0.568315237, 0.417884092, 0.128535505, 0.0107666178, 0.000183093728, 3.84418759e-6],
    ],
    [
      0.011,
      0.05,
      0.02,
      4,
      0,
      [0.997329847, 0.987479144, 0.967439292, 0.802084656, 0.110812338, 0.00228752828, 1.29685229e-5, 4.85862583e-7],
    ],
    [
      0.0163,
      0.02,
      0.016,
      Number.POSITIVE_INFINITY,
      0.01,
      [0.990518483, 0.888661121, 0.750866977, 0.368607812, 0.01904054, 0.000911642958, 1.56929781e-5, 1.1631717e-7],
    ],
    [
      0.0163,
      0.3,
      0.24,
      6.5,
      0.01,
      [0.999910394, 0.999595218, 0.999081449, 0.995526293, 0.941133981, 0.752337857, 0.373216022, 0.0928988153],
    ],
  ])('u %d g, dust %d ± %d g, %d degrees of freedom, steps of %d g: chances', (uG, meanG, tauG, dof, stepG, ps) => {
    // Hill's normal deviate of Student's t is good to a hundredth far out in the tail, and better before.
    const relative = (p: number) => (dof === Number.POSITIVE_INFINITY ? 1e-5 : p < 1e-4 ? 2e-2 : 2e-3);
    for (const [i, p] of ps.entries()) {
      const got = lossTail((LOSSES[i] ?? 0) * 1e9, spreadOf(uG, meanG, tauG, dof, stepG));
      expect(Math.abs(got / p - 1)).toBeLessThan(relative(p));
    }
  });
  it.each<[number, number, number, number, number, number[]]>([
    [0.011, 0.05, 0.05, Number.POSITIVE_INFINITY, 0, [-3.2115237, -1.800053, -1.1917436, -0.24400203, 0.95556391, 1.7257642, 2.565087]],
    [0.05, 0.02, 0.02, Number.POSITIVE_INFINITY, 0, [-0.74690986, -0.36303219, -0.1720865, 0.20730946, 1.1333412, 2.298502, 3.5633246]],
    [0.011, 0.05, 0.02, 4, 0, [-2.7857559, -2.2407587, -1.8444237, -0.84909095, 1.2222194, 2.8355241, 4.2064875]],
    [
      0.0163,
      0.02,
      0.016,
      Number.POSITIVE_INFINITY,
      0.01,
      [-2.0604616, -0.94608263, -0.41363136, 0.56738328, 2.1819612, 3.1686704, 4.1874932],
    ],
  ])('u %d g, dust %d ± %d g, %d degrees of freedom, steps of %d g: scores', (uG, meanG, tauG, dof, stepG, zs) => {
    for (const [i, z] of zs.entries())
      expect(scoreOf((LOSSES[i] ?? 0) * 1e9, spreadOf(uG, meanG, tauG, dof, stepG)) - z).toBeCloseTo(0, 2.7);
  });
  it.each([
    [0.011, 0.05, 0.05, Number.POSITIVE_INFINITY, 0, 0.05, 0.1403553345, 0.05, 0.1584487244],
    [0.011, 0.05, 0.05, Number.POSITIVE_INFINITY, 0, 0.001, 0.4638517131, 0.001, 0.481945103],
    [0.05, 0.02, 0.02, Number.POSITIVE_INFINITY, 0, 0.05, 0.109034883, 0.05, 0.1912775644],
    [0.011, 0.05, 0.02, 4, 0, 0.05, 0.09446192239, 0.05, 0.117912237],
    [0.0163, 0.02, 0.016, Number.POSITIVE_INFINITY, 0.01, 0.05, 0.07, 0.033677149, 0.09138730083],
    [0.0163, 0.02, 0.016, Number.POSITIVE_INFINITY, 0.01, 0.001, 0.15, 0.00091164296, 0.1713873008],
    [0.0163, 0.3, 0.24, 6.5, 0.01, 0.05, 0.76, 0.048224965, 0.7857489285],
    [0.0163, 0.3, 0.24, 6.5, 0.01, 0.001, 2.07, 0.000987096, 2.095748929],
    [0.011, 0, 0, Number.POSITIVE_INFINITY, 0.01, 0.05, 0.03, 0.0092544115, 0.04245922571],
    [0.011, 0, 0, Number.POSITIVE_INFINITY, 0.01, 0.001, 0.04, 0.00048793939, 0.05245922571],
    [0.011, 0, 0, 5, 0.01, 0.05, 0.03, 0.032565848, 0.04638864139],
    [0.011, 0, 0, 5, 0.01, 0.001, 0.07, 0.00084232899, 0.08638864139],
    [0.011, 0, 0, 5, 0, 0.05, 0.02216553211, 0.05, 0.04433106421],
    [0.011, 0, 0, 5, 0, 0.001, 0.06482772484, 0.001, 0.08699325695],
    [0.011, 0, 0, Number.POSITIVE_INFINITY, 0, 0.05, 0.0180933899, 0.05, 0.03618677979],
  ])(
    'u %d g, dust %d ± %d g, %d degrees of freedom, steps of %d g, level %d',
    (uG, meanG, tauG, dof, stepG, alpha, flagG, trueAlpha, detectableG) => {
      const level = levelAt(alpha, spreadOf(uG, meanG, tauG, dof, stepG));
      expect(level.flagNg / 1e9 / flagG).toBeCloseTo(1, dof === Number.POSITIVE_INFINITY || meanG === 0 ? 5 : 3);
      expect(level.trueAlpha / trueAlpha).toBeCloseTo(1, dof === Number.POSITIVE_INFINITY || meanG === 0 ? 5 : 2);
      expect(level.detectableG).toBeCloseTo(detectableG, dof === Number.POSITIVE_INFINITY || meanG === 0 ? 6 : 4);
    },
  );
  it('ends at nine and a half spreads on either side', () => {
    expect([-1, 1].map((lossG) => scoreOf(lossG * 1e9, { uG: 0.01, stepNg: 0 }))).toEqual([-9.5, 9.5]);
  });
});
