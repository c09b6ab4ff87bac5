// Entries: those of a stream, one by its number with what corrects it, the trail of the whole ledger, and what a letter is proved with.
import { and, asc, desc, eq, gte, inArray, lt, sql } from 'drizzle-orm';
import { checkpoint, entry, entryLink, sealed, thing } from '../../drizzle/schema.ts';
import type { Kept } from '../ledger/leaf.ts';
import { keptAll } from '../store/shelf.ts';
import { inList, listOf, type Opening, type Reading, rows, statement } from './statement.ts';

const LEAF = { seq: entry.seq, leaf: entry.leaf, leaf_hash: entry.leafHash } as const;
const ofStreams = () => rows.select(LEAF).from(entryLink).innerJoin(entry, eq(entry.seq, entryLink.seq));
const backFrom = () => rows.select(LEAF).from(entry);

export const OF_STREAM = statement(['stream'], ({ stream }) => ofStreams().where(eq(entryLink.stream, stream)).orderBy(asc(entryLink.n)));
export const OF_STREAM_BACK = statement(['stream', 'before', 'limit'], ({ stream, before, limit }) =>
  rows
    .select({ ...LEAF, n: entryLink.n })
    .from(entryLink)
    .innerJoin(entry, eq(entry.seq, entryLink.seq))
    .where(and(eq(entryLink.stream, stream), lt(entryLink.n, before)))
    .orderBy(desc(entryLink.n))
    .limit(limit),
);
export const BY_NUMBER = statement(['seqs'], ({ seqs }) => backFrom().where(inList(entry.seq, seqs)).orderBy(asc(entry.seq)));
export const CORRECTING = statement(['seqs'], ({ seqs }) => backFrom().where(inList(entry.corrects, seqs)).orderBy(asc(entry.seq)));
export const OF_TYPES_FROM = statement(['types', 'from'], ({ types, from }) =>
  backFrom()
    .where(and(inList(entry.type, types), gte(entry.seq, from)))
    .orderBy(asc(entry.seq)),
);
export const TRAIL = statement(['before', 'limit'], ({ before, limit }) =>
  backFrom().where(lt(entry.seq, before)).orderBy(desc(entry.seq)).limit(limit),
);
export const TRAIL_OF_TYPE = statement(['before', 'type', 'limit'], ({ before, type, limit }) =>
  backFrom()
    .where(and(eq(entry.type, type), lt(entry.seq, before)))
    .orderBy(desc(entry.seq))
    .limit(limit),
);
export const TRAIL_OF_WRITER = statement(['before', 'writer', 'limit'], ({ before, writer, limit }) =>
  backFrom()
    .where(and(eq(entry.writer, writer), lt(entry.seq, before)))
    .orderBy(desc(entry.seq))
    .limit(limit),
);
export const TRAIL_OF_BOTH = statement(['before', 'writer', 'type', 'limit'], ({ before, writer, type, limit }) =>
  backFrom()
    .where(and(eq(entry.writer, writer), eq(entry.type, type), lt(entry.seq, before)))
    .orderBy(desc(entry.seq))
    .limit(limit),
);
export const OF_STREAMS = statement(['streams'], ({ streams }) =>
  rows
    .select({ ...LEAF, stream: entryLink.stream })
    .from(sql`json_each(${streams}) AS wanted`)
    .crossJoin(entryLink)
    .crossJoin(entry)
    .where(and(eq(entryLink.stream, sql`wanted.value`), eq(entry.seq, entryLink.seq)))
    .orderBy(asc(entry.seq)),
);
export const OF_POOLS_FROM = statement(['from'], ({ from }) =>
  rows
    .selectDistinct(LEAF)
    .from(thing)
    .crossJoin(entryLink)
    .crossJoin(entry)
    .where(
      and(
        inArray(thing.kind, ['lot', 'stock', 'skin']),
        eq(entryLink.stream, thing.id),
        gte(entryLink.seq, from),
        eq(entry.seq, entryLink.seq),
      ),
    )
    .orderBy(asc(entry.seq)),
);
export const NAMING_BACK = statement(['text', 'from', 'to', 'limit'], ({ text, from, to, limit }) =>
  backFrom()
    .where(and(gte(entry.seq, from), lt(entry.seq, to), sql`instr(${entry.leaf}, CAST(${text} AS BLOB)) > 0`))
    .orderBy(desc(entry.seq))
    .limit(limit),
);
export const NUMBERS_FROM = statement(['stream', 'from'], ({ stream, from }) =>
  rows
    .select({ seq: entryLink.seq })
    .from(entryLink)
    .where(and(eq(entryLink.stream, stream), gte(entryLink.n, from)))
    .orderBy(asc(entryLink.n)),
);
export const SEALED_IN = statement(['seqs'], ({ seqs }) =>
  rows
    .select({ seq: sealed.seq, field: sealed.field, subject: sealed.subject, iv: sealed.iv, ciphertext: sealed.ciphertext })
    .from(sealed)
    .where(inList(sealed.seq, seqs))
    .orderBy(asc(sealed.seq)),
);
export const SIGNATURE = statement(['size'], ({ size }) =>
  rows.select({ signature: checkpoint.signature }).from(checkpoint).where(eq(checkpoint.size, size)),
);

const opened = async (store: Opening, found: Parameters<typeof keptAll>[2]): Promise<readonly Kept[]> =>
  keptAll(store.read, store.keys, found);

/** The entries of a stream in order: of a job, which is never long. */
export const entriesOf = async (store: Opening, stream: string): Promise<readonly Kept[]> =>
  opened(store, await OF_STREAM(store, { stream }));

/** The entries of each of these streams, in order. */
export async function entriesOfAll(store: Opening, streams: readonly string[]): Promise<ReadonlyMap<string, readonly Kept[]>> {
  const found = await OF_STREAMS(store, { streams: listOf(streams) });
  const kept = await opened(store, found);
  const byStream = new Map<string, Kept[]>(streams.map((stream) => [stream, []]));
  for (const [index, { stream }] of found.entries()) byStream.get(stream)?.push(kept[index] as Kept);
  return byStream;
}

/** The entries of all lots, stocks and skins from number `from` on, in order. */
export const entriesOfPools = async (store: Opening, from: number): Promise<readonly Kept[]> =>
  opened(store, await OF_POOLS_FROM(store, { from }));

/** The newest entries from number `from` up to `to` whose leaf holds this name. */
export const entriesNaming = async (store: Opening, name: string, [from, to]: readonly [number, number], limit: number) =>
  opened(store, await NAMING_BACK(store, { text: name, from, to, limit }));

/** One entry by its number; null where there is none, or no number. */
export async function entryAt(store: Opening, seq: number | null): Promise<Kept | null> {
  if (seq === null) return null;
  const [found] = await opened(store, await BY_NUMBER(store, { seqs: listOf([seq]) }));
  return found ?? null;
}

/** These entries and those that correct them, in order: what they say by now can be told from them alone. */
export async function withCorrections(store: Opening, kept: readonly Kept[]): Promise<readonly Kept[]> {
  const has = new Set(kept.map(({ seq }) => seq));
  const correcting = await opened(store, await CORRECTING(store, { seqs: listOf([...has]) }));
  return [...kept, ...correcting.filter(({ seq }) => !has.has(seq))].sort((a, b) => a.seq - b.seq);
}

/** A page of entries, newest first; `older` is where the following page begins, null after the last. */
export interface Back {
  readonly kept: readonly Kept[];
  readonly older: number | null;
}

/** The newest entries of a long stream before its place `before`. */
export async function lastOfStream(store: Opening, stream: string, before: number, limit: number): Promise<Back> {
  const found = await OF_STREAM_BACK(store, { stream, before, limit });
  return { kept: await opened(store, found), older: found.length < limit ? null : (found.at(-1)?.n ?? null) };
}

/** The newest entries before number `before`: of one kind, of one person, or both; an empty text stands for any. */
export async function trailBack(store: Opening, before: number, { type, by }: { type: string; by: string }, limit: number): Promise<Back> {
  const at = { before, limit };
  const found = await (type && by
    ? TRAIL_OF_BOTH(store, { ...at, type, writer: by })
    : type
      ? TRAIL_OF_TYPE(store, { ...at, type })
      : by
        ? TRAIL_OF_WRITER(store, { ...at, writer: by })
        : TRAIL(store, at));
  const kept = await opened(store, found);
  return { kept, older: found.length < limit ? null : (kept.at(-1)?.seq ?? null) };
}

/** Entries of these kinds from number `from` on, in order. */
export const entriesOfTypes = async (store: Opening, types: readonly string[], from = 0): Promise<readonly Kept[]> =>
  opened(store, await OF_TYPES_FROM(store, { types: listOf(types), from }));

/** The numbers of a stream's entries from its place `from` on. */
export const numbersFrom = async (store: Reading, stream: string, from: number): Promise<readonly number[]> =>
  (await NUMBERS_FROM(store, { stream, from })).map(({ seq }) => seq);

/** The leaves of a stream within the first `size` of the ledger, as they were hashed. */
export const leavesWithin = async (store: Reading, stream: string, size: number) =>
  (await OF_STREAM(store, { stream })).filter(({ seq }) => seq < size).map(({ seq, leaf }) => ({ seq, bytes: leaf }));

/** What was sealed in these entries, still sealed. */
export const sealedIn = (store: Reading, seqs: readonly number[]) => SEALED_IN(store, { seqs: listOf(seqs) });

/** The signature under the first `size` entries, where they were signed at that size. */
export const signatureAt = async (store: Reading, size: number): Promise<Buffer | null> =>
  (await SIGNATURE(store, { size }))[0]?.signature ?? null;
