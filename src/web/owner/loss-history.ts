// The jobs the shop can learn its usual loss from, each reckoned once for as long as nothing is written on it.
import type { Balances } from '../../projections/balances.ts';
import { reckonJob } from '../../projections/job-reckoning.ts';
import { type LossJob, lossJob } from '../../projections/loss.ts';
import { told } from '../../projections/told.ts';
import { entriesOf } from '../../queries/entries.ts';
import { finishedJobs } from '../../queries/jobs.ts';
import type { Web } from '../session/context.ts';

/** Older jobs than these say little about how the shop works now (common practice, no source). */
const JOBS_MAX = 300;
interface Remembered {
  readonly size: number;
  readonly balances: number;
  readonly loss: LossJob | null;
}
const remembered = new WeakMap<Web, Map<string, Remembered>>();

/** The last jobs that are finished, as points; They are judged by the assumed loss, so that a rate never feeds itself. */
export async function lossHistory(web: Web, balances: Balances): Promise<readonly LossJob[]> {
  const known = remembered.get(web) ?? new Map<string, Remembered>();
  remembered.set(web, known);
  const found: LossJob[] = [];
  for (const { id: job, size: length } of await finishedJobs(web.store, JOBS_MAX)) {
    const before = known.get(job);
    const fresh =
      before?.size === length && before.balances === balances.entries
        ? before
        : { size: length, balances: balances.entries, loss: await lossOf(web, job, balances) };
    known.set(job, fresh);
    if (fresh.loss) found.push(fresh.loss);
  }
  return found;
}

async function lossOf(web: Web, job: string, balances: Balances): Promise<LossJob | null> {
  const kept = await entriesOf(web.store, job);
  return lossJob(job, reckonJob(kept, { balances, size: 0 }), told(kept));
}
