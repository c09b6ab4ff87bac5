// fold(log + correction) = fold(log with that entry patched), whatever was written before and after the correction.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyLeaf } from '../../src/ledger/apply.ts';
import { correctionsIn } from '../../src/ledger/corrections.ts';
import type { Kept, Leaf } from '../../src/ledger/leaf.ts';
import { overlayOn } from '../../src/ledger/overlay.ts';
import { histories, played } from '../histories.ts';

/** The log as if every corrected entry had said so from the first, and nothing had been corrected. */
function patched(leaves: readonly Kept[]): readonly Kept[] {
  const corrections = correctionsIn(leaves);
  return leaves
    .filter(({ leaf }) => leaf.type !== 'corrected')
    .map((kept) => {
      const data: Record<string, unknown> = { ...kept.leaf.data };
      for (const [field, is] of corrections.get(kept.hash) ?? []) {
        if (is === undefined) delete data[field];
        else data[field] = is;
      }
      return { ...kept, leaf: { ...kept.leaf, data: data as Leaf['data'] } };
    });
}

it('things are what they would be had the corrected entries been right at once', { timeout: 60_000 }, async () => {
  let corrected = 0;
  await fc.assert(
    fc.asyncProperty(histories(45), async (history) => {
      const { overlay } = await played(history);
      const none = async () => undefined;
      const again = overlayOn({ thing: none, head: none, entry: none, leaves: async () => [], openPieces: async () => [] });
      for (const kept of patched(overlay.written)) await applyLeaf(again, kept);
      corrected += overlay.written.filter(({ leaf }) => leaf.type === 'corrected').length;
      expect(Object.fromEntries(overlay.things)).toEqual(Object.fromEntries(again.things));
    }),
    { numRuns: 80, seed: 3 },
  );
  expect(corrected).toBeGreaterThan(50);
});
