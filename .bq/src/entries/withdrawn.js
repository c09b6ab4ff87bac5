// A job entered by mistake is taken off the lists; its entries stay.
import { defineEntry, ref, refuse, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { jobIsClosed } from '../book/refusals.js';
import { text } from '../book/values.js';
export const withdrawn = defineEntry({
  type: 'withdrawn',
  version: 1,
  fields: { job: ref('job'), reason: stated(text(200)) },
  subject: 'job',
  may: anyStaff,
  form: { title: 'Withdraw a job', labels: { job: 'Job', reason: 'Why' }, button: 'Withdraw' },
  decide({ job }) {
    const closed = jobIsClosed(job);
    if (closed) return closed;
    if (job.piecesIn > 0 || job.stonesOut > 0 || job.status === 'finished') {
      return refuse('job_holds_things', 'Things came in on this job. Return them and close it instead.', 'job');
    }
    return null;
  },
  facts: ({ job }) => [fact('state', { of: job, is: 'withdrawn' })],
  say: ({ reason }) => `Job withdrawn: ${reason}`,
  tell: null,
  next: ({ status, pieces }) => (status === 'open' && pieces === 0 ? 20 : null),
});
