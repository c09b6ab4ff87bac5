// Keys of sealed values: one per customer and member of staff, one per job wrapped by its customer's. Destroying a key is erasure.
import { decrypt, encrypt } from './crypto.js';

/** So many keys are remembered: more than any hour needs. */
const KNOWN_MAX = 5000;
/** Nothing can be opened. */
export const noKeys = { keyOf: async () => null };
/** Keys in their own file (opened with secure_delete), remembered in memory while the program runs. */
export function openKeys(file, random) {
  const known = new Map();
  async function keyOf(subject) {
    const remembered = known.get(subject);
    if (remembered) return remembered;
    const [row] = await file.read('SELECT wrapped_by, iv, key FROM subject_key WHERE subject = ?', [subject]);
    if (!row) return null;
    const outer = row.wrapped_by === null ? null : await keyOf(String(row.wrapped_by));
    const key = row.wrapped_by === null ? bytesOf(row.key) : outer && decrypt(outer, bytesOf(row.iv), bytesOf(row.key), subject);
    if (known.size >= KNOWN_MAX) known.clear();
    if (key) known.set(subject, key);
    return key;
  }
  async function make(subject, wrappedBy) {
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
  async function destroy(subject) {
    await file.write((tx) => tx.run('DELETE FROM subject_key WHERE subject = ? OR wrapped_by = ?', [subject, subject]));
    await file.emptyWal();
    known.clear();
  }
  const keyFor = async (subject, wrappedBy) => (await keyOf(subject)) ?? make(subject, wrappedBy);
  return { ...manyIn(file), keyOf, keyFor, destroy };
}
function manyIn({ read }) {
  const wrapped = async (where, args) =>
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
export const bytesOf = (value) => new Uint8Array(value);
