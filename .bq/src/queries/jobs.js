// Jobs: those in the house with everything that belongs to them, and those that are finished.
import { and, asc, desc, eq, gte, inArray, lt, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { entry, thing } from '../../drizzle/schema.js';
import { thingOf } from '../store/shelf.js';
import { rows, statement } from './statement.js';
import { thingsAt } from './things.js';

const IN_THE_HOUSE = ['open', 'agreed', 'finished'];
const FINISHED_STATES = ['finished', 'closed'];
const job = alias(thing, 'job');
/** From the few open jobs to their things: the order of a cross join is kept. */
export const IN_HOUSE = statement([], () =>
  rows
    .select({ state: thing.state })
    .from(job)
    .crossJoin(thing)
    .where(and(eq(job.kind, 'job'), inArray(job.status, [...IN_THE_HOUSE]), eq(thing.stream, job.id)))
    .orderBy(asc(thing.n)),
);
export const IN_HOUSE_OF_KIND = statement(['kind'], ({ kind }) =>
  rows
    .select({ state: thing.state })
    .from(job)
    .crossJoin(thing)
    .where(and(eq(job.kind, 'job'), inArray(job.status, [...IN_THE_HOUSE]), eq(thing.stream, job.id), eq(thing.kind, kind)))
    .orderBy(asc(thing.n)),
);
export const FINISHED = statement(['before', 'limit'], ({ before, limit }) =>
  rows
    .select({ n: thing.n, id: thing.id })
    .from(thing)
    .where(and(eq(thing.kind, 'job'), inArray(thing.status, [...FINISHED_STATES]), lt(thing.n, before)))
    .orderBy(desc(thing.n))
    .limit(limit),
);
/** The streams that these entries belong to, by the links in their leaves. */
export const WRITTEN_ON_SINCE = statement(['from'], ({ from }) =>
  rows
    .selectDistinct({ stream: sql`json_extract(link.value, '$.s')`.as('stream') })
    .from(entry)
    .crossJoin(sql`json_each(CAST(${entry.leaf} AS TEXT), '$.links') AS link`)
    .where(gte(entry.seq, from)),
);
/** Everything that belongs to jobs which are neither closed nor withdrawn, the jobs among them, in the order they began; of one kind where one is given. */
export const thingsInHouse = async (store, kind) =>
  (kind === undefined ? await IN_HOUSE(store, {}) : await IN_HOUSE_OF_KIND(store, { kind })).map(thingOf);
/** All jobs that are finished or closed, newest first. */
export async function finishedJobs(store) {
  const found = [];
  for (let before = Number.MAX_SAFE_INTEGER; before !== null; ) {
    const page = await FINISHED(store, { before, limit: CHUNK });
    for (const { id } of page) found.push(id);
    before = page.length < CHUNK ? null : (page.at(-1)?.n ?? null);
  }
  return found;
}
const CHUNK = 5000;
/** Finished jobs on which something was written from entry number `from` on. */
export async function finishedSince(store, from) {
  const streams = (await WRITTEN_ON_SINCE(store, { from })).map(({ stream }) => stream);
  const isFinished = ({ kind, status }) => kind === 'job' && FINISHED_STATES.some((state) => state === status);
  return (await thingsAt(store, streams)).filter(isFinished).map(({ id }) => id);
}
