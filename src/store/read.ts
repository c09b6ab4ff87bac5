// What the screens read: things, entries of a stream, entries newest first, and what the Find box finds. Keyset pages, at most 200 rows.
import { and, asc, count, desc, eq, gt, gte, lt, sql } from 'drizzle-orm';
import { drizzle, type SqliteRemoteDatabase } from 'drizzle-orm/sqlite-proxy';
import { entry, entryLink, thing } from '../../drizzle/schema.ts';
import type { Kept } from '../ledger/leaf.ts';
import type { Thing } from '../ledger/thing.ts';
import type { RefKind } from '../units/ids.ts';
import type { Value } from './connection.ts';
import type { Store } from './open.ts';
import { keptAll, thingOf } from './shelf.ts';

type Readable = Pick<Store, 'read' | 'values' | 'keys'>;
/** Rows in their order, and where the next page begins: null after the last. */
export interface Page<T> {
  readonly rows: readonly T[];
  readonly next: number | null;
}
const ROWS_MAX = 200;

/** Selects through the reader alone: nothing it offers can write. */
export const selecting = ({ values }: Pick<Store, 'values'>): Pick<SqliteRemoteDatabase, 'select'> =>
  drizzle(async (query, args) => ({ rows: [...(await values(query, args as Value[]))] as unknown[][] }));

/** Things of a kind in the order they began; `after` is the `next` of the page before. */
export async function things(
  store: Readable,
  { kind, status, after = 0, limit = ROWS_MAX }: { kind: RefKind; status?: NonNullable<Thing['status']>; after?: number; limit?: number },
): Promise<Page<Thing>> {
  const wanted = [eq(thing.kind, kind), gt(thing.n, after), ...(status === undefined ? [] : [eq(thing.status, status)])];
  const rows = await selecting(store)
    .select({ n: thing.n, state: thing.state })
    .from(thing)
    .where(and(...wanted))
    .orderBy(asc(thing.n))
    .limit(atMost(limit));
  return { rows: rows.map(thingOf), next: nextOf(rows, limit, ({ n }) => n) };
}

/** All things of a stream in the order they began: the job itself, its pieces, stones, packets and bag. */
export const thingsOfStream = async (store: Readable, stream: string): Promise<readonly Thing[]> =>
  (await selecting(store).select({ state: thing.state }).from(thing).where(eq(thing.stream, stream)).orderBy(asc(thing.n))).map(thingOf);

/** Entries of a stream in order, from position `after` (0 for the first) on. */
export async function entriesOfStream(
  store: Readable,
  stream: string,
  { after = 0, limit = ROWS_MAX }: { after?: number; limit?: number } = {},
): Promise<Page<Kept>> {
  const rows = await selecting(store)
    .select({ n: entryLink.n, seq: entry.seq, leaf: entry.leaf, leaf_hash: entry.leafHash })
    .from(entryLink)
    .innerJoin(entry, eq(entry.seq, entryLink.seq))
    .where(and(eq(entryLink.stream, stream), gte(entryLink.n, after)))
    .orderBy(asc(entryLink.n))
    .limit(atMost(limit));
  return { rows: await keptAll(store.read, store.keys, rows), next: nextOf(rows, limit, ({ n }) => n + 1) };
}

/** Entries before number `seq`, newest first; `next` is the `seq` of the following page. */
export async function entriesBefore(store: Readable, seq: number, limit = ROWS_MAX): Promise<Page<Kept>> {
  const rows = await selecting(store)
    .select({ seq: entry.seq, leaf: entry.leaf, leaf_hash: entry.leafHash })
    .from(entry)
    .where(lt(entry.seq, seq))
    .orderBy(desc(entry.seq))
    .limit(atMost(limit));
  return { rows: await keptAll(store.read, store.keys, rows), next: nextOf(rows, limit, (last) => last.seq || null) };
}

/** Things whose words hold all of these, newest first; of fewer than three characters, bags whose code begins so. */
export async function findThings(store: Readable, words: string, limit = 50): Promise<readonly Thing[]> {
  const typed = words.normalize('NFC').trim();
  const long = typed.split(/\s+/).filter((word) => [...word].length >= 3);
  if (typed === '') return [];
  const found = long.length > 0 ? sql`${thing.n} IN (SELECT rowid FROM find WHERE find MATCH ${phrases(long)})` : bagsFrom(typed);
  const rows = await selecting(store).select({ state: thing.state }).from(thing).where(found).orderBy(desc(thing.n)).limit(atMost(limit));
  return rows.map(thingOf);
}

/** How many entries a stream has: what a form carries as seen. */
export async function streamSize(store: Readable, stream: string): Promise<number> {
  const [row] = await selecting(store).select({ n: count() }).from(entryLink).where(eq(entryLink.stream, stream));
  return row?.n ?? 0;
}

/** A page that is not full is the last. */
const nextOf = <R>(rows: readonly R[], limit: number, cursor: (last: R) => number | null): number | null => {
  const last = rows.at(-1);
  return last === undefined || rows.length < atMost(limit) ? null : cursor(last);
};

const atMost = (limit: number) => Math.min(Math.max(1, limit), ROWS_MAX);

/** An FTS5 phrase for each word: doubled quotation marks are the only escape there is (SQLite FTS5, section 3.1). */
const phrases = (words: readonly string[]) => words.map((word) => `"${word.replaceAll('"', '""')}"`).join(' ');

const bagsFrom = (code: string) => {
  const from = code.toUpperCase();
  return and(eq(thing.kind, 'bag'), gte(thing.id, from), lt(thing.id, `${from}\u{10ffff}`));
};
