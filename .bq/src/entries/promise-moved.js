// The day a job was promised for is moved, with the reason and whether the customer knows.
import { defineEntry, ref, refuse, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { jobIsClosed, promiseIsPast } from '../book/refusals.js';
import { choice, day, text } from '../book/values.js';
import { TOLD_BY } from '../book/work.js';
import { formatCivilDate } from '../units/dates.js';

const TOLD = { ...TOLD_BY, 'not yet': 'not yet told' };
export const promiseMoved = defineEntry({
  type: 'promise_moved',
  version: 1,
  fields: { job: ref('job'), promise: stated(day()), why: stated(text(200)), told: stated(choice(TOLD)) },
  subject: 'job',
  may: anyStaff,
  form: { title: 'Move the promise', labels: { job: 'Job', promise: 'Ready by', why: 'Why', told: 'Customer told' } },
  decide({ job }, { promise }, { today }) {
    const closed = jobIsClosed(job);
    if (closed) return closed;
    if (job.status === 'open') return refuse('work_not_agreed', 'No day was promised yet. Write what was agreed first.', 'job');
    return promiseIsPast(promise, today);
  },
  facts: ({ job, promise }) => [fact('promise', { of: job, by: promise })],
  say: ({ promise, why, told }) =>
    `Promise moved to ${formatCivilDate(promise)}: ${why}; customer ${told === 'not yet' ? '' : 'told '}${TOLD[told]}`,
  tell: () => 'The day it was promised for was moved',
  next: atBench(20),
});
