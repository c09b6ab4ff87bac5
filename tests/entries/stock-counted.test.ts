import { describe, expect, it } from 'vitest';
import { stockCounted } from '../../src/entries/stock-counted.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, stamp } from './views.ts';

describe('stock_counted', () => {
  it('is what all of a stock weighs, and moves none of it', () => {
    expect(deciding(stockCounted)()).toBe(null);
    expect(stockCounted.facts(SAMPLES.stock_counted, stamp)).toEqual([
      { fact: 'reading', of: THINGS.stock, state: 'counted', reading: SAMPLES.stock_counted.weight },
    ]);
  });
});
