import { correctionsIn, factsOf } from '../ledger/corrections.js';
/** The entries read as corrected, in the order (occurredAt, seq). */
export function told(kept) {
  const corrections = correctionsIn(kept);
  return kept
    .map(({ seq, hash, leaf }) => {
      const patches = corrections.get(hash);
      const atMs = Number(patches?.get('occurredAt') ?? leaf.occurredAt);
      return { seq, atMs, facts: factsOf(leaf, patches), streams: leaf.links.map(({ s }) => s) };
    })
    .sort((a, b) => a.atMs - b.atMs || a.seq - b.seq);
}
