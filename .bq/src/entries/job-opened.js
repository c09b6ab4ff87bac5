// A job begins, with its bag: who brought it, whose it is, and how it came. The customer's name stays sealed.
import { begins, defineEntry, optional, ref, sealed, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { choice, text } from '../book/values.js';

const BROUGHT_BY = {
  customer: 'the customer',
  family: 'family or friend for them',
  estate: 'executor or estate',
  trade: 'trade customer',
  carrier: 'post or courier',
};
const OWNERS = {
  customer: 'the customer',
  estate: 'an estate',
  trade: 'a trade customer',
  shop: 'the shop',
  supplier: 'a supplier',
  insurer: 'an insurer',
  disputed: 'disputed',
  unknown: 'not known',
};
const CHANNELS = { counter: 'over the counter', post: 'by post', trade: 'from the trade', other: 'another way' };
export const jobOpened = defineEntry({
  type: 'job_opened',
  version: 1,
  fields: {
    job: begins('job'),
    bag: begins('bag'),
    customer: optional(sealed('shop', ref('customer'))),
    broughtBy: stated(choice(BROUGHT_BY)),
    owner: stated(choice(OWNERS)),
    channel: stated(choice(CHANNELS)),
    theirDocket: optional(stated(text(60))),
    theirWeight: optional(stated(text(40))),
    comebackOf: optional(sealed('shop', stated(text(12)))),
  },
  subject: 'job',
  may: anyStaff,
  form: {
    title: 'Open a job',
    labels: {
      job: 'Job',
      bag: 'Bag',
      customer: 'Customer',
      broughtBy: 'Brought by',
      owner: 'Whose is it?',
      channel: 'How it came',
      theirDocket: 'Their docket number',
      theirWeight: 'Weight on their docket, as written',
      comebackOf: 'Comeback of the bag',
    },
    cautions: ['bailee'],
  },
  decide: () => null,
  facts: ({ job, bag, owner, broughtBy, channel, theirDocket, theirWeight }) => [
    fact('state', { of: job, is: 'open' }),
    fact('title', { of: job, part: 'whole', owner }),
    ...identities(job, { bag, broughtBy, channel, theirDocket, theirWeight }),
  ],
  say: ({ bag, broughtBy, channel, theirDocket }) =>
    `Job opened in bag ${bag}: brought by ${BROUGHT_BY[broughtBy]}, ${CHANNELS[channel]}${theirDocket ? `, their docket ${theirDocket}` : ''}`,
  tell: null,
});
