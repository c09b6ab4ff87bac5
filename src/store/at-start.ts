// What a start sees without reading all of the ledger: pages that are damaged, people, places and balances that do not follow from the entries,
// photographs that are gone. The check sees the rest.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { foldStream } from '../ledger/apply.ts';
import { readCorrected } from '../ledger/corrections.ts';
import { overlayOn } from '../ledger/overlay.ts';
import { ENTRY_TYPES } from '../ledger/registry.ts';
import type { RefKind } from '../units/ids.ts';
import { codeOf } from './connection.ts';
import { noKeys } from './keys.ts';
import { columnsOf } from './rows.ts';
import { keptAll } from './shelf.ts';
import type { Query } from './sqlite.ts';

/** What everybody's authority and every weight rests on; few, and told by entries about themselves alone. */
const HOUSE: readonly RefKind[] = ['shop', 'person', 'place', 'balance'];
const HOUSE_TYPES = ENTRY_TYPES.filter(({ fields, subject }) => fields[subject]?.kinds.some((kind) => HOUSE.includes(kind)));
/** Reading every page of a larger file takes longer than a start may. */
const QUICK_BYTES = 64 * 1024 * 1024;

/** Why nothing may be written on these data, as a sentence; null where a start sees nothing. */
export async function troubleAtStart(read: Query, path: string): Promise<string | null> {
  try {
    const small = (statSync(path, { throwIfNoEntry: false })?.size ?? 0) <= QUICK_BYTES;
    return (small ? await pageTrouble(read, 'quick_check') : null) ?? (await houseTrouble(read));
  } catch (error) {
    if (isDamage(error)) return DAMAGED;
    throw error;
  }
}

/** What is said of a page that is none. */
export const DAMAGED = 'ledger.db is damaged. Keep the files as they are, and restore the last good copy.';

/** Whether the engine came upon a page that is none. */
export const isDamage = (error: unknown): boolean => /SQLITE_(CORRUPT|NOTADB)/.test(codeOf(error));

/** Whether every page is what the engine takes it to be; `integrity_check` asks indexes for their rows too. */
export async function pageTrouble(read: Query, how: 'quick_check' | 'integrity_check'): Promise<string | null> {
  const [row] = await read(`PRAGMA ${how}(1)`);
  return row === undefined || Object.values(row)[0] === 'ok' ? null : DAMAGED;
}

/** Folds the house anew from the entries about it, and compares the rows. */
async function houseTrouble(read: Query): Promise<string | null> {
  const types = JSON.stringify(HOUSE_TYPES.map(({ type }) => type));
  const entries = await read(
    `SELECT seq, leaf, leaf_hash FROM entry WHERE type IN (SELECT value FROM json_each(?1))
     UNION ALL SELECT c.seq, c.leaf, c.leaf_hash FROM entry AS c JOIN entry AS e ON e.seq = c.corrects
     WHERE c.corrects IS NOT NULL AND e.type IN (SELECT value FROM json_each(?1)) ORDER BY seq`,
    [types],
  );
  const kept = await keptAll(read, noKeys, entries);
  const none = async () => undefined;
  const blank = overlayOn({ thing: none, head: none, entry: none, leaves: async () => [], openPieces: async () => [] });
  const due = await foldStream(blank, kept[0]?.leaf.links[0].s ?? '', readCorrected(kept));
  const rows = await read(
    'SELECT id, kind, stream, status, stones, words, state FROM thing WHERE kind IN (SELECT value FROM json_each(?))',
    [JSON.stringify(HOUSE)],
  );
  const differs = rows.find((row) => {
    const thing = due.get(String(row.id));
    const columns = thing && columnsOf(thing);
    return !columns || Object.values(row).some((value, column) => value !== columns[column]);
  });
  const isMissing = [...due.values()].filter(({ kind }) => HOUSE.includes(kind)).length !== rows.length;
  if (!differs && !isMissing) return null;
  return 'Who works here, or a place or balance, does not follow from the entries: the file was changed by another program. Stop this one, run: lemel rebuild, then start it again.';
}

/** How many of the photographs that entries name are not in their folder. */
export async function photographsGone(read: Query, dir: string): Promise<number> {
  const sql =
    "SELECT DISTINCT json_extract(CAST(leaf AS TEXT), '$.data.photo') AS photo FROM entry WHERE type IN (SELECT value FROM json_each(?))";
  const types = ENTRY_TYPES.filter(({ fields }) => fields.photo !== undefined).map(({ type }) => type);
  const named = (await read(sql, [JSON.stringify(types)])).flatMap(({ photo }) => (photo === null ? [] : [`${photo}.webp`]));
  const there = new Set(existsSync(dir) ? readdirSync(dir) : []);
  return named.filter((name) => !there.has(name)).length;
}

/** The same, as it is told. */
export const goneWords = (count: number): readonly string[] =>
  count > 0 ? [`${count} of the photographs that entries name are not there.`] : [];
