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

/** The entries read as corrected, in the order (occurredAt, seq). */
export function told(kept: readonly Kept[]): readonly Told[] {
  const corrections = correctionsIn(kept);
  return kept
    .map(({ seq, hash, leaf }): Told => {
      const patches = corrections.get(hash);
      const atMs = Number(patches?.get('occurredAt') ?? leaf.occurredAt);
      return { seq, atMs, facts: factsOf(leaf, patches), streams: leaf.links.map(({ s }) => s) };
    })
    .sort((a, b) => a.atMs - b.atMs || a.seq - b.seq);
}
