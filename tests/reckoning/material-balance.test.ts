// A material balance: a count shared by two periods cancels in the running sum; the test keeps its promise of false alarms and finds a steady loss.
import { describe, expect, it } from 'vitest';
import { FALSE_ALARM_IN, materialBalance, type Terms } from '../../src/reckoning/material-balance.ts';
import { uniform } from './random.ts';

const U = 0.01;
const count = (id: string, g: number) => ({ id, fineNg: g * 1e9, worth: { uRandomG: U, factors: [] } });
/** Counts of a stock that nothing is taken from by anybody who writes it down. */
const periods = (counts: readonly number[]): readonly Terms[] =>
  counts.slice(1).map((g, i) => [
    { ...count(`${i}`, counts[i] ?? 0), sign: 1 },
    { ...count(`${i + 1}`, g), sign: -1 },
  ]);

describe('a material balance', () => {
  it('adds up to the first count less the last, with no more doubt than those two', () => {
    const { periods: found } = materialBalance(periods([20, 19.98, 20.03, 19.95]));
    expect(found.map(({ missingNg }) => Math.round(missingNg / 1e7))).toEqual([2, -5, 8]);
    expect(found.at(-1)?.runningNg).toBeCloseTo(0.05e9, 0);
    for (const { uG, runningUG } of found) {
      expect(uG).toBeCloseTo(Math.SQRT2 * U, 12);
      expect(runningUG).toBeCloseTo(Math.SQRT2 * U, 12);
    }
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

  const random = uniform(11);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const shops = (many: number, lostEach: number, n = 24) =>
    Array.from({ length: many }, () => materialBalance(periods(Array.from({ length: n + 1 }, (_, i) => 20 - lostEach * i + U * normal()))));

  it('signals no more often on each side than it says where nothing is missing', () => {
    const alarms = shops(400, 0).flatMap(({ alarms: own }) => own);
    for (const side of ['loss', 'gain'])
      expect(alarms.filter((one) => one.side === side).length / (400 * 24)).toBeLessThan(1.2 / FALSE_ALARM_IN);
  });

  it('finds a steady loss of twice the doubt of a period within a dozen', () => {
    const found = shops(200, 2 * Math.SQRT2 * U, 12).filter(({ alarms }) => alarms.some(({ side }) => side === 'loss'));
    expect(found.length / 200).toBeGreaterThan(0.95);
  });
});
