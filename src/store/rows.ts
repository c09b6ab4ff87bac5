// What a batch writes, row by row: leaves, their places in streams, tree nodes, sealed values, things.
import type { Drafted } from '../ledger/decide.ts';
import type { Kept, Leaf } from '../ledger/leaf.ts';
import { entryType } from '../ledger/registry.ts';
import type { Thing } from '../ledger/thing.ts';
import { bytesOfBase64url, utf8 } from '../log/bytes.ts';
import type { MerkleNode } from '../log/merkle.ts';
import { wordsOf } from '../projections/find.ts';
import type { Value } from './connection.ts';
import { encrypt } from './crypto.ts';
import { type Keys, noKeys } from './keys.ts';
import { keptOf, sealedAbout } from './shelf.ts';
import type { Query, SqliteFile, Tx } from './sqlite.ts';

/** A leaf with its bytes and the tree nodes it completed. */
export interface Grown {
  readonly kept: Kept;
  readonly bytes: Uint8Array;
  readonly nodes: readonly MerkleNode[];
}

/** The 32 bytes of a leaf hash in base64url. */
export function hashOf(hash: string): Uint8Array {
  const bytes = bytesOfBase64url(hash);
  if (!bytes) throw new Error(`${hash} is no hash`);
  return bytes;
}

/** Writes leaves, links and nodes. */
export async function insertLeaves(tx: Tx, grown: readonly Grown[]): Promise<void> {
  const entries = grown.map(({ kept, bytes }) => [kept.seq, bytes, hashOf(kept.hash), kept.leaf.type, kept.leaf.at]);
  await insertMany(tx, 'entry (seq, leaf, leaf_hash, type, at)', entries);
  const links = grown.flatMap(({ kept }) => kept.leaf.links.map(({ s, n }) => [s, n, kept.seq]));
  await insertMany(tx, 'entry_link (stream, n, seq)', links);
  const nodes = grown.flatMap(({ nodes: completed }) => completed.map(({ level, index, hash }) => [level, index, hash]));
  await insertMany(tx, 'node (level, position, hash)', nodes);
}

/** Encrypts and writes what was kept out of the leaves; a new subject's key is committed to its own file first. */
export async function insertSealed(tx: Tx, keys: Keys, drafted: readonly Drafted[], random: (bytes: number) => Uint8Array): Promise<void> {
  const rows: Value[][] = [];
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
async function sealingSubject(tx: Tx, keys: Keys, kept: Kept): Promise<{ id: string; wrappedBy?: string }> {
  const target = await targetOf(tx.all, keys, kept.leaf);
  if (target) return sealingSubject(tx, keys, target);
  const [shop] = await tx.all("SELECT id FROM thing WHERE kind = 'shop'");
  const id = subjectIn(kept.leaf, shop?.id);
  const customer = id === kept.leaf.links[0].s ? named('customer', kept.leaf, kept.opened) : undefined;
  return customer === undefined ? { id } : { id, wrappedBy: String(customer) };
}

/** Whose key sealed what a leaf keeps out of itself, by the leaf alone; `shop` is the shop's stream. */
export async function subjectOf(read: Query, leaf: Leaf, shop: unknown): Promise<string> {
  const target = await targetOf(read, noKeys, leaf);
  return target ? subjectOf(read, target.leaf, shop) : subjectIn(leaf, shop);
}

function subjectIn(leaf: Leaf, shop: unknown): string {
  const stream = leaf.links[0].s;
  const person = named('customer', leaf, leaf.data) ?? named('person', leaf, leaf.data);
  return stream === shop && person !== undefined ? String(person) : stream;
}

async function targetOf(read: Query, keys: Pick<Keys, 'keyOf'>, leaf: Leaf): Promise<Kept | null> {
  const target = named('entry', leaf, leaf.data);
  if (target === undefined) return null;
  const [row] = await read('SELECT seq, leaf, leaf_hash FROM entry WHERE leaf_hash = ?', [hashOf(String(target))]);
  return row ? keptOf(read, keys, row) : null;
}

/** What a leaf's entry names or begins of that kind. */
const named = (kind: string, { type }: Leaf, from: Kept['opened']): unknown =>
  Object.entries(entryType(type).fields)
    .map(([name, { role, kinds }]) => (role !== 'tells' && kinds.some((one) => one === kind) ? from[name] : undefined))
    .find(Boolean);

/** For how long a form that is sent again is answered as it was, in ms; counted back from the newest command, for the clock may be wrong. */
export const COMMANDS_KEPT_MS = 30 * 24 * 60 * 60_000;

/** So many entries back no command is forgotten: one entry of a clock that was years ahead must not make those of a minute ago old. */
const ENTRIES_KEPT = 10_000;

/** Forgets the commands before the first of the last thirty days, but none of the last entries. */
export async function pruneCommands(file: SqliteFile, entriesKept = ENTRIES_KEPT): Promise<void> {
  const first = 'SELECT MIN(from_seq) FROM command WHERE at >= (SELECT MAX(at) FROM command) - ?';
  const sql = `DELETE FROM command WHERE from_seq < (${first}) AND from_seq < (SELECT MAX(from_seq) FROM command) - ?`;
  await file.write((tx) => tx.run(sql, [COMMANDS_KEPT_MS, entriesKept]));
}

/** A thing as its row holds it. */
export const columnsOf = (thing: Thing): readonly Value[] => [
  thing.id,
  thing.kind,
  thing.stream,
  thing.status ?? null,
  thing.stones ?? null,
  wordsOf(thing),
  JSON.stringify(thing),
];

/** Writes things as they now are. */
export async function saveThings(tx: Tx, things: Iterable<Thing>): Promise<void> {
  const upsert =
    'ON CONFLICT (id) DO UPDATE SET status = excluded.status, stones = excluded.stones, words = excluded.words, state = excluded.state';
  await insertMany(tx, 'thing (id, kind, stream, status, stones, words, state)', [...things].map(columnsOf), upsert);
}

/** One statement for many rows; few statements of different length, so that they stay prepared. */
export async function insertMany(tx: Tx, into: string, rows: readonly (readonly Value[])[], tail = ''): Promise<void> {
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
