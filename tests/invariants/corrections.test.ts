// fold(log + correction) = fold(log with that entry patched), whatever was written before and after the correction.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { applyLeaf } from '../../src/ledger/apply.ts';
import type { Kept, Leaf } from '../../src/ledger/leaf.ts';
import { overlayOn } from '../../src/ledger/overlay.ts';
import { histories, played } from '../histories.ts';

/** The log as if every corrected entry had said so from the first, and nothing had been corrected: found in plain loops over the raw leaves. */
function patched(leaves: readonly Kept[]): readonly Kept[] {
  const said: Record<string, Record<string, unknown>> = {};
  for (const { hash, leaf } of leaves) said[hash] = { ...leaf.data };
  for (const { leaf } of leaves) {
    if (leaf.type !== 'corrected') continue;
    const target = said[String(leaf.data.target)];
    if (!target) throw new Error('a correction of an entry that is not there');
    const field = String(leaf.data.field);
    if ('is' in leaf.data) target[field] = leaf.data.is;
    else delete target[field];
  }
  const first = leaves.filter(({ leaf }) => leaf.type !== 'corrected');
  return first.map((kept) => ({ ...kept, leaf: { ...kept.leaf, data: said[kept.hash] as Leaf['data'] } }));
}

/**
 * What each piece still here is called and how many stones are in it, counted in plain loops over those leaves: no fold of ours, and no fact.
 */
function receivedIn(leaves: readonly Kept[]): ReadonlyMap<string, { readonly description: string; readonly stones: number }> {
  const pieces = new Map<string, { description: string; stones: number }>();
  for (const { leaf } of leaves) {
    if (leaf.type !== 'piece_received') continue;
    pieces.set(String(leaf.data.piece), { description: String(leaf.data.description), stones: Number(leaf.data.stones) });
  }
  for (const { leaf } of leaves) {
    const { piece, stones } = leaf.data;
    const held = pieces.get(String(piece));
    if (!held) continue;
    if (leaf.type === 'stone_unset') held.stones -= Number(stones);
    if (leaf.type === 'stone_set') held.stones += Number(stones);
    if (leaf.type === 'piece_returned' || leaf.type === 'returned_with_exception') pieces.delete(String(piece));
  }
  return pieces;
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
      for (const [id, { description, stones }] of receivedIn(patched(overlay.written))) {
        const { says, stones: held } = overlay.things.get(id) ?? {};
        expect({ description: says?.description, stones: held }).toEqual({ description, stones });
      }
    }),
    { numRuns: 80, seed: 3 },
  );
  expect(corrected).toBeGreaterThan(50);
});
