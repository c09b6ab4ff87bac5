// Keys of sealed values: one per customer and member of staff, one per job wrapped by its customer's. Destroying a key is erasure.

import type { Value } from './connection.ts';
import { decrypt, encrypt } from './crypto.ts';
import type { Query, SqliteFile } from './sqlite.ts';

export interface Keys extends KeysRead {
  /** The subject's key, made (and committed) if it has none; a job's new key is wrapped by its customer's. */
  keyFor(subject: string, wrappedBy?: string): Promise<Uint8Array>;
  /** The keys of many who are wrapped by nobody, in one reading and not remembered. */
  keysOf(subjects: readonly string[]): Promise<ReadonlyMap<string, Uint8Array>>;
  /** Whose key wraps the subject's, as a list of one; of none where nobody's does. */
  wrappingOf(subject: string): Promise<readonly Wrapped[]>;
  /** Wrapped subjects after this one in the order of their names, each with whose key wraps theirs. */
  wrappedAfter(subject: string, limit: number): Promise<readonly Wrapped[]>;
  /** Destroys the subject's key and those it wraps, for good: neither the file nor its write-ahead log holds them after. */
  destroy(subject: string): Promise<void>;
}
export type Wrapped = readonly [subject: string, by: string];
/** So many keys are remembered: more than any hour needs. */
const KNOWN_MAX = 5000;
/** Nothing can be opened. */
export const noKeys: KeysRead = { keyOf: async () => null, holds: async () => false };
/** Keys as they are looked up. */
export interface KeysRead {
  /** The subject's key, or null once it has been destroyed. */
  keyOf(subject: string): Promise<Uint8Array | null>;
  /** Whether the key should open something: it is there, and the one that wraps it too. */
  holds(subject: string): Promise<boolean>;
}

/** Looks keys up, and keeps in `known` those that were found. */
export function keysOn(read: Query, known: Map<string, Uint8Array> = new Map()): KeysRead {
  async function keyOf(subject: string): Promise<Uint8Array | null> {
    const remembered = known.get(subject);
    if (remembered) return remembered;
    const [row] = await read('SELECT wrapped_by, iv, key FROM subject_key WHERE subject = ?', [subject]);
    if (!row) return null;
    const outer = row.wrapped_by === null ? null : await keyOf(String(row.wrapped_by));
    const key = row.wrapped_by === null ? bytesOf(row.key) : outer && decrypt(outer, bytesOf(row.iv), bytesOf(row.key), subject);
    if (known.size >= KNOWN_MAX) known.clear();
    if (key) known.set(subject, key);
    return key;
  }

  async function holds(subject: string): Promise<boolean> {
    const [row] = await read('SELECT wrapped_by FROM subject_key WHERE subject = ?', [subject]);
    return row !== undefined && (row.wrapped_by === null || holds(String(row.wrapped_by)));
  }
  return { keyOf, holds };
}

/** Keys in their own file (opened with secure_delete), remembered in memory while the program runs. */
export function openKeys(file: SqliteFile, random: (bytes: number) => Uint8Array): Keys {
  const known = new Map<string, Uint8Array>();
  const { keyOf, holds } = keysOn(file.read, known);

  async function make(subject: string, wrappedBy: string | undefined): Promise<Uint8Array> {
    const key = random(32);
    const outer = wrappedBy === undefined ? null : await keyOf(wrappedBy);
    if (wrappedBy !== undefined && !outer) throw new Error(`the key of ${wrappedBy} is gone: nothing can be sealed under it`);
    const iv = outer && random(12);
    const stored = outer && iv ? encrypt(outer, iv, key, subject) : key;
    await file.write((tx) =>
      tx.run('INSERT INTO subject_key (subject, wrapped_by, iv, key) VALUES (?, ?, ?, ?)', [subject, wrappedBy ?? null, iv, stored]),
    );
    known.set(subject, key);
    return key;
  }

  async function destroy(subject: string): Promise<void> {
    await file.write((tx) => tx.run('DELETE FROM subject_key WHERE subject = ? OR wrapped_by = ?', [subject, subject]));
    await file.emptyWal();
    known.clear();
  }

  const keyFor: Keys['keyFor'] = async (subject, wrappedBy) => (await keyOf(subject)) ?? make(subject, wrappedBy);
  return { ...manyIn(file), keyOf, holds, keyFor, destroy };
}

function manyIn({ read }: SqliteFile): Pick<Keys, 'keysOf' | 'wrappingOf' | 'wrappedAfter'> {
  const wrapped = async (where: string, args: readonly Value[]): Promise<readonly Wrapped[]> =>
    (await read(`SELECT subject, wrapped_by FROM subject_key WHERE wrapped_by IS NOT NULL AND ${where}`, args)).map((row) => [
      String(row.subject),
      String(row.wrapped_by),
    ]);
  return {
    wrappingOf: (subject) => wrapped('subject = ?', [subject]),
    wrappedAfter: (subject, limit) => wrapped('subject > ? ORDER BY subject LIMIT ?', [subject, limit]),
    async keysOf(subjects) {
      const sql = 'SELECT subject, key FROM subject_key WHERE subject IN (SELECT value FROM json_each(?)) AND wrapped_by IS NULL';
      const rows = await read(sql, [JSON.stringify([...new Set(subjects)])]);
      return new Map(rows.map(({ subject, key }) => [String(subject), bytesOf(key)]));
    },
  };
}

/** BLOBs come back as ArrayBuffer. */
export const bytesOf = (value: unknown): Uint8Array => new Uint8Array(value as ArrayBuffer);
