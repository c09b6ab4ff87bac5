// The customer has no slip: how they were known instead.
import { defineEntry, ref, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { jobIsClosed } from '../book/refusals.js';
import { choice } from '../book/values.js';

const KNOWN_BY = {
  document: 'an identity document was shown',
  phone: 'called back on the number we hold',
  described: 'described the piece and its marks',
  person: 'known to us by sight',
};
export const ticketLost = defineEntry({
  type: 'ticket_lost',
  version: 1,
  fields: { job: ref('job'), knownBy: stated(choice(KNOWN_BY)) },
  subject: 'job',
  may: anyStaff,
  form: { title: 'Collection slip lost', labels: { job: 'Job', knownBy: 'How the customer was known' }, cautions: ['photos'] },
  decide: ({ job }) => jobIsClosed(job),
  facts: ({ job, knownBy }) => identities(job, { ticketLost: knownBy }),
  say: ({ knownBy }) => `Collection slip lost: ${KNOWN_BY[knownBy]}`,
  tell: null,
});
