// The bench's own look under the loupe, before the first tool.
import { defineEntry, observed, optional, ref, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { pieceIsGone } from '../book/refusals.js';
import { file, lines } from '../book/values.js';
export const inspectedBeforeWork = defineEntry({
  type: 'inspected_before_work',
  version: 1,
  fields: { piece: ref('piece'), findings: observed(lines(2000)), photo: optional(stated(file())) },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Look over before work',
    labels: { piece: 'Piece', findings: 'What was found', photo: 'Photograph' },
    hints: { findings: 'The customer may read this: facts, by position, no names.' },
    cautions: ['unknown-stone-heat', 'old-solder', 'contents-unopened'],
  },
  decide: ({ piece }) => pieceIsGone(piece),
  facts: ({ piece, photo }) => identities(piece, { photo }),
  say: ({ findings }) => `Looked over before work: ${findings}`,
  tell: 'as said',
  next: atBench(3),
});
