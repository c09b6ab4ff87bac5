import { sumOf } from '../ledger/thing.js';
import { base64url, bytesOfBase64url } from '../log/bytes.js';
import { decrypt } from './crypto.js';
import { bytesOf } from './keys.js';
/** Looks up through `query`; values whose key was destroyed are absent. */
export function shelfOn(query, keys) {
  return {
    async thing(id) {
      const [row] = await query('SELECT state FROM thing WHERE id = ?', [id]);
      return row && thingOf(row);
    },
    async head(stream) {
      const sql = 'SELECT n, leaf_hash FROM entry_link JOIN entry USING (seq) WHERE stream = ? ORDER BY n DESC LIMIT 1';
      const [row] = await query(sql, [stream]);
      return row && { size: Number(row.n) + 1, hash: base64url(bytesOf(row.leaf_hash)) };
    },
    async entry(hash) {
      const bytes = bytesOfBase64url(hash);
      if (!bytes) return undefined;
      const [row] = await query('SELECT seq, leaf, leaf_hash FROM entry WHERE leaf_hash = ?', [bytes]);
      return row && keptOf(query, keys, row);
    },
    async leaves(stream) {
      const sql = 'SELECT seq, leaf, leaf_hash FROM entry_link JOIN entry USING (seq) WHERE stream = ? ORDER BY n';
      return keptAll(query, keys, await query(sql, [stream]));
    },
    openPieces: async () => (await query(OPEN_PIECES)).flatMap((row) => openPiece(thingOf(row), thingOf({ state: row.job }))),
  };
}
/** CROSS JOIN keeps the order: from the few open jobs to their pieces, never from all pieces to their jobs. */
const OPEN_PIECES = `SELECT piece.state, job.state AS job FROM thing AS job CROSS JOIN thing AS piece
  WHERE job.kind = 'job' AND job.status IN ('open', 'agreed', 'finished') AND piece.stream = job.id AND piece.kind = 'piece' ORDER BY piece.n`;
function openPiece({ gone, expected, stream }, { says }) {
  const sum = sumOf(expected);
  return gone || !('ng' in sum) || sum.ng <= 0 ? [] : [{ stream, name: `job ${says.bag}`, ng: sum.ng }];
}
const REMEMBERED_MAX = 20_000;
export const noMemory = () => ({ things: new Map(), heads: new Map() });
/** Forgets everything, so that the file is asked again. */
export function forget({ things, heads }) {
  things.clear();
  heads.clear();
}
/** Lays what was committed onto the memory. */
export function remember(memory, { things, heads }) {
  if (memory.things.size + memory.heads.size > REMEMBERED_MAX) forget(memory);
  for (const [id, thing] of things) memory.things.set(id, thing);
  for (const [stream, head] of heads) memory.heads.set(stream, head);
}
/** A shelf that asks the one below for each thing and head once. */
export const remembering = (below, { things, heads }) => ({
  ...below,
  thing: async (id) => things.get(id) ?? noted(things, id, await below.thing(id)),
  head: async (stream) => heads.get(stream) ?? noted(heads, stream, await below.head(stream)),
});
function noted(memory, id, found) {
  if (found !== undefined) memory.set(id, found);
  return found;
}
/** A thing from its row. */
export const thingOf = (row) => JSON.parse(String(row.state));
const decoder = new TextDecoder();
/** An entry from its row (seq, leaf, leaf_hash), with its sealed values opened. */
export async function keptOf(query, keys, row) {
  const kept = parsed(row);
  await openSealed(query, keys, [kept]);
  return kept;
}
/** The same of many entries, in their order: one statement for all that is sealed in them. */
export async function keptAll(query, keys, rows) {
  const all = rows.map(parsed);
  await openSealed(query, keys, all);
  return all;
}
const parsed = (row) => ({
  seq: Number(row.seq),
  hash: base64url(bytesOf(row.leaf_hash)),
  leaf: JSON.parse(decoder.decode(bytesOf(row.leaf))),
  opened: {},
});
const SEALED = 'SELECT seq, field, subject, iv, ciphertext FROM sealed WHERE seq IN (SELECT value FROM json_each(?))';
async function openSealed(query, keys, all) {
  const closed = new Map(all.filter(({ leaf }) => leaf.sealed).map((kept) => [kept.seq, kept]));
  if (closed.size === 0) return;
  for (const row of await query(SEALED, [JSON.stringify([...closed.keys()])])) {
    const kept = closed.get(Number(row.seq));
    const found = kept && (await openOne(keys, kept.leaf.log, kept.seq, row));
    if (found) kept.opened[String(row.field)] = found.value;
  }
}
/** The salt and value of a row of `sealed`, or null once its key is destroyed. */
export async function openOne(keys, log, seq, row) {
  const key = await keys.keyOf(String(row.subject));
  const plain = key && decrypt(key, bytesOf(row.iv), bytesOf(row.ciphertext), sealedAbout(log, seq, String(row.field)));
  if (!plain) return null;
  const [salt, value] = JSON.parse(decoder.decode(plain));
  return { salt, value };
}
/** What a sealed value's ciphertext is bound to, so that two cannot be swapped. */
export const sealedAbout = (log, seq, field) => `${log}|${seq}|${field}`;
