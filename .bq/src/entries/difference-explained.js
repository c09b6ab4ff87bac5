// Somebody says why something did not agree. It changes no figure.
import { defineEntry, optional, ref, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaffByPin } from '../book/may.js';
import { lines, text } from '../book/values.js';
export const differenceExplained = defineEntry({
  type: 'difference_explained',
  version: 1,
  fields: { of: ref('job', 'lot'), what: stated(text(200)), person: optional(ref('person')), reason: stated(lines(2000)) },
  subject: 'of',
  commutes: true,
  may: anyStaffByPin,
  form: {
    title: 'Explain a difference',
    labels: { of: 'Job or lot', what: 'What did not agree', person: 'Who explains it', reason: 'Why' },
    hints: { reason: 'The customer may read this: facts, no names.' },
  },
  decide: () => null,
  facts: ({ of, what }) => identities(of, { differenceExplained: what }),
  say: ({ what, person, reason }, name) => `Explained: ${what}: ${reason}${person ? ` (${name(person)})` : ''}`,
  tell: ({ what, reason }) => `Explained: ${what}: ${reason}`,
  next: (job) => (job.status === 'closed' || job.status === 'withdrawn' ? 61 : null),
});
