// The jobs the shop can learn its usual loss from, each reckoned once for as long as nothing is written on it.
import type { Balances } from '../../projections/balances.ts';
import { reckonJob } from '../../projections/job-reckoning.ts';
import { type LossJob, lossJob } from '../../projections/loss.ts';
import { told } from '../../projections/told.ts';
import { entriesOf } from '../job/ledger-lines.ts';
import type { Web } from '../session/context.ts';

/** Older jobs than these say little about how the shop works now (common practice, no source). */
const JOBS_MAX = 300;
interface Remembered {
  readonly size: number;
  readonly balances: number;
  readonly loss: LossJob | null;
}
const remembered = new WeakMap<Web, Map<string, Remembered>>();
const CHANGED = `SELECT job.id, COUNT(*) AS size FROM (SELECT id FROM thing WHERE kind = 'job' AND status IN ('finished', 'closed') ORDER BY n DESC LIMIT ?) AS job
  JOIN entry_link ON entry_link.stream = job.id GROUP BY job.id`;

/** The last jobs that are finished, as points; They are judged by the assumed loss, so that a rate never feeds itself. */
export async function lossHistory(web: Web, balances: Balances): Promise<readonly LossJob[]> {
  const known = remembered.get(web) ?? new Map<string, Remembered>();
  remembered.set(web, known);
  const found: LossJob[] = [];
  for (const row of await web.store.read(CHANGED, [JOBS_MAX])) {
    const [job, length] = [String(row.id), Number(row.size)];
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
  const kept = await entriesOf(web, job);
  return lossJob(job, reckonJob(kept, { balances, size: 0 }), told(kept));
}
