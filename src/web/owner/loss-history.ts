// All finished jobs as points of loss, each reckoned once for as long as nothing is written on it and its balances stay what they were.
import { AsyncResource } from 'node:async_hooks';
import type { Baselines } from '../../book/loss-charts.ts';
import type { Balances } from '../../projections/balances.ts';
import { reckonJob } from '../../projections/job-reckoning.ts';
import {
  type CheckedJob,
  checkedJob,
  type Learned,
  type LossChart,
  type LossJob,
  learnedFrom,
  leavesDust,
  lossCharts,
} from '../../projections/loss.ts';
import { told } from '../../projections/told.ts';
import { entriesOfAll } from '../../queries/entries.ts';
import { growing } from '../../queries/growing.ts';
import { finishedJobs, finishedSince } from '../../queries/jobs.ts';
import { turnOfTheLoop } from '../../store/sqlite.ts';
import { balanceStory } from '../job/balance-story.ts';
import type { Web } from '../session/context.ts';

interface Row {
  /** When the last of its entries happened. */
  readonly lastMs: number;
  readonly checked: CheckedJob | null;
}
/** Rows reckoned so far, jobs that are due, newest first, and how many changes of balances the rows have seen. */
interface Reckoned {
  readonly rows: Map<string, Row>;
  readonly due: Set<string>;
  changes: number;
  points: Pick<LossHistory, 'jobs' | 'checked' | 'learned' | 'due'> | null;
  charts: { readonly by: string; readonly drawn: readonly LossChart[] } | null;
  isGoingOn: boolean;
}
export interface LossHistory {
  /** Those whose work leaves dust, and what the shop learned from them. */
  readonly jobs: readonly LossJob[];
  /** All that were checked by weight. */
  readonly checked: readonly CheckedJob[];
  readonly learned: Learned;
  /** How many finished jobs are not among them yet. */
  readonly due: number;
  /** The charts over them, drawn once for as long as the jobs and the accepted baselines are the same. */
  charts(baselines: Baselines): readonly LossChart[];
}

/** A page waits for so many jobs; where more are due it waits only if none are known yet, and the rest follows while everybody else has turns. */
const AT_ONCE = 100;
const CHUNK = 10;
/** So few between two turns that no page waits long beside it. */
const STEP = 2;

/** Jobs fall due: what is told next says how many. */
function fallDue(known: Reckoned, jobs: readonly string[]): void {
  for (const job of jobs) known.due.add(job);
  if (jobs.length > 0) known.points = null;
}

const reckoned = growing<Reckoned>(
  () => ({ rows: new Map(), due: new Set(), changes: 0, points: null, charts: null, isGoingOn: false }),
  async (store, known, from) => {
    fallDue(known, from === 0 ? await finishedJobs(store) : await finishedSince(store, from));
    return known;
  },
);

/** Finished jobs that were weighed in and out. They are judged by the assumed loss, so that a rate never feeds itself. */
export async function lossHistory({ store }: Pick<Web, 'store'>): Promise<LossHistory> {
  const known = await reckoned(store);
  const { balances, changes } = await balanceStory(store);
  const changedMs = Math.min(...changes.slice(known.changes));
  if (known.changes < changes.length)
    fallDue(
      known,
      [...known.rows].flatMap(([job, { lastMs }]) => (lastMs >= changedMs ? [job] : [])),
    );
  known.changes = changes.length;
  const isWaiting = known.due.size <= AT_ONCE || known.rows.size === 0;
  for (let done = 0; isWaiting && done < AT_ONCE && known.due.size > 0; done += CHUNK) {
    await reckonSome(store, known, balances, CHUNK);
    known.points = null;
  }
  if (known.due.size > 0 && !known.isGoingOn) goOn(store, known);
  if (known.points === null) known.charts = null;
  const points = known.points ?? pointsOf(known);
  known.points = points;
  const charts = (baselines: Baselines) => {
    const by = JSON.stringify([...baselines]);
    const drawn = known.points === points && known.charts?.by === by ? known.charts.drawn : lossCharts(points.jobs, baselines);
    if (known.points === points) known.charts = { by, drawn };
    return drawn;
  };
  return { ...points, charts };
}

function pointsOf({ rows, due }: Reckoned): NonNullable<Reckoned['points']> {
  const checked = [...rows.values()].flatMap((row) => row.checked ?? []);
  const jobs = checked.filter(leavesDust);
  return { checked, jobs, learned: learnedFrom(jobs), due: due.size };
}

/** Reads what is committed by now, outside of every page's own moment: an older one could miss what made a job due. */
const reckonSome = AsyncResource.bind(async (store: Web['store'], known: Reckoned, balances: Balances, most: number): Promise<void> => {
  const some: string[] = [];
  for (const job of known.due) if (some.push(job) === most) break;
  // Taken off before it is read: what is written on it from here on makes it due again.
  for (const job of some) known.due.delete(job);
  const read = await entriesOfAll(store, some).catch((error: unknown) => {
    for (const job of some) known.due.add(job);
    throw error;
  });
  for (const [job, kept] of read) {
    const entries = told(kept);
    const lastMs = Math.max(...entries.map(({ atMs }) => atMs));
    known.rows.set(job, { lastMs, checked: checkedJob(job, reckonJob(kept, { balances, size: 0 }), entries) });
  }
});

/** Goes on with what is due; what pages show and say to be missing stays as it was until all of it is there, since each new point teaches anew. */
const goOn = AsyncResource.bind(async (store: Web['store'], known: Reckoned): Promise<void> => {
  known.isGoingOn = true;
  try {
    for (; known.due.size > 0; await turnOfTheLoop()) await reckonSome(store, known, (await balanceStory(store)).balances, STEP);
  } catch {
    // What is due stays due: the next page that asks goes on, and says so until then.
  } finally {
    known.isGoingOn = false;
    known.points = null;
  }
});
