// Least squares where values may not fall below zero, and under curved constraints.
import { describe, expect, it } from 'vitest';
import { adjust, adjustCurved, atLeastZero, reconciledOf } from '../../src/reckoning/adjustment.ts';
import { diagonal, dot, type Matrix, times, type Vector } from '../../src/reckoning/matrix.ts';
import { normal, uniform } from './random.ts';

const near2 = expect.closeTo(2, 12);

describe('values that may not fall below zero', () => {
  /** Every choice of values held at zero, solved by itself; the nearest to the readings with none below zero. */
  function byEveryChoice(a: Matrix, covariance: Matrix, y: Vector): Vector {
    let best: { readonly x: Vector; readonly gamma: number } | null = null;
    for (let chosen = 0; chosen < 2 ** y.length; chosen++) {
      const held = [...y.keys()].filter((i) => chosen & (1 << i)).map((i) => y.map((_, j) => Number(i === j)));
      const all = [...a, ...held];
      const { corrections, gamma } = adjust({ a: all, covariance, residuals: times(all, y) });
      const x = reconciledOf(y, corrections);
      if (x.every((value) => value >= -1e-9) && (best === null || gamma < best.gamma - 1e-9)) best = { x, gamma };
    }
    return best?.x ?? [];
  }

  it('are the nearest to the readings of all choices of what is held at zero', () => {
    const random = uniform(3);
    const noise = normal(random);
    const held: number[] = [];
    for (let trial = 0; trial < 50; trial++) {
      // Two steps of three flows each, one of them between the two, with two errors that the readings share: so that some value held at zero is let go again.
      const a = [
        [1, -1, -1, 0, 0],
        [0, 0, 1, 1, -1],
      ];
      const y = a[0]?.map(() => 2 * noise()) ?? [];
      const shared = [0, 1].map(() => y.map(() => 2 * noise()));
      const alone = diagonal(y.map(() => 0.05 + random()));
      const covariance = alone.map((row, i) =>
        row.map((value, j) => shared.reduce((sum, effect) => sum + (effect[i] ?? 0) * (effect[j] ?? 0), value)),
      );
      const found = atLeastZero({ covariance }, y, adjust({ a, covariance, residuals: times(a, y) }));
      for (const [i, value] of byEveryChoice(a, covariance, y).entries()) expect(found.x[i]).toBeCloseTo(value, 6);
      for (const row of a) expect(dot(row, found.x)).toBeCloseTo(0, 9);
      for (const i of found.fixed) expect(found.x[i]).toBe(0);
      held.push(found.fixed.length);
    }
    expect(new Set(held).size).toBeGreaterThan(2);
  });
  it('are left alone where none would', () => {
    const [a, covariance, y] = [[[1, -1]], diagonal([1, 1]), [3, 1]];
    expect(atLeastZero({ covariance }, y, adjust({ a, covariance, residuals: times(a, y) }))).toEqual({ x: [near2, near2], fixed: [] });
  });
});

describe('curved constraints', () => {
  it('are solved anew until nothing moves any more, not only some of it', () => {
    // By hand: the point of x·y = 4 nearest to (3, 3) is (2, 2); the third value is in no constraint.
    const found = adjustCurved([3, 3, 7], diagonal([1, 1, 1]), ([a = 0, b = 0]) => ({ values: [a * b - 4], slopes: [[b, a, 0]] }));
    expect(found.x.map((value) => Number(value.toFixed(9)))).toEqual([2, 2, 7]);
  });
  it('that are straight need a second look and no third, and one look is told to be too few', () => {
    const straight = (steps: number) =>
      adjustCurved([3, 1], diagonal([1, 1]), ([a = 0, b = 0]) => ({ values: [a - b], slopes: [[1, -1]] }), steps);
    expect(straight(2)).toEqual({ x: [near2, near2], gamma: expect.closeTo(2, 12), steps: 2 });
    expect(() => straight(1)).toThrow(RangeError);
  });
});

describe('nothing to balance', () => {
  it('agrees', () => {
    expect(adjust({ a: [], covariance: [[1]], residuals: [] })).toMatchObject({ gamma: 0, rank: 0, p: 1, uReconciled: [1] });
  });
});
