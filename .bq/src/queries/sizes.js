// How long the ledger and its streams are: what a form carries as seen, and what a page was reckoned from.
import { sql } from 'drizzle-orm';
import { entry, entryLink } from '../../drizzle/schema.js';
import { listOf, rows, statement } from './statement.js';
export const LOG_SIZE = statement([], () => rows.select({ size: sql`COALESCE(MAX(${entry.seq}) + 1, 0)`.as('size') }).from(entry));
/** The last place of each stream is looked up; counting would walk the whole of it. */
export const STREAM_SIZES = statement(['streams'], ({ streams }) =>
  rows
    .select({
      stream: sql`wanted.value`.as('stream'),
      size: sql`COALESCE((SELECT MAX(${entryLink.n}) + 1 FROM ${entryLink} WHERE ${entryLink.stream} = wanted.value), 0)`.as('size'),
    })
    .from(sql`json_each(${streams}) AS wanted`),
);
/** How many entries there are. */
export const logSize = async (store) => (await LOG_SIZE(store, {}))[0]?.size ?? 0;
/** How many entries each of these streams has. */
export const streamSizes = async (store, streams) =>
  new Map((await STREAM_SIZES(store, { streams: listOf(streams) })).map(({ stream, size }) => [stream, size]));
export const streamSize = async (store, stream) => (await streamSizes(store, [stream])).get(stream) ?? 0;
