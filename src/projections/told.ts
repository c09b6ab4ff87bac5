// A history as the reckoning reads it: each entry's facts as corrected, by when it happened and then by when it was written.
import type { Fact } from '../book/facts.ts';
import { correctionsIn, factsOf } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';

export interface Told {
  readonly seq: number;
  readonly atMs: number;
  readonly facts: readonly Fact[];
  /** The streams the entry belongs to: lots, stocks and skins are streams of their own. */
  readonly streams: readonly string[];
}

/**
 * The entries of a history in seq order, read as corrected, in the order (occurredAt, seq). Where nobody stated when it happened the entry
 * follows those written before it: a clock that was set back puts no weighing before the work it came after.
 */
export function told(kept: readonly Kept[]): readonly Told[] {
  const corrections = correctionsIn(kept);
  let clockMs = 0;
  const placed = kept.map(({ seq, hash, leaf }) => {
    const patches = corrections.get(hash);
    const atMs = Number(patches?.get('occurredAt') ?? leaf.occurredAt);
    const isStated = atMs !== leaf.at;
    if (!isStated) clockMs = Math.max(clockMs, atMs);
    const one: Told = { seq, atMs, facts: factsOf(leaf, patches), streams: leaf.links.map(({ s }) => s) };
    return { placeMs: isStated ? atMs : clockMs, one };
  });
  return placed.sort((a, b) => a.placeMs - b.placeMs || a.one.seq - b.one.seq).map(({ one }) => one);
}
