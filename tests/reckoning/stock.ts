// A stock that is counted again and again, for tests.
import type { Terms } from '../../src/reckoning/material-balance.ts';

export const U = 0.01;
const count = (id: string, g: number) => ({ id, fineNg: g * 1e9, worth: { uRandomG: U, factors: [] } });
/** Counts of a stock that nothing is taken from by anybody who writes it down. */
export const periods = (counts: readonly number[]): readonly Terms[] =>
  counts.slice(1).map((g, i) => [
    { ...count(`${i}`, counts[i] ?? 0), sign: 1 },
    { ...count(`${i + 1}`, g), sign: -1 },
  ]);
