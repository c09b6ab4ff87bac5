// Jobs: those in the house with everything that belongs to them, and those that are finished.
import { and, asc, desc, eq, inArray, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { entryLink, thing } from '../../drizzle/schema.ts';
import type { JobState } from '../book/facts.ts';
import type { Thing } from '../ledger/thing.ts';
import { thingOf } from '../store/shelf.ts';
import type { RefKind } from '../units/ids.ts';
import { type Reading, rows, statement } from './statement.ts';

const IN_THE_HOUSE: readonly JobState[] = ['open', 'agreed', 'finished'];
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

/** Finished jobs, newest first, each with the length of its stream. */
export const FINISHED = statement(['limit'], ({ limit }) =>
  rows
    .select({
      id: thing.id,
      size: sql<number>`(SELECT MAX(${entryLink.n}) + 1 FROM ${entryLink} WHERE ${entryLink.stream} = ${thing.id})`.as('size'),
    })
    .from(thing)
    .where(and(eq(thing.kind, 'job'), inArray(thing.status, ['finished', 'closed'])))
    .orderBy(desc(thing.n))
    .limit(limit),
);

/** Everything that belongs to jobs which are neither closed nor withdrawn, the jobs among them, in the order they began; of one kind where one is given. */
export const thingsInHouse = async (store: Reading, kind?: RefKind): Promise<readonly Thing[]> =>
  (kind === undefined ? await IN_HOUSE(store, {}) : await IN_HOUSE_OF_KIND(store, { kind })).map(thingOf);

/** The last jobs that are finished or closed, and how many entries each has. */
export const finishedJobs = (store: Reading, limit: number) => FINISHED(store, { limit });
