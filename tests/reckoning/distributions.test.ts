import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  chiSquaredTail,
  chiSquaredUpper,
  incompleteBeta,
  lnGamma,
  normalTail,
  normalTails,
  normalUpper,
  studentTail,
  studentUpper,
} from '../../src/reckoning/distributions.ts';

const near = (got: number, expected: number, relative: number) => expect(Math.abs(got / expected - 1)).toBeLessThan(relative);

describe('published tables', () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.4, values exceeded with probability 0.90 0.95 0.975 0.99 0.999.
  it.each([
    [10, [4.865, 3.94, 3.247, 2.558, 1.479]],
    [50, [37.689, 34.764, 32.357, 29.707, 24.674]],
    [100, [82.358, 77.929, 74.222, 70.065, 61.918]],
  ])('chi-squared with %i degrees of freedom, lower part', (df, row) => {
    for (const [i, tail] of [0.9, 0.95, 0.975, 0.99, 0.999].entries()) expect(chiSquaredUpper(tail, df)).toBeCloseTo(row[i] ?? 0, 3);
  });

  // Chi-square table of an examination paper of the Namibia University of Science and Technology, upper part .050 .025 .010 .005.
  it.each([
    [1, [3.84146, 5.02389, 6.6349, 7.87944]],
    [4, [9.48773, 11.14329, 13.2767, 14.86026]],
    [10, [18.30704, 20.48318, 23.20925, 25.18818]],
  ])('chi-squared with %i degrees of freedom, upper part', (df, row) => {
    for (const [i, tail] of [0.05, 0.025, 0.01, 0.005].entries()) expect(chiSquaredUpper(tail, df)).toBeCloseTo(row[i] ?? 0, 4);
  });

  // NIST Technical Note 1297, Table B.1: fraction between −t and +t of 90, 95, 99 and 99.73 percent.
  it.each([
    [1, [6.31, 12.71, 63.66, 235.8]],
    [9, [1.83, 2.26, 3.25, 4.09]],
    [50, [1.68, 2.01, 2.68, 3.16]],
    [Number.POSITIVE_INFINITY, [1.645, 1.96, 2.576, 3.0]],
  ])('Student with %d degrees of freedom', (df, row) => {
    for (const [i, fraction] of [0.9, 0.95, 0.99, 0.9973].entries()) near(studentUpper((1 - fraction) / 2, df), row[i] ?? 0, 4e-3);
  });

  // t table of the J. Am. Stat. Assoc. 1959, columns .999 and .9995.
  it.each([
    [1, 318.309, 636.619],
    [5, 5.893, 6.869],
    [30, 3.385, 3.646],
  ])('Student with %i degrees of freedom, far tail', (df, oneInThousand, fiveInTenThousand) => {
    expect(studentUpper(0.001, df)).toBeCloseTo(oneInThousand, 2);
    expect(studentUpper(0.0005, df)).toBeCloseTo(fiveInTenThousand, 2);
  });
});

describe('an independent library (jstat)', () => {
  const zs = [-3.7, -1.2, -0.01, 0, 0.5, 1.645, 2.5, 4];
  it('agrees on the normal', () => {
    for (const z of zs) expect(normalTail(z)).toBeCloseTo(jStat.normal.cdf(-z, 0, 1), 12);
    for (const p of [0.001, 0.05, 0.3, 0.9]) expect(normalUpper(p)).toBeCloseTo(-jStat.normal.inv(p, 0, 1), 8);
  });
  it('agrees on chi-squared', () => {
    for (const df of [1, 2, 5, 26, 90])
      for (const x of [0.1, 1, 4, 20, 100]) expect(chiSquaredTail(x, df)).toBeCloseTo(1 - jStat.chisquare.cdf(x, df), 10);
  });
  it('agrees on Student, as far as it goes near zero (1.6e-8 off scipy at t = 0.01)', () => {
    for (const df of [1, 3, 9, 40]) for (const t of zs) expect(studentTail(t, df)).toBeCloseTo(1 - jStat.studentt.cdf(t, df), 7);
  });
});

describe('true upper tails', () => {
  // scipy 1.17.1: norm.sf, chi2.sf, t.sf.
  it.each([
    [normalTail(5), 2.8665157187919333e-7],
    [normalTail(14.457587845501301), 1.1226478211358237e-47],
    [normalTail(37), 5.725571222524576e-300],
    [chiSquaredTail(401.2, 5), 1.6354245870923107e-84],
    [studentTail(1e-3, 3), 0.49963244748473046],
    [studentTail(60, 9), 2.5005952358364503e-13],
  ])('%d is not lost', (got, expected) => near(got, expected, 1e-6));

  it('is one half on each side of zero', () => {
    expect(normalTail(0)).toBe(0.5);
    expect(normalTails(0)).toBe(1);
    expect(normalTail(-9)).toBe(1);
    expect(studentTail(0, 4)).toBe(0.5);
  });
});

describe('another program (scipy 1.17.1), on either side of where each series hands over', () => {
  it.each([
    [0.1, 2.25271265173421],
    [0.4999, 0.572561318604118],
    [0.5, 0.5723649429247],
    [1.5, -0.120782237635245],
    [10.7, 14.4032105962985],
    [1e4, 82099.7174964424],
  ])('agrees on ln Γ(%d)', (x, expected) => near(lnGamma(x), expected, 1e-12));
  it.each([
    [1e-6, 1, 0.999202115572],
    [2.9, 1, 0.0885795525798],
    [3.1, 1, 0.0782922941464],
    [0.2, 7, 0.999974843749],
    [8.9, 7, 0.25991563079],
    [9.1, 7, 0.245555998897],
    [150, 200, 0.996647558502],
    [201.9, 200, 0.449068210667],
    [202.1, 200, 0.445141146547],
    [300, 200, 5.92454033548e-6],
    [700, 3, 2.09913085342e-151],
    [0, 3, 1],
    [-1, 3, 1],
  ])('agrees on χ² beyond %d with %d degrees of freedom', (x, df, expected) => near(chiSquaredTail(x, df), expected, 1e-10));
  it.each([
    [0.1, 0.5, 0.473165810564],
    [-2, 2.5, 0.921304252121],
    [1.2, 2.5, 0.165719418833],
    [8, 2.5, 0.00382832206552],
    [0.05, 30, 0.480226904325],
    [12, 30, 2.7900927076e-13],
    [2.2, 5000, 0.0139262412332],
    [-1, 5000, 0.841320550206],
  ])('agrees on t beyond %d with %d degrees of freedom', (t, df, expected) => near(studentTail(t, df), expected, 1e-10));
  it.each([
    [0.1, 2.5, 7, 0.101880299113],
    [0.3, 2.5, 7, 0.641222462972],
    [0.9, 2.5, 7, 0.999998447901],
    [0.5, 0.5, 0.5, 0.5],
    [0.01, 0.5, 30, 0.560665631095],
    [0.99, 40, 3, 0.9914161462],
    [0, 2, 3, 0],
    [1, 2, 3, 1],
  ])('agrees on I at %d of (%d, %d)', (x, a, b, expected) => expect(incompleteBeta(x, 1 - x, a, b)).toBeCloseTo(expected, 11));
  it('agrees on the points that a share of each passes', () => {
    for (const [p, z] of [
      [0.999, -3.09023230617],
      [0.6, -0.253347103136],
      [0.4, 0.253347103136],
      [1e-9, 5.99780701501],
    ] as const)
      expect(normalUpper(p)).toBeCloseTo(z, 10);
    for (const [p, df, t] of [
      [0.9, 3, -1.6377443537],
      [0.6, 12, -0.259032745677],
      [1e-6, 3, 103.29946778],
    ] as const)
      near(studentUpper(p, df), t, 1e-10);
    for (const [p, df, x] of [
      [0.999, 4, 0.090804035539],
      [1e-8, 4, 43.0715704901],
      [0.5, 1, 0.45493642312],
    ] as const)
      near(chiSquaredUpper(p, df), x, 1e-10);
    expect([normalUpper(0.5), studentUpper(0.5, 4)]).toEqual([expect.closeTo(0, 12), expect.closeTo(0, 12)]);
  });
});

describe('closed forms', () => {
  it('has Cauchy tails with one degree of freedom', () => {
    for (const t of [-3.7, -0.01, 0.5, 4, 1e6])
      near(studentTail(t, 1), t > 1 ? Math.atan(1 / t) / Math.PI : 0.5 - Math.atan(t) / Math.PI, 1e-13);
  });
  it('is exponential with two degrees of freedom of chi-squared', () => {
    for (const x of [0.01, 1, 9, 300]) near(chiSquaredTail(x, 2), Math.exp(-x / 2), 1e-13);
  });
});

describe('the functions underneath', () => {
  it('gives factorials', () => {
    for (const [n, factorial] of [1, 1, 2, 6, 24, 120, 720].entries()) near(Math.exp(lnGamma(n + 1)), factorial, 1e-13);
    near(Math.exp(lnGamma(0.25)), 3.625609908221908, 1e-13); // Γ(1/4), DLMF 5.4.6 and OEIS A068466 (memory)
  });
  it('is symmetric in the incomplete beta', () => {
    // DLMF 8.17.4: I_x(a, b) = 1 − I_(1−x)(b, a).
    for (const x of [0.01, 0.3, 0.77]) expect(incompleteBeta(x, 1 - x, 2.5, 7)).toBeCloseTo(1 - incompleteBeta(1 - x, x, 7, 2.5), 14);
  });
});

describe('Student at its edges', () => {
  it('is a probability at the point where the two series meet, whichever side rounding puts it', () => {
    // x = ν/(ν + t²) equals (a + 1)/(a + b + 2) at t² = 3/(1 + 2/ν) for b = 1/2; a few neighbours on either side of it in the last digits.
    for (let df = 1; df <= 400; df += 0.37) {
      const t = Math.sqrt((1.5 * df) / (df / 2 + 1));
      for (const by of [-4, -2, -1, 0, 1, 2, 4]) {
        const p = studentTail(t * (1 + by * 2 ** -52), df);
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThan(0.5);
      }
    }
  });
  it('falls through the reflection of every beta it is asked for', () => {
    for (const [a, b] of [
      [1, 1],
      [0.5, 0.5],
      [2.5, 7],
      [1e5, 0.5],
    ] as const) {
      const x = (a + 1) / (a + b + 2);
      for (const y of [1 - x, (1 - x) * (1 - 2 ** -50), (1 - x) * (1 + 2 ** -50)]) {
        const p = incompleteBeta(x * (1 + 2 ** -51), y, a, b);
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThan(1);
      }
    }
  });
  it('is the normal for more degrees of freedom than it has digits for', () => {
    for (const df of [1e6, 1e9, 1e13, 1e16, 1e300, Number.POSITIVE_INFINITY])
      for (const t of [-3, 0, 0.69, 4]) expect(studentTail(t, df)).toBe(normalTail(t));
    for (const t of [0.5, 2, 4]) near(studentTail(t, 999_999), normalTail(t), 1e-3);
  });
  it('throws on what is no number', () => {
    expect(() => studentTail(Number.NaN, 4)).toThrow(RangeError);
  });
});
