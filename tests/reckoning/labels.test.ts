// Which stone is which: the assignment proves itself by its prices, and every probability is that of all permutations.
import { describe, expect, it } from 'vitest';
import { bestAssignment, pairCosts, pairProbabilities, restoreLabels } from '../../src/reckoning/labels.ts';
import { uniform } from './random.ts';

describe('the cheapest assignment', () => {
  const random = uniform(12);
  const matrix = (n: number, cost: () => number) => Array.from({ length: n }, () => Array.from({ length: n }, cost));
  const SIZES = [1, 2, 3, 5, 8, 13, 21];

  it.each([
    ['in fractions', () => 5 * random()],
    ['in whole numbers, many of them alike', () => Math.floor(4 * random())],
    ['on either side of nothing', () => 3 * random() - 2],
  ])('has prices that no pair undercuts and its own pairs meet, with costs %s', (_how, cost) => {
    // Duality of the assignment problem (Kuhn 1955): such prices show that nothing is cheaper.
    for (const n of SIZES) {
      const costs = matrix(n, cost);
      const found = bestAssignment(costs);
      const over = (row: number, column: number) =>
        (costs[row]?.[column] ?? 0) - (found.rowPotentials[row] ?? Number.NaN) - (found.columnPotentials[column] ?? Number.NaN);
      expect(found.columns.toSorted((a, b) => a - b)).toEqual([...costs.keys()]);
      for (const row of costs.keys()) for (const column of costs.keys()) expect(over(row, column)).toBeGreaterThanOrEqual(-1e-9);
      for (const [row, column] of found.columns.entries()) expect(over(row, column)).toBeCloseTo(0, 12);
      expect(found.cost).toBeCloseTo(
        [...found.rowPotentials, ...found.columnPotentials].reduce((sum, price) => sum + price, 0),
        9,
      );
    }
  });
});

describe('the probability of a pair', () => {
  it('is not lost where every permutation is unlikely', () => {
    const costs = [
      [3000, 3001, 3002],
      [5001, 5000, 5003],
      [4000, 4002, 4001],
    ];
    const near = costs.map((row) => row.map((cost) => cost - Math.min(...row)));
    const pairs = pairProbabilities(costs);
    for (const [row, shares] of pairProbabilities(near).entries())
      for (const [column, share] of shares.entries()) expect(pairs[row]?.[column]).toBeCloseTo(share, 9);
  });
  it('is summed for sixteen stones and refused for seventeen', () => {
    const alike = (n: number) => Array.from({ length: n }, () => new Array<number>(n).fill(1));
    expect(pairProbabilities(alike(16))[3]?.[7]).toBeCloseTo(1 / 16, 9);
    expect(() => pairProbabilities(alike(17))).toThrow(RangeError);
    expect(restoreLabels(alike(16)).probabilities[0]).toBeCloseTo(1 / 16, 9);
    expect(restoreLabels(alike(17)).probabilities).toEqual(new Array(17).fill(null));
  });
});

describe('blocks of stones that could be one another', () => {
  const among = (recorded: readonly number[], found = recorded) => restoreLabels(pairCosts(recorded, found, 1)).probabilities;
  it('reach to four u and no further', () => {
    // By hand: two stones d apart weigh 1 the right way round and e^(−d²) the other way.
    expect(among([0, 4])[0]).toBeCloseTo(1 / (1 + Math.exp(-16)), 14);
    expect(among([0, 4])[0]).toBeLessThan(1);
    expect(among([0, 5])).toEqual([1, 1]);
  });
  it('join over the stones between', () => {
    const costs = pairCosts([0, 3, 6], [0, 3, 6], 1);
    expect(restoreLabels(costs).probabilities).toEqual(pairProbabilities(costs).map((row, i) => expect.closeTo(row[i] ?? 0, 12)));
  });
  it('say nothing where as many do not belong as are short', () => {
    expect(among([10, 90], [10.1, 10.2])).toEqual([null, null]);
  });
});
