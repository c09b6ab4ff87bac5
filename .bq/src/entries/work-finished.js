// The work on a job is done and it may go home.
import { defineEntry, ref, refuse } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { jobIsClosed } from '../book/refusals.js';
export const workFinished = defineEntry({
  type: 'work_finished',
  version: 1,
  fields: { job: ref('job') },
  subject: 'job',
  may: anyStaff,
  form: { title: 'Work finished', labels: { job: 'Job' }, button: 'Finished' },
  decide({ job }) {
    const closed = jobIsClosed(job);
    if (closed) return closed;
    if (job.status === 'open') return refuse('work_not_agreed', 'Write what was agreed with the customer first.', 'job');
    if (job.status === 'finished') return refuse('already_finished', 'This job is finished already. Nothing more is needed.', 'job');
    return null;
  },
  facts: ({ job }) => [fact('state', { of: job, is: 'finished' })],
  say: () => 'Work finished',
  tell: 'as said',
  next: atBench(14),
});
