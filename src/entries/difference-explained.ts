// Somebody says why something did not agree. It changes no figure.
import { defineEntry, optional, ref, refuse, stated } from '../book/entry.ts';
import { identities } from '../book/given.ts';
import { anyStaffByPin } from '../book/may.ts';
import { lines, text } from '../book/values.ts';

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
  decide: (_view, { person }, { by, witness }) =>
    person !== undefined && person !== by && person !== witness
      ? refuse('not_the_explainer', 'Only the one who explains it signs for it: let them sign in, or leave the name out.', 'person')
      : null,
  facts: ({ of, what }) => identities(of, { differenceExplained: what }),
  say: ({ what, person, reason }, name) => `Explained: ${what}: ${reason}${person ? ` (${name(person)})` : ''}`,
  tell: ({ what, reason }) => `Explained: ${what}: ${reason}`,
  next: (job) => (job.status === 'closed' || job.status === 'withdrawn' ? 61 : null),
});
