// A material balance: a count shared by two periods cancels in the running sum, and so does what both rest on.
import { describe, expect, it } from 'vitest';
import { materialBalance } from '../../src/reckoning/material-balance.ts';
import { periods, U } from './stock.ts';

describe('a material balance', () => {
  it('adds up to the first count less the last, with no more doubt than those two', () => {
    const { periods: found } = materialBalance(periods([20, 19.98, 20.03, 19.95]));
    expect(found.map(({ missingNg }) => Math.round(missingNg / 1e7))).toEqual([2, -5, 8]);
    expect(found.map(({ runningNg }) => Math.round(runningNg / 1e7))).toEqual([2, -3, 5]);
    for (const { uG, runningUG } of found) {
      expect(uG).toBeCloseTo(Math.SQRT2 * U, 12);
      expect(runningUG).toBeCloseTo(Math.SQRT2 * U, 12);
    }
  });

  it('signals on either side beyond the limit of one in a hundred periods, h = 2.849 at k = 0.5', () => {
    // By hand: u of one period is 0.01·√2 g, so 0.05 g is 3.54 and the sum 3.04; 0.04 g is 2.83 and the sum 2.33.
    const alarmsOf = (last: number) => materialBalance(periods([20, last])).alarms;
    expect(alarmsOf(19.95)).toEqual([{ at: 0, side: 'loss' }]);
    expect(alarmsOf(20.05)).toEqual([{ at: 0, side: 'gain' }]);
    expect([alarmsOf(19.96), alarmsOf(20.04)]).toEqual([[], []]);
  });

  it('knows what both counts share: an error of the balance is none of the difference', () => {
    const shared = (id: string) => ({ id, fineNg: 20e9, worth: { uRandomG: 0.001, factors: [{ id: 'gain', sensitivityG: 0.5 }] } });
    const { periods: found } = materialBalance([
      [
        { ...shared('a'), sign: 1 },
        { ...shared('b'), sign: -1 },
      ],
    ]);
    expect(found[0]?.uG).toBeCloseTo(0.001 * Math.SQRT2, 12);
  });

  it('adds up in line what several weighings of one side share', () => {
    // By hand: 0.3 + 0.5 of one gain, and twice 0.01 apart.
    const shared = (id: string, sensitivityG: number) =>
      ({ id, fineNg: 20e9, sign: -1, worth: { uRandomG: 0.01, factors: [{ id: 'gain', sensitivityG }] } }) as const;
    const { periods: found } = materialBalance([[shared('a', 0.3), shared('b', 0.5)]]);
    expect(found[0]?.uG).toBeCloseTo(Math.hypot(0.8, 0.01, 0.01), 12);
  });
});
