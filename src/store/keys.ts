// Keys of sealed values: one per customer and member of staff, one per job wrapped by its customer's. Destroying a key is erasure.
import { decrypt, encrypt } from './crypto.ts';
import type { SqliteFile } from './sqlite.ts';

export interface Keys {
  /** The subject's key, made (and committed) if it has none; a job's new key is wrapped by its customer's. */
  keyFor(subject: string, wrappedBy?: string): Promise<Uint8Array>;
  /** The subject's key, or null once it has been destroyed. */
  keyOf(subject: string): Promise<Uint8Array | null>;
  /** Destroys the subject's key and those it wraps, for good: neither the file nor its write-ahead log holds them after. */
  destroy(subject: string): Promise<void>;
}
/** Nothing can be opened. */
export const noKeys: Pick<Keys, 'keyOf'> = { keyOf: async () => null };

/** Keys in their own file (opened with secure_delete), remembered in memory while the program runs. */
export function openKeys(file: SqliteFile, random: (bytes: number) => Uint8Array): Keys {
  const known = new Map<string, Uint8Array>();

  async function keyOf(subject: string): Promise<Uint8Array | null> {
    const remembered = known.get(subject);
    if (remembered) return remembered;
    const [row] = await file.read('SELECT wrapped_by, iv, key FROM subject_key WHERE subject = ?', [subject]);
    if (!row) return null;
    const key =
      row.wrapped_by === null ? bytesOf(row.key) : await unwrap(String(row.wrapped_by), bytesOf(row.iv), bytesOf(row.key), subject);
    if (key) known.set(subject, key);
    return key;
  }

  async function unwrap(by: string, iv: Uint8Array, wrapped: Uint8Array, subject: string): Promise<Uint8Array | null> {
    const outer = await keyOf(by);
    return outer && decrypt(outer, iv, wrapped, subject);
  }

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

  return { keyOf, destroy, keyFor: async (subject, wrappedBy) => (await keyOf(subject)) ?? make(subject, wrappedBy) };
}

/** BLOBs come back as ArrayBuffer. */
export const bytesOf = (value: unknown): Uint8Array => new Uint8Array(value as ArrayBuffer);
