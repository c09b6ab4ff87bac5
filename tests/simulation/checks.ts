// What must hold of the record after every step, whoever looks: nothing acknowledged lost, mass conserved, live as rebuilt, the roots equal.
import { expect } from 'vitest';
import { applyLeaf } from '../../src/ledger/apply.ts';
import type { Kept } from '../../src/ledger/leaf.ts';
import { overlayOn } from '../../src/ledger/overlay.ts';
import { verifyLog } from '../../src/log/verify.ts';
import { bytesOf } from '../../src/store/keys.ts';
import { keptAll, thingOf } from '../../src/store/shelf.ts';
import { doubleEntry } from '../invariants/double-entry.ts';
import { sha256, toHex } from '../log/crypto.ts';
import { treeHash } from '../log/trees.ts';
import type { BadDay } from './bad-day.ts';

/** Checks the record and answers its entries in order. */
export async function checkRecord({ store, acknowledged }: BadDay): Promise<readonly Kept[]> {
  const rows = await store.read('SELECT seq, leaf, leaf_hash FROM entry ORDER BY seq');
  const kept = await keptAll(store.read, store.keys, rows);
  const bytes = rows.map(({ leaf }) => bytesOf(leaf));
  const { size, root } = await store.issueCheckpoint();
  expect([size, toHex(root)]).toEqual([kept.length, toHex(treeHash(bytes))]);
  expect(verifyLog(sha256, store.log, [{ origin: store.log, size, root }], bytes)).toMatchObject({ size });
  for (const [id, { from, size: count }] of acknowledged) {
    const found = kept.filter(({ leaf }) => leaf.command === id).map(({ seq }) => seq);
    expect(found, `command ${id}`).toEqual(Array.from({ length: count }, (_, i) => from + i));
  }
  const live = (await store.read('SELECT state FROM thing ORDER BY n')).map(thingOf);
  const none = async () => undefined;
  const again = overlayOn({ thing: none, head: none, entry: none, leaves: async () => [], openPieces: async () => [] });
  for (const one of kept) await applyLeaf(again, one);
  expect(Object.fromEntries(live.map((thing) => [thing.id, thing]))).toEqual(Object.fromEntries(again.things));
  const sums = doubleEntry(kept);
  expect(live.filter(({ id, posted }) => posted.ng !== (sums.get(id) ?? 0))).toEqual([]);
  expect(live.reduce((sum, { posted }) => sum + posted.ng, 0) + (sums.get('outside') ?? 0)).toBe(0);
  return kept;
}
