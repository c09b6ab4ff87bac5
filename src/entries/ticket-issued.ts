// A slip or label was printed, with the size of the record that it names.
import { defineEntry, ref, stated } from '../book/entry.ts';
import { identities } from '../book/given.ts';
import { anyStaff } from '../book/may.ts';
import { jobIsClosed } from '../book/refusals.ts';
import { choice, text } from '../book/values.ts';

const TICKETS = { slip: 'collection slip', label: 'bag label' } as const;

export const ticketIssued = defineEntry({
  type: 'ticket_issued',
  version: 1,
  fields: { job: ref('job'), kind: stated(choice(TICKETS)), checkpoint: stated(text(20)) },
  subject: 'job',
  commutes: true,
  may: anyStaff,
  form: { title: 'Print a slip', labels: { job: 'Job', kind: 'What', checkpoint: 'Entries in the record it names' } },
  ownPage: true,
  decide: ({ job }) => jobIsClosed(job),
  facts: ({ job, kind, checkpoint }) => identities(job, { [`ticket ${kind}`]: checkpoint }),
  say: ({ kind, checkpoint }) => `Printed: ${TICKETS[kind]}, at ${checkpoint} entries`,
  tell: null,
});
