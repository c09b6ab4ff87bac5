// What a letter carries so that it can be checked, read from the ledger as it stands and proved within a checkpoint that is issued now.
import { checkDataFrom, isForCustomer, loggedFrom, nodesForCheck } from '../../letter/check-data.js';
import { formatVerifierKey } from '../../log/note.js';
import { leavesWithin, sealedIn } from '../../queries/entries.js';
import { sha256 } from '../../store/crypto.js';
import { openOne } from '../../store/shelf.js';
import { readNodes } from '../../store/tree.js';
/** Reads the leaves of a job and proves each within the newest checkpoint, which is issued now. Throws ReadOnly where nothing may be signed. */
export async function checkDataOf(web, job) {
  const { store } = web;
  const { size, note } = await store.issueCheckpoint();
  const entries = (await leavesWithin(store, job, size)).map(loggedFrom);
  const signed = { origin: store.log, key: formatVerifierKey(store.logKey), checkpoint: note, size, stream: job };
  const node = await readNodes(store.read, nodesForCheck({ entries, size }));
  return checkDataFrom({ ...signed, entries, opened: await openedFor(web, entries) }, node, sha256);
}
/** Opens what is sealed for the customer to read; the rest stays sealed. */
async function openedFor({ store }, entries) {
  const opened = [];
  const closed = new Map(entries.flatMap(({ seq, leaf }) => (leaf.sealed ? [[seq, leaf]] : [])));
  for (const row of await sealedIn(store, [...closed.keys()])) {
    const { seq, field } = row;
    const leaf = closed.get(seq);
    const one = leaf && isForCustomer(leaf, field) ? await openOne(store.keys, leaf.log, seq, row) : null;
    if (one) opened.push({ seq, field, ...one });
  }
  return opened;
}
