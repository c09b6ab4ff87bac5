// The customer was told something about a job, and what they answered. What was said is sealed for them.
import { defineEntry, ref, sealed, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { whileOpen } from '../book/next.js';
import { choice, lines } from '../book/values.js';
import { ANSWERS, TOLD_BY } from '../book/work.js';
export const customerTold = defineEntry({
  type: 'customer_told',
  version: 1,
  fields: {
    job: ref('job'),
    what: sealed('customer', stated(lines(2000))),
    how: stated(choice(TOLD_BY)),
    answer: stated(choice(ANSWERS)),
  },
  subject: 'job',
  may: anyStaff,
  form: {
    title: 'Customer told',
    labels: { job: 'Job', what: 'What they were told', how: 'How', answer: 'What they answered' },
    cautions: ['tell-insurer-first'],
  },
  decide: () => null,
  facts: ({ job, answer }) => identities(job, { customerAnswer: answer }),
  say: ({ how, answer }) => `Customer told ${TOLD_BY[how]}: ${ANSWERS[answer]}`,
  tell: ({ how, answer }) => `You were told ${TOLD_BY[how]}: ${ANSWERS[answer]}`,
  next: whileOpen(2),
});
