// The check rows of weighing and reconciliation, of which some state a property and not a value: a judge answers for those.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { difference, type Fns, type Tolerance } from '../reference/compare.ts';
import { RECKONING_FNS } from '../reference/reckoning.fns.ts';
import { WEIGHING_FNS } from '../reference/weighing.fns.ts';

interface Row {
  readonly id: string;
  readonly fn: string;
  readonly input: never;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: Tolerance;
  readonly source: string;
}
const FNS: Fns = { ...WEIGHING_FNS, ...RECKONING_FNS };
const rowsOf = (file: string): readonly Row[] => JSON.parse(readFileSync(join(import.meta.dirname, '../reference', file), 'utf8')).rows;

/** Puts the expected value where a judge accepts it. */
function judged(expected: Row['expected'], got: unknown): unknown {
  const settle = (key: string, value: unknown) => (typeof value === 'function' && value(expected[key]) === true ? expected[key] : value);
  return Object.fromEntries(Object.entries(got as object).map(([key, value]) => [key, key in expected ? settle(key, value) : value]));
}

for (const [file, count] of [
  ['weighing.json', 74],
  ['reconciliation.json', 61],
] as const) {
  describe(file, () => {
    const rows = rowsOf(file);
    it('is whole', () => expect(rows).toHaveLength(count));
    it.each(rows.map((row) => [row.id, row] as const))('%s', (_, { fn, input, expected, tolerance, source }) => {
      expect(difference(expected, judged(expected, FNS[fn]?.(input)), tolerance), source).toBeNull();
    });
  });
}
