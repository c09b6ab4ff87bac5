import { describe, expect, it } from 'vitest';
import { bestAssignment, pairCosts, pairProbabilities, restoreLabels } from '../../src/reckoning/labels.ts';
import { compareParcels, compareWeights, couldBe, identityWorth, shareAlsoAgreeing } from '../../src/reckoning/stone-agreement.ts';
import { sizeSpreadCt } from '../../src/trade/stone-spread.ts';
import { uniform } from './random.ts';

const CT = 0.2;
const measured = (ct: number, uCt = 0.001) => ({ g: ct * CT, worth: { uRandomG: uCt * CT, factors: [] } });

describe('one stone weighed in and out', () => {
  // u of the difference 0.00141 ct: E_n = 1 at 0.0028 ct and 1.5 at 0.0042 ct (E_n of ISO 13528, 9.7; the limit of 1.5 is z = 3).
  it.each([
    [1.013, 1.014, 'agrees'],
    [1.013, 1.0102, 'agrees'],
    [1.013, 1.0101, 'weigh again'],
    [1.013, 1.0088, 'weigh again'],
    [1.013, 1.0087, 'does not agree'],
  ])('%d ct and %d ct: %s', (before, after, verdict) => {
    expect(compareWeights(measured(before), measured(after)).verdict).toBe(verdict);
  });
  it('still is what it was at the very limit', () => {
    const [zero, half] = [0, 0.5].map((u) => ({ uRandomG: u, factors: [] }));
    const verdict = (g: number, fitnessG?: number) =>
      zero && half && compareWeights({ g: 0, worth: half }, { g, worth: zero }, fitnessG).verdict;
    // u = 0.5 g exactly: E_n is the difference in grams, U = 1 g.
    expect([1, 1.5].map((g) => verdict(g))).toEqual(['agrees', 'weigh again']);
    expect([1, 0.99].map((fitnessG) => verdict(0, fitnessG))).toEqual(['agrees', 'cannot tell']);
  });
  it('on a balance too coarse for the question cannot tell', () => {
    expect(compareWeights(measured(1.01, 0.05), measured(1.02, 0.05), 0.01 * CT).verdict).toBe('cannot tell');
  });
});

describe('a parcel', () => {
  it('with a stone short does not agree, whatever it weighs', () => {
    const found = compareParcels({ ...measured(0.186), stones: 12 }, { ...measured(0.186), stones: 11 });
    expect(found).toMatchObject({ missing: 1, verdict: 'does not agree' });
  });
  it('with the count right goes by its weight', () => {
    expect(compareParcels({ ...measured(0.186), stones: 12 }, { ...measured(0.187), stones: 12 }).verdict).toBe('agrees');
    expect(compareParcels({ ...measured(0.186), stones: 12 }, { ...measured(0.1705), stones: 12 }).verdict).toBe('does not agree');
  });
});

describe('what agreement is worth', () => {
  // Constructed trade spreads, computed independently with scipy: other stones of the size that would agree too within 2u, u = 0.0014 ct.
  it.each([
    ['1 ct', 1, 0.03],
    ['0.25 ct', 0.25, 0.16],
    ['0.05 ct', 0.05, 0.47],
    ['1.5 mm', 0.0154, 0.84],
  ])('by weight alone for a %s stone', (_size, carats, share) => {
    expect(shareAlsoAgreeing(0.0014, sizeSpreadCt(carats))).toBeCloseTo(share, 2);
  });
  it('matches the share that agrees in a simulation', () => {
    const random = uniform(5);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const trials = 40_000;
    let agree = 0;
    for (let i = 0; i < trials; i++) {
      const difference = 0.003 * (normal() - normal()) + 0.0014 * normal();
      if (Math.abs(difference) <= 2 * 0.0014) agree += 1;
    }
    expect(agree / trials).toBeCloseTo(shareAlsoAgreeing(0.0014, 0.003), 2);
  });
  it('is nothing when two stones of the size differ less than the balance shows', () => {
    expect(identityWorth([{ difference: 0, u: 0.0014, spread: 0.001 }]).worth).toBe('cannot tell');
    expect(identityWorth([{ difference: 0, u: 0.0014, spread: 0.05 }]).worth).toBe('some');
  });
  it('is strong from a ratio of a thousand and some from ten', () => {
    // By hand with no difference and u = 1: the ratio is √(1 + 2σ²): 998 and 1001, 9.95 and 10.09.
    const worth = [706, 708, 7, 7.1].map((spread) => identityWorth([{ difference: 0, u: 1, spread }]).worth);
    expect(worth).toEqual(['some', 'strong', 'cannot tell', 'some']);
  });
  it('turns against one stone when the difference is large', () => {
    expect(identityWorth([{ difference: 0.02, u: 0.0014, spread: 0.05 }]).log10Ratio).toBeLessThan(0);
  });
});

describe('an unlabelled piece', () => {
  const holdings = [3.2, 3.26, 8.9].map((grams) => ({ id: `${grams} g`, g: grams, worth: { uRandomG: 0.008, factors: [] } }));
  it('is given to the only holding it agrees with', () => {
    expect(couldBe({ g: 8.905, worth: { uRandomG: 0.008, factors: [] } }, holdings).only).toBe('8.9 g');
  });
  it('is given to none while two come near', () => {
    const found = couldBe({ g: 3.23, worth: { uRandomG: 0.008, factors: [] } }, holdings);
    expect(found.only).toBeNull();
    expect(found.candidates.map(({ id }) => id).sort()).toEqual(['3.2 g', '3.26 g']);
  });
  it('names the nearest first', () => {
    const found = couldBe({ g: 3.232, worth: { uRandomG: 0.008, factors: [] } }, holdings);
    expect(found.candidates.map(({ id }) => id)).toEqual(['3.26 g', '3.2 g']);
  });
  it('is given to none while its only one does not agree, and to the limit it does', () => {
    const exact = [{ id: 'one', g: 0, worth: { uRandomG: 0.5, factors: [] } }];
    const given = (g: number) => couldBe({ g, worth: { uRandomG: 0, factors: [] } }, exact);
    expect(given(1).only).toBe('one');
    expect(given(1.5)).toEqual({ candidates: [{ id: 'one', en: 1.5 }], only: null });
    expect(given(1.51).candidates).toEqual([]);
  });
  it('agrees with nothing when nothing weighs as much', () => {
    expect(couldBe({ g: 5, worth: { uRandomG: 0.008, factors: [] } }, holdings)).toEqual({ candidates: [], only: null });
  });
});

/** Every permutation of 0 … n−1. */
function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((rest) => Array.from({ length: n }, (_, at) => [...rest.slice(0, at), n - 1, ...rest.slice(at)]));
}

describe('lost labels', () => {
  const random = uniform(31);
  const costs = Array.from({ length: 6 }, () => Array.from({ length: 6 }, () => 3 * random()));
  const weighed = permutations(6).map((columns) => ({
    columns,
    cost: columns.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? 0), 0),
  }));

  it('find the cheapest of all permutations', () => {
    const cheapest = weighed.reduce((best, one) => (one.cost < best.cost ? one : best));
    expect(bestAssignment(costs).columns).toEqual(cheapest.columns);
    expect(bestAssignment(costs).cost).toBeCloseTo(cheapest.cost, 12);
  });
  it('give each pair the share of the permutations that have it', () => {
    const total = weighed.reduce((sum, { cost }) => sum + Math.exp(-cost), 0);
    const pairs = pairProbabilities(costs);
    for (const row of costs.keys())
      for (const column of costs.keys()) {
        const share = weighed.filter(({ columns }) => columns[row] === column).reduce((sum, { cost }) => sum + Math.exp(-cost), 0) / total;
        expect(pairs[row]?.[column]).toBeCloseTo(share, 12);
      }
  });
  it('go back on only where it is 99 in 100 sure', () => {
    // Constructed: seven stones by weight only, u = 0.0014 ct; 0.214 and 0.213 ct cannot be told apart.
    const found = restoreLabels(
      pairCosts([0.512, 0.498, 0.305, 0.301, 0.214, 0.213, 0.152], [0.301, 0.513, 0.213, 0.499, 0.152, 0.306, 0.214], 0.0014 * Math.SQRT2),
    );
    expect(found.columns).toEqual([1, 3, 5, 0, null, null, 4]);
    expect(found.best).toEqual([1, 3, 5, 0, 6, 2, 4]);
  });
  it('do not go back on when one stone does not belong', () => {
    const found = restoreLabels(pairCosts([0.5, 0.3], [0.3, 0.45], 0.002));
    expect(found.p).toBeLessThan(0.001);
    expect(found.columns).toEqual([null, null]);
  });
  it('are restored in a large lot, block by block', () => {
    const recorded = Array.from({ length: 60 }, (_, i) => 0.1 + 0.02 * i);
    const found = restoreLabels(pairCosts(recorded, recorded.toReversed(), 0.002));
    expect(found.columns).toEqual(recorded.map((_, i) => 59 - i));
  });
  it('stay off in a block too large to sum', () => {
    const alike = Array.from({ length: 20 }, () => 0.1);
    expect(restoreLabels(pairCosts(alike, alike, 0.002)).columns.every((column) => column === null)).toBe(true);
  });
});
