// Things as they stand: one by its name, those of a job, those of a kind, and what the Find box finds.
import { and, asc, desc, eq, gte, lt, sql } from 'drizzle-orm';
import { thing } from '../../drizzle/schema.js';
import { thingOf } from '../store/shelf.js';
import { inList, listOf, rows, statement } from './statement.js';
/** At most so many of a kind are listed; more are found by their words. */
export const LISTED_MAX = 200;
export const THING = statement(['id'], ({ id }) => rows.select({ state: thing.state }).from(thing).where(eq(thing.id, id)));
export const THINGS = statement(['ids'], ({ ids }) => rows.select({ state: thing.state }).from(thing).where(inList(thing.id, ids)));
export const OF_STREAM = statement(['stream'], ({ stream }) =>
  rows.select({ state: thing.state }).from(thing).where(eq(thing.stream, stream)).orderBy(asc(thing.n)),
);
export const OF_KIND = statement(['kind'], ({ kind }) =>
  rows.select({ state: thing.state }).from(thing).where(eq(thing.kind, kind)).orderBy(asc(thing.n)),
);
export const NEWEST = statement(['kind', 'before', 'limit'], ({ kind, before, limit }) =>
  rows
    .select({ n: thing.n, state: thing.state })
    .from(thing)
    .where(and(eq(thing.kind, kind), lt(thing.n, before)))
    .orderBy(desc(thing.n))
    .limit(limit),
);
/** The full-text index answers newest first by itself, and stops at the limit. */
export const FOUND = statement(['words', 'limit'], ({ words, limit }) =>
  rows
    .select({ state: thing.state })
    .from(sql`find`)
    .crossJoin(thing)
    .where(sql`find MATCH ${words} AND ${thing.n} = find.rowid`)
    .orderBy(sql`find.rowid DESC`)
    .limit(limit),
);
/** Unary plus keeps the engine from walking all bags instead of the few names. */
export const BAGS_FROM = statement(['from', 'to', 'limit'], ({ from, to, limit }) =>
  rows
    .select({ state: thing.state })
    .from(thing)
    .where(and(gte(thing.id, from), lt(thing.id, to), sql`+${thing.kind} = 'bag'`))
    .orderBy(asc(thing.id))
    .limit(limit),
);
/** A thing by its name, of that kind where one is given; null where there is none. */
export async function thingAt(store, id, kind) {
  const [row] = await THING(store, { id });
  const found = row ? thingOf(row) : null;
  return found && (kind === undefined || found.kind === kind) ? found : null;
}
/** The job of that name, or null. */
export const jobNamed = (store, id) => thingAt(store, id ?? '', 'job');
/** Those of these names that are there. */
export const thingsAt = async (store, ids) => (ids.length === 0 ? [] : (await THINGS(store, { ids: listOf(ids) })).map(thingOf));
/** All things of a job in the order they began: the job itself, its pieces, stones, packets and bag. */
export const thingsOfStream = async (store, stream) => (await OF_STREAM(store, { stream })).map(thingOf);
/** All things of a kind, newest last. */
export const thingsOfKind = async (store, kind) => (await OF_KIND(store, { kind })).map(thingOf);
/** The newest things of a kind before place `before`, newest first; `next` is where the following page begins, null after the last. */
export async function newestOf(store, kind, { before = Number.MAX_SAFE_INTEGER, limit = LISTED_MAX } = {}) {
  const found = await NEWEST(store, { kind, before, limit });
  return { things: found.map(thingOf), next: found.length < limit ? null : (found.at(-1)?.n ?? null) };
}
/** Things whose words hold all of these, newest first; of fewer than three characters, bags whose code begins so. */
export async function findThings(store, typed, limit = 50) {
  const words = typed.normalize('NFC').trim();
  const long = words.split(/\s+/).filter((word) => [...word].length >= 3);
  if (words === '') return [];
  const from = words.toUpperCase();
  const found =
    long.length > 0
      ? await FOUND(store, { words: phrases(long), limit })
      : await BAGS_FROM(store, { from, to: `${from}\u{10ffff}`, limit });
  return found.map(thingOf);
}
/** An FTS5 phrase for each word: doubled quotation marks are the only escape there is (SQLite FTS5, section 3.1). */
const phrases = (words) => words.map((word) => `"${word.replaceAll('"', '""')}"`).join(' ');
