// Leaves → things again: rebuild and import apply every leaf in order, through the same `applyLeaf` as live writing.
import { applyLeaf } from '../ledger/apply.ts';
import type { Kept } from '../ledger/leaf.ts';
import { overlayOn } from '../ledger/overlay.ts';
import type { Keys } from './keys.ts';
import { saveThings } from './rows.ts';
import { keptAll, shelfOn } from './shelf.ts';
import { type SqliteFile, type Tx, turnOfTheLoop } from './sqlite.ts';

const CHUNK = 200;

/** Applies leaves that follow those applied so far; what is looked up of a stream stops before `from`. */
export async function applyChunk(tx: Tx, keys: Keys, from: number, chunk: readonly Kept[]): Promise<void> {
  const shelf = shelfOn(tx.all, keys);
  const overlay = overlayOn({ ...shelf, leaves: async (stream) => (await shelf.leaves(stream)).filter(({ seq }) => seq < from) });
  for (const kept of chunk) await applyLeaf(overlay, kept);
  await saveThings(tx, overlay.things.values());
}

/** Folds every thing anew from the leaves, in one transaction; answers how many leaves were read. */
export async function rebuild(file: SqliteFile, keys: Keys, progress: (done: number) => void = () => undefined): Promise<number> {
  return file.write(async (tx) => {
    await tx.run('DELETE FROM thing');
    for (let from = 0; ; from += CHUNK) {
      const rows = await tx.all('SELECT seq, leaf, leaf_hash FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', [from, CHUNK]);
      const chunk = await keptAll(tx.all, keys, rows);
      await applyChunk(tx, keys, from, chunk);
      progress(from + chunk.length);
      await turnOfTheLoop();
      if (chunk.length < CHUNK) return from + chunk.length;
    }
  });
}
