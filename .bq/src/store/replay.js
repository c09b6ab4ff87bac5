// Leaves → things again: rebuild and import apply every leaf in order, through the same `applyLeaf` as live writing.
import { applyLeaf } from '../ledger/apply.js';
import { overlayOn } from '../ledger/overlay.js';
import { saveThings } from './rows.js';
import { keptAll, shelfOn } from './shelf.js';
import { turnOfTheLoop } from './sqlite.js';

const CHUNK = 200;
/** Applies leaves that follow those applied so far; what is looked up of a stream stops before `from`. */
export async function applyChunk(tx, keys, from, chunk) {
  const shelf = shelfOn(tx.all, keys);
  const overlay = overlayOn({ ...shelf, leaves: async (stream) => (await shelf.leaves(stream)).filter(({ seq }) => seq < from) });
  for (const kept of chunk) await applyLeaf(overlay, kept);
  await saveThings(tx, overlay.things.values());
}
/** Folds every thing anew from the leaves, in one transaction; answers how many leaves were read. */
export async function rebuild(file, keys, progress = () => undefined) {
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
