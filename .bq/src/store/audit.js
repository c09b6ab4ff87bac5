// Is the record whole and unaltered? Hashes bytes first, parses after, and names the first bad place.
import { applyLeaf } from '../ledger/apply.js';
import { overlayOn } from '../ledger/overlay.js';
import { base64url, equal, utf8 } from '../log/bytes.js';
import { formatCheckpoint } from '../log/checkpoint.js';
import { append, EMPTY_FRONTIER, leafHash, rootOf } from '../log/merkle.js';
import { parseVerifierKey } from '../log/note.js';
import { beginVerification } from '../log/verify.js';
import { sha256, verifySignature } from './crypto.js';
import { bytesOf, noKeys } from './keys.js';
import { columnsOf } from './rows.js';
import { shelfOn } from './shelf.js';
import { turnOfTheLoop } from './sqlite.js';

const CHUNK = 200;
const bad = (seq, code, say) => ({ bad: { seq, code, say } });
/** Checks every leaf, the columns beside it, its streams, every stored node, every signature, and that the things fold from it. */
export async function auditLog(of, progress = () => undefined) {
  const keys = await signingKeys(of);
  if ('bad' in keys) return keys;
  const { noted } = of;
  const verification = beginVerification(sha256, of.log, []);
  const shelf = shelfOn(of.read, noKeys);
  let frontier = EMPTY_FRONTIER;
  const none = async () => undefined;
  let start = 0;
  const before = async (stream) => (await shelf.leaves(stream)).filter(({ seq }) => seq < start);
  const overlay = overlayOn({ thing: none, head: none, entry: none, openPieces: async () => [], leaves: before });
  const seen = { links: 0, nodes: 0, signatures: 0 };
  for (;;) {
    const rows = await of.read('SELECT seq, leaf, leaf_hash, type, at FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', [start, CHUNK]);
    const signed = await signaturesBetween(of.read, noted, start, start + CHUNK);
    const chunk = [];
    for (const row of rows) {
      const fault = verification.take(bytesOf(row.leaf));
      if (fault) return bad(fault.seq, fault.code, fault.words);
      const checked = checkRow(row, frontier);
      if ('bad' in checked) return checked;
      frontier = checked.after;
      const forged = signed.filter(({ size }) => size === frontier.size).find((one) => !isSigned(one, of.log, keys, frontier));
      if (forged) return bad(checked.leaf.seq, 'signature', `The signature over the first ${frontier.size} entries does not fit them.`);
      await applyLeaf(overlay, { seq: checked.leaf.seq, hash: checked.hash, leaf: checked.leaf, opened: {} });
      chunk.push(checked);
    }
    const misplaced = (await linkTrouble(of.read, chunk, seen)) ?? (await nodeTrouble(of.read, chunk, seen));
    if (misplaced) return misplaced;
    seen.signatures += signed.filter(({ size }) => size <= frontier.size).length;
    overlay.written.length = 0;
    start = frontier.size;
    progress(frontier.size);
    await turnOfTheLoop();
    if (rows.length < CHUNK) break;
  }
  const end = verification.finish();
  if ('code' in end) return bad(end.seq, end.code, end.words);
  return (
    (await endTrouble(of.read, noted, frontier.size, seen)) ??
    (await foldTrouble(of.read, overlay.things)) ?? { ...end, signatures: seen.signatures }
  );
}
function checkRow(row, frontier) {
  const bytes = bytesOf(row.leaf);
  const hash = leafHash(sha256, bytes);
  const leaf = JSON.parse(new TextDecoder().decode(bytes));
  const beside = row.seq === leaf.seq && row.type === leaf.type && row.at === leaf.at && equal(bytesOf(row.leaf_hash), hash);
  if (!beside) return bad(leaf.seq, 'columns', `Entry ${leaf.seq}: the columns beside it do not say what it says.`);
  const grown = append(sha256, frontier, hash);
  return { leaf, hash: base64url(hash), nodes: grown.completed, after: grown.frontier };
}
async function signingKeys({ read, vkey }) {
  const keys = [];
  const rows = await read('SELECT from_size, vkey FROM signing_key ORDER BY from_size');
  for (const row of rows) {
    const key = parseVerifierKey(sha256, String(row.vkey), 1);
    if ('refused' in key) return bad(null, 'signing_key', `The key of the ledger cannot be read: ${key.say}`);
    keys.push({ from: Number(row.from_size), publicKey: key.publicKey });
  }
  const newest = rows.at(-1);
  if (!newest || vkey === undefined || newest.vkey === vkey) return keys;
  return bad(null, 'signing_key', 'The ledger names another key than the one this shop signs with.');
}
/** The checkpoints after `from` up to `to`: those in the database and those in the memory outside it. */
async function signaturesBetween(read, noted, from, to) {
  const rows = await read('SELECT size, signature FROM checkpoint WHERE size > ? AND size <= ?', [from, to]);
  const stored = rows.map((row) => ({ size: Number(row.size), signature: bytesOf(row.signature) }));
  return [...stored, ...noted.filter(({ size }) => size > from && size <= to)];
}
/** Whether the key in force at its size signed this tree; a ledger without its key is signed by nobody. */
function isSigned({ size, signature }, origin, keys, frontier) {
  const key = keys.filter(({ from }) => from < size).at(-1);
  const text = formatCheckpoint({ origin, size, root: rootOf(sha256, frontier) });
  return key !== undefined && verifySignature(key.publicKey, utf8(text), signature);
}
async function linkTrouble(read, chunk, seen) {
  const links = chunk.flatMap(({ leaf }) => leaf.links.map(({ s, n }) => ({ s, n, seq: leaf.seq })));
  const sql =
    'SELECT key AS i, seq FROM json_each(?) AS said JOIN entry_link ON stream = said.value ->> 0 AND n = said.value ->> 1 ORDER BY key';
  const found = new Map((await read(sql, [JSON.stringify(links.map(({ s, n }) => [s, n]))])).map(({ i, seq }) => [i, seq]));
  seen.links += links.length;
  const wrong = links.find(({ seq }, index) => found.get(index) !== seq);
  return wrong ? bad(wrong.seq, 'links', `Entry ${wrong.seq}: the places of its streams were changed beside it.`) : null;
}
async function nodeTrouble(read, chunk, seen) {
  const nodes = chunk.flatMap(({ leaf, nodes: completed }) => completed.map((node) => ({ ...node, seq: leaf.seq })));
  const sql =
    'SELECT key AS i, hash FROM json_each(?) AS said JOIN node ON level = said.value ->> 0 AND position = said.value ->> 1 ORDER BY key';
  const rows = await read(sql, [JSON.stringify(nodes.map(({ level, index }) => [level, index]))]);
  const found = new Map(rows.map(({ i, hash }) => [i, bytesOf(hash)]));
  seen.nodes += nodes.length;
  const wrong = nodes.find(({ hash }, index) => !equal(found.get(index) ?? new Uint8Array(), hash));
  if (!wrong) return null;
  return bad(wrong.seq, 'node', `The tree's node at level ${wrong.level}, position ${wrong.index} is not the one that was written.`);
}
/** What the leaves cannot show by themselves: rows too many, an end without its signature, an end that was signed and is not here. */
async function endTrouble(read, noted, size, seen) {
  const [row] = await read(
    'SELECT (SELECT COUNT(*) FROM entry_link) AS links, (SELECT COUNT(*) FROM node) AS nodes, (SELECT COALESCE(MAX(size), 0) FROM checkpoint) AS signed',
  );
  const signed = Math.max(Number(row?.signed), ...noted.map((one) => one.size));
  if (signed > size) return bad(size, 'truncated', `${signed} entries were signed and ${size} are here: the last ones were cut off.`);
  if (Number(row?.links) !== seen.links) return bad(null, 'links', 'There are places in streams that belong to no entry.');
  if (Number(row?.nodes) !== seen.nodes) return bad(null, 'node', 'The tree has nodes that no entries lead to.');
  return Number(row?.signed) === size ? null : bad(size - 1, 'unsigned', `The last entries of ${size} are not signed.`);
}
/** Compares the things on the screens with those folded anew, column by column. */
async function foldTrouble(read, folded) {
  let count = 0;
  for (let after = 0; ; ) {
    const rows = await read('SELECT n, id, kind, stream, status, stones, words, state FROM thing WHERE n > ? ORDER BY n LIMIT ?', [
      after,
      CHUNK,
    ]);
    for (const row of rows) {
      const thing = folded.get(String(row.id));
      const { id, kind, stream, status, stones, words, state } = row;
      if (!thing || JSON.stringify([id, kind, stream, status, stones, words, state]) !== JSON.stringify(columnsOf(thing))) {
        return bad(null, 'fold', `What the screens show of ${id} does not follow from the entries. Run: lemel rebuild.`);
      }
    }
    count += rows.length;
    after = Number(rows.at(-1)?.n ?? after);
    if (rows.length < CHUNK) break;
  }
  return count === folded.size ? null : bad(null, 'fold', 'Something the entries tell of is not on the screens. Run: lemel rebuild.');
}
