// The ledger's look-ups over a libSQL file: things, heads of streams, entries with their sealed values opened.
import type { Kept, Leaf } from '../ledger/leaf.ts';
import type { Head, Shelf } from '../ledger/overlay.ts';
import type { Thing } from '../ledger/thing.ts';
import { base64url, bytesOfBase64url } from '../log/bytes.ts';
import { decrypt } from './crypto.ts';
import { bytesOf, type Keys } from './keys.ts';
import type { Tx } from './sqlite.ts';

/** A query: the writer's own transaction, or the reader. */
export type Query = Tx['all'];
/** A row by its columns: of the engine, or of a typed query. */
type Row = { readonly [column: string]: unknown };

/** Looks up through `query`; values whose key was destroyed are absent. */
export function shelfOn(query: Query, keys: Keys): Shelf {
  return {
    async thing(id) {
      const [row] = await query('SELECT state FROM thing WHERE id = ?', [id]);
      return row && thingOf(row);
    },
    async head(stream): Promise<Head | undefined> {
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
      return Promise.all((await query(sql, [stream])).map((row) => keptOf(query, keys, row)));
    },
  };
}

/** A thing from its row. */
export const thingOf = (row: Row): Thing => JSON.parse(String(row.state)) as Thing;

const decoder = new TextDecoder();

/** An entry from its row (seq, leaf, leaf_hash), with its sealed values opened. */
export async function keptOf(query: Query, keys: Keys, row: Row): Promise<Kept> {
  const leaf = JSON.parse(decoder.decode(bytesOf(row.leaf))) as Leaf;
  const opened = leaf.sealed ? await openSealed(query, keys, leaf) : {};
  return { seq: Number(row.seq), hash: base64url(bytesOf(row.leaf_hash)), leaf, opened };
}

async function openSealed(query: Query, keys: Keys, leaf: Leaf): Promise<Kept['opened']> {
  const opened: Record<string, unknown> = {};
  for (const row of await query('SELECT field, subject, iv, ciphertext FROM sealed WHERE seq = ?', [leaf.seq])) {
    const found = await openOne(keys, leaf.log, leaf.seq, row);
    if (found) opened[String(row.field)] = found.value;
  }
  return opened;
}

/** The salt and value of a row of `sealed`, or null once its key is destroyed. */
export async function openOne(keys: Keys, log: string, seq: number, row: Row): Promise<{ salt: string; value: unknown } | null> {
  const key = await keys.keyOf(String(row.subject));
  const plain = key && decrypt(key, bytesOf(row.iv), bytesOf(row.ciphertext), sealedAbout(log, seq, String(row.field)));
  if (!plain) return null;
  const [salt, value] = JSON.parse(decoder.decode(plain)) as [string, unknown];
  return { salt, value };
}

/** What a sealed value's ciphertext is bound to, so that two cannot be swapped. */
export const sealedAbout = (log: string, seq: number, field: string): string => `${log}|${seq}|${field}`;
