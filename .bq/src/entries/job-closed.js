// A job ends when nothing of it is left in the shop.
import { defineEntry, ref, refuse } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { jobIsClosed } from '../book/refusals.js';
import { stonesWords } from '../book/words.js';
export const jobClosed = defineEntry({
  type: 'job_closed',
  version: 1,
  fields: { job: ref('job') },
  subject: 'job',
  may: anyStaff,
  form: { title: 'Close a job', labels: { job: 'Job' }, button: 'Close' },
  decide({ job }) {
    const closed = jobIsClosed(job);
    if (closed) return closed;
    if (job.piecesIn > 0) return refuse('pieces_still_in', 'A piece of this job is still here. Return it first.', 'job');
    if (job.stonesOut > 0) {
      return refuse('stones_still_out', `Still here: ${stonesWords(job.stonesOut)} of this job. Return what is out first.`, 'job');
    }
    return null;
  },
  facts: ({ job }) => [fact('state', { of: job, is: 'closed' })],
  say: () => 'Job closed',
  tell: null,
  next: ({ status, pieces }) => (status === 'finished' && pieces === 0 ? 1 : null),
});
