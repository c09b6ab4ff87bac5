import { describe, expect, it } from 'vitest';
import { normalTail } from '../../src/reckoning/distributions.ts';
import {
  againstOthers,
  averageRunLength,
  flooredTau,
  limitFor,
  runLengthFor,
  runningSums,
  selfStarting,
  usualRate,
  watch,
  whitened,
} from '../../src/reckoning/drift.ts';
import { solve } from '../../src/reckoning/matrix.ts';
import { benjaminiHochberg, periodCount, sidak } from '../../src/reckoning/periods.ts';
import { normal, uniform } from './random.ts';

const prior = { rate: 0.015, uRate: 0.006, tau: 0.005 };

describe('the run length of a running sum', () => {
  // One-sided h for a run length without change at k = 0.5, by integral equation and Markov chain, independently with scipy.
  it.each([
    [100, 2.849],
    [200, 3.502],
    [370, 4.095],
    [600, 4.568],
    [1000, 5.071],
    [5000, 6.669],
  ])('of %i jobs needs h = %d', (jobs, h) => {
    expect(limitFor(jobs)).toBeCloseTo(h, 3);
  });
  // The same integral equation by Gauss and Legendre's rule of 400 points, independently with scipy.
  it.each([
    [100, 1, 1.531649],
    [500, 0.25, 7.26726],
    [5, 0.5, 0.363662],
    [3.5, 0.5, 0.066724],
  ])('of %d jobs at k = %d needs h = %d', (jobs, k, h) => {
    expect(limitFor(jobs, k)).toBeCloseTo(h, 5);
  });
  it.each([
    [0.5, 4, 0, 335.367578],
    [0.5, 4, 1, 8.38320213],
    [0.5, 4, -0.3, 2942.46653],
    [1, 2.5, 0, 716.003879],
    [0.25, 8, 0, 736.787747],
  ])('at k = %d and h = %d with a shift of %d is %d', (k, h, shift, length) => {
    expect(averageRunLength(k, h, shift) / length).toBeCloseTo(1, 4);
  });
  it('is that of single scores at a limit of nothing, and no limit is lower', () => {
    // By hand: 1/(1 − Φ(0.5)).
    expect(averageRunLength(0.5, 0)).toBeCloseTo(1 / normalTail(0.5), 12);
    expect(limitFor(2)).toBe(0);
  });
  it('is 600 for 12 charts of 50 jobs a year and one false alarm a year', () => {
    expect(runLengthFor(12, 50, 1)).toBe(600);
  });
  it('agrees with a Markov chain over the sum (Brook & Evans 1972)', () => {
    const states = 120;
    const [k, h, shift] = [0.5, 4, 0.5];
    const width = (2 * h) / (2 * states - 1);
    const below = (x: number) => 1 - normalTail(x - shift);
    const to = (i: number, j: number) => {
      const centre = (j - i) * width + k;
      return j === 0 ? below(centre + width / 2) : below(centre + width / 2) - below(centre - width / 2);
    };
    const system = Array.from({ length: states }, (_, i) => Array.from({ length: states }, (__, j) => Number(i === j) - to(i, j)));
    const length =
      solve(
        system,
        Array.from({ length: states }, () => 1),
      )[0] ?? 0;
    expect(Math.abs(averageRunLength(k, h, shift) / length - 1)).toBeLessThan(0.005);
  });
});

describe('a running sum', () => {
  it('starts anew after an alarm and says since when, and by how much', () => {
    const { alarms } = runningSums([0, 0, -0.2, 2, 2, 2, 1, 0], 0.5, 4);
    expect(alarms).toEqual([{ at: 5, side: 'loss', since: 3, size: 2 }]);
  });
  it('sees a gain on its other side', () => {
    expect(runningSums([-3, -3], 0.5, 4).alarms).toMatchObject([{ at: 1, side: 'gain', since: 0 }]);
  });
});

describe('the usual loss', () => {
  it('is the prior when there are no jobs', () => {
    expect(usualRate([], prior)).toMatchObject({ rate: 0.015, tau: 0.005 });
  });
  it('takes its spread from eight jobs on, and never less than half the prior', () => {
    const alike = Array.from({ length: 8 }, () => ({ value: 0.012, u: 0.004 }));
    expect(usualRate(alike.slice(1), prior).tau).toBe(0.005);
    expect(usualRate(alike, prior).tau).toBe(0);
    expect(flooredTau(0, prior)).toBe(0.0025);
  });
  it('finds a spread that is there', () => {
    const noise = normal(uniform(8));
    const jobs = Array.from({ length: 4000 }, () => ({ value: 0.02 + 0.01 * noise() + 0.004 * noise(), u: 0.004 }));
    expect(usualRate(jobs, prior).tau).toBeCloseTo(0.01, 3);
  });
});

describe('the chart a bench has earned', () => {
  const jobs = (count: number, more = 0) =>
    Array.from({ length: count }, (_, i) => ({ lossG: 0.1 * (0.015 + 0.003 * Math.sin(i * 2.4)) * 10 + more, uG: 0.004, basis: 1 }));
  it('grows with the number of jobs', () => {
    expect(watch(jobs(2), prior, 4.568).chart).toBe('single jobs');
    expect(watch(jobs(3), prior, 4.568).chart).toBe('self-starting');
    expect(watch(jobs(20), prior, 4.568).chart).toBe('usual rate');
  });
  it('stays quiet while nothing changes, and speaks when losses rise', () => {
    const steady = watch(jobs(25), prior, 4.568);
    const risen = watch([...jobs(25), ...jobs(8, 0.03)], prior, 4.568);
    expect(steady.chart === 'usual rate' && steady.sums.alarms).toEqual([]);
    expect(risen.chart === 'usual rate' && risen.sums.alarms[0]).toMatchObject({ side: 'loss' });
  });
  it('leaves a flagged job out until it is explained', () => {
    const flagged = { lossG: 0.9, uG: 0.004, basis: 1, leftOut: true };
    expect(watch([...jobs(2), flagged], prior, 4.568).chart).toBe('single jobs');
  });
  it('has no score while all losses were equal', () => {
    expect(selfStarting([1, 1, 1, 2])).toEqual([null, null, null, null]);
  });
});

describe('benches side by side', () => {
  it('show a theft that went on from the first day', () => {
    const found = againstOthers([
      { bench: '1', rate: 0.015, uRate: 0.001 },
      { bench: '2', rate: 0.022, uRate: 0.001 },
      { bench: '3', rate: 0.016, uRate: 0.001 },
    ]);
    expect(found.find(({ z }) => z > 3)?.bench).toBe('2');
    // By hand: the others of bench 2 are 0.0155 ± 0.001/√2.
    expect(found[1]?.z).toBeCloseTo((0.022 - 0.0155) / Math.hypot(0.001, 0.001 / Math.SQRT2), 9);
    expect(againstOthers([{ bench: '1', rate: 1, uRate: 1 }])).toEqual([{ bench: '1', z: 0 }]);
  });
});

describe('inventory differences that share inventories', () => {
  it('become independent', () => {
    // By hand: L of [[4, 2], [2, 5]] is [[2, 0], [1, 2]], so (2, 3) whitens to (1, 1).
    expect(
      whitened(
        [2, 3],
        [
          [4, 2],
          [2, 5],
        ],
      ),
    ).toEqual([1, 1]);
  });
});

describe('a period of many jobs', () => {
  it('counts what chance alone would flag', () => {
    const jobs = [0.0001, 0.004, 0.3, 0.6].map((p) => ({ pLoss: p, pGain: 1, flagged: p < 0.001 }));
    expect(periodCount(jobs)).toEqual({ checked: 4, byChance: 0.008, flagged: 1, standing: [0, 1] });
  });
  it('names those that stand up together, in their own order', () => {
    // By hand at q = 0.05: sorted 0.001, 0.02, 0.03, 0.04 against 0.0125, 0.025, 0.0375, 0.05.
    expect(benjaminiHochberg([0.04, 0.001, 0.03, 0.02], 0.05)).toEqual([0, 1, 2, 3]);
    expect(benjaminiHochberg([0.6, 0.03, 0.9, 0.001, 0.02], 0.05)).toEqual([1, 3, 4]);
    expect(benjaminiHochberg([0.9, 0.02, 0.001], 0.05)).toEqual([1, 2]);
    expect(benjaminiHochberg([0.05], 0.05)).toEqual([0]);
  });
  it('names nothing when nothing stands out', () => {
    expect(benjaminiHochberg([0.2, 0.9, 0.5], 0.05)).toEqual([]);
    expect(benjaminiHochberg([], 0.05)).toEqual([]);
  });
  it('divides its level among independent tests', () => {
    expect((1 - sidak(0.05, 13)) ** 13).toBeCloseTo(0.95, 12);
  });
});
