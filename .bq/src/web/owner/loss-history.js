// All finished jobs as points of loss, each reckoned once for as long as nothing is written on it and its balances stay what they were.
import { AsyncResource } from 'node:async_hooks';
import { reckonJob } from '../../projections/job-reckoning.js';
import { lossJob } from '../../projections/loss.js';
import { told } from '../../projections/told.js';
import { entriesOfAll } from '../../queries/entries.js';
import { growing } from '../../queries/growing.js';
import { finishedJobs, finishedSince } from '../../queries/jobs.js';
import { turnOfTheLoop } from '../../store/sqlite.js';
import { balanceStory } from '../job/balance-story.js';

/** A page waits for so many jobs; older ones follow while everybody else has turns. */
const AT_ONCE = 300;
const CHUNK = 50;
const reckoned = growing(
  () => ({ rows: new Map(), due: new Set(), changes: 0, points: null, isGoingOn: false }),
  async (store, known, from) => {
    for (const job of from === 0 ? await finishedJobs(store) : await finishedSince(store, from)) known.due.add(job);
    return known;
  },
);
/** Finished jobs that were weighed in and out. They are judged by the assumed loss, so that a rate never feeds itself. */
export async function lossHistory({ store }) {
  const known = await reckoned(store);
  const { balances, changes } = await balanceStory(store);
  const changedMs = Math.min(...changes.slice(known.changes));
  if (known.changes < changes.length) for (const [job, { lastMs }] of known.rows) if (lastMs >= changedMs) known.due.add(job);
  known.changes = changes.length;
  for (let done = 0; done < AT_ONCE && known.due.size > 0; done += CHUNK) await reckonSome(store, known, balances);
  if (known.due.size > 0 && !known.isGoingOn) goOn(store, known);
  known.points ??= [...known.rows.values()].flatMap(({ loss }) => loss ?? []);
  return { jobs: known.points, due: known.due.size };
}
/** Reads what is committed by now, outside of every page's own moment: an older one could miss what made a job due. */
const reckonSome = AsyncResource.bind(async (store, known, balances) => {
  const some = [];
  for (const job of known.due) if (some.push(job) === CHUNK) break;
  for (const [job, kept] of await entriesOfAll(store, some)) {
    const entries = told(kept);
    const lastMs = Math.max(...entries.map(({ atMs }) => atMs));
    known.rows.set(job, { lastMs, loss: lossJob(job, reckonJob(kept, { balances, size: 0 }), entries) });
    known.due.delete(job);
  }
  known.points = null;
});
const goOn = AsyncResource.bind(async (store, known) => {
  known.isGoingOn = true;
  try {
    for (; known.due.size > 0; await turnOfTheLoop()) await reckonSome(store, known, (await balanceStory(store)).balances);
  } catch {
    // What is due stays due: the next page that asks goes on, and says so until then.
  } finally {
    known.isGoingOn = false;
  }
});
