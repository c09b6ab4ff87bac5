// A material balance over many simulated shops: its test keeps its promise of false alarms and finds a steady loss.
import { describe, expect, it } from 'vitest';
import { FALSE_ALARM_IN, materialBalance } from '../../src/reckoning/material-balance.ts';
import { uniform } from './random.ts';
import { periods, U } from './stock.ts';

const random = uniform(11);
const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
const shops = (many: number, lostEach: number, n = 24) =>
  Array.from({ length: many }, () => materialBalance(periods(Array.from({ length: n + 1 }, (_, i) => 20 - lostEach * i + U * normal()))));

describe('a material balance', () => {
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
