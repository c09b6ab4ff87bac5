// Double entry over the flows of a log, read as corrected: it knows facts and no things.
import { readCorrected } from '../../src/ledger/corrections.ts';
import type { Kept } from '../../src/ledger/leaf.ts';
import { netNg } from '../../src/weighing/reading.ts';

/** Sums by end, 'outside' among them: each measured flow taken from one end and given to the other, a whole carried over. */
export function doubleEntry(leaves: readonly Kept[]): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  const add = (end: string, ng: number) => sums.set(end, (sums.get(end) ?? 0) + ng);
  for (const { facts } of readCorrected(leaves)) {
    for (const one of facts) {
      if (one.fact !== 'flow') continue;
      const ng = one.whole ? (sums.get(one.from) ?? 0) : one.reading ? (netNg(one.reading) ?? 0) : 0;
      add(one.from, -ng);
      add(one.to, ng);
    }
  }
  return sums;
}
