import { entryType } from '../ledger/registry.js';
import { bytesOfBase64url, utf8 } from '../log/bytes.js';
import { wordsOf } from '../projections/find.js';
import { encrypt } from './crypto.js';
import { keptOf, sealedAbout } from './shelf.js';
/** The 32 bytes of a leaf hash in base64url. */
export function hashOf(hash) {
  const bytes = bytesOfBase64url(hash);
  if (!bytes) throw new Error(`${hash} is no hash`);
  return bytes;
}
/** Writes leaves, links and nodes. */
export async function insertLeaves(tx, grown) {
  const entries = grown.map(({ kept, bytes }) => [kept.seq, bytes, hashOf(kept.hash), kept.leaf.type, kept.leaf.at]);
  await insertMany(tx, 'entry (seq, leaf, leaf_hash, type, at)', entries);
  const links = grown.flatMap(({ kept }) => kept.leaf.links.map(({ s, n }) => [s, n, kept.seq]));
  await insertMany(tx, 'entry_link (stream, n, seq)', links);
  const nodes = grown.flatMap(({ nodes: completed }) => completed.map(({ level, index, hash }) => [level, index, hash]));
  await insertMany(tx, 'node (level, position, hash)', nodes);
}
/** Encrypts and writes what was kept out of the leaves; a new subject's key is committed to its own file first. */
export async function insertSealed(tx, keys, drafted, random) {
  const rows = [];
  for (const { kept, sealed } of drafted) {
    if (sealed.length === 0) continue;
    const subject = await sealingSubject(tx, keys, kept);
    const key = await keys.keyFor(subject.id, subject.wrappedBy);
    for (const { field, salt, value } of sealed) {
      const iv = random(12);
      const plain = utf8(JSON.stringify([salt, value]));
      rows.push([kept.seq, field, subject.id, iv, encrypt(key, iv, plain, sealedAbout(kept.leaf.log, kept.seq, field))]);
    }
  }
  await insertMany(tx, 'sealed (seq, field, subject, iv, ciphertext)', rows);
}
/**
 * Whose key seals an entry: in the shop's stream the customer's or person's it is about; in any other the stream's own, a job's
 * wrapped by its customer's; a correction is sealed as its target is.
 */
async function sealingSubject(tx, keys, { leaf, opened }) {
  const fields = Object.entries(entryType(leaf.type).fields);
  const named = (kind, from) =>
    fields.map(([name, { role, kinds }]) => (role !== 'tells' && kinds.some((one) => one === kind) ? from[name] : undefined)).find(Boolean);
  const target = named('entry', leaf.data);
  if (target !== undefined) {
    const [row] = await tx.all('SELECT seq, leaf, leaf_hash FROM entry WHERE leaf_hash = ?', [hashOf(String(target))]);
    if (row) return sealingSubject(tx, keys, await keptOf(tx.all, keys, row));
  }
  const stream = leaf.links[0].s;
  const person = named('customer', leaf.data) ?? named('person', leaf.data);
  const [inShop] = await tx.all("SELECT 1 FROM thing WHERE id = ? AND kind = 'shop'", [stream]);
  if (inShop && person !== undefined) return { id: String(person) };
  const customer = named('customer', opened);
  return customer === undefined ? { id: stream } : { id: stream, wrappedBy: String(customer) };
}
/** A thing as its row holds it. */
export const columnsOf = (thing) => [
  thing.id,
  thing.kind,
  thing.stream,
  thing.status ?? null,
  thing.stones ?? null,
  wordsOf(thing),
  JSON.stringify(thing),
];
/** Writes things as they now are. */
export async function saveThings(tx, things) {
  const upsert =
    'ON CONFLICT (id) DO UPDATE SET status = excluded.status, stones = excluded.stones, words = excluded.words, state = excluded.state';
  await insertMany(tx, 'thing (id, kind, stream, status, stones, words, state)', [...things].map(columnsOf), upsert);
}
/** One statement for many rows; few statements of different length, so that they stay prepared. */
export async function insertMany(tx, into, rows, tail = '') {
  for (let at = 0; at < rows.length; ) {
    const count = rows.length - at >= ROWS_TOGETHER ? ROWS_TOGETHER : Math.min(rows.length - at, ROWS_ALONE);
    const some = rows.slice(at, at + count);
    const marks = some.map((row) => `(${Array(row.length).fill('?').join(', ')})`).join(', ');
    await tx.run(`INSERT INTO ${into} VALUES ${marks} ${tail}`, some.flat());
    at += count;
  }
}
const ROWS_TOGETHER = 64;
const ROWS_ALONE = 8;
