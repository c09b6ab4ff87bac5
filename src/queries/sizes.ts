// How long the ledger and its streams are: what a form carries as seen, and what a page was reckoned from.
import { sql } from 'drizzle-orm';
import { entry, entryLink } from '../../drizzle/schema.ts';
import { listOf, type Reading, rows, statement } from './statement.ts';

export const LOG_SIZE = statement([], () => rows.select({ size: sql<number>`COALESCE(MAX(${entry.seq}) + 1, 0)`.as('size') }).from(entry));
/** The last place of each stream is looked up; counting would walk the whole of it. */
export const STREAM_SIZES = statement(['streams'], ({ streams }) =>
  rows
    .select({
      stream: sql<string>`wanted.value`.as('stream'),
      size: sql<number>`COALESCE((SELECT MAX(${entryLink.n}) + 1 FROM ${entryLink} WHERE ${entryLink.stream} = wanted.value), 0)`.as(
        'size',
      ),
    })
    .from(sql`json_each(${streams}) AS wanted`),
);

/** How many entries there are. */
export const logSize = async (store: Reading): Promise<number> => (await LOG_SIZE(store, {}))[0]?.size ?? 0;

/** How many entries each of these streams has. */
export const streamSizes = async (store: Reading, streams: readonly string[]): Promise<ReadonlyMap<string, number>> =>
  new Map((await STREAM_SIZES(store, { streams: listOf(streams) })).map(({ stream, size }) => [stream, size]));

export const streamSize = async (store: Reading, stream: string): Promise<number> => (await streamSizes(store, [stream])).get(stream) ?? 0;
