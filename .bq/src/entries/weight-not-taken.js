// Why a piece was not weighed. No weighing is compulsory; a gap with its reason is no gap.
import { defineEntry, observed, optional, ref } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { pieceIsGone } from '../book/refusals.js';
import { choice, text } from '../book/values.js';
import { after } from '../book/words.js';

const REASONS = {
  costume: 'costume jewellery',
  strung: 'strung',
  watch: 'a watch',
  declined: 'the customer declined',
  balance: 'balance not to hand',
  other: 'another reason',
};
export const weightNotTaken = defineEntry({
  type: 'weight_not_taken',
  version: 1,
  fields: { piece: ref('piece'), reason: observed(choice(REASONS)), more: optional(observed(text(200))) },
  subject: 'piece',
  may: anyStaff,
  form: { title: 'Not weighed', labels: { piece: 'Piece', reason: 'Why', more: 'More about it' } },
  decide: ({ piece }) => pieceIsGone(piece),
  facts: ({ piece, reason }) => identities(piece, { notWeighed: reason }),
  say: ({ reason, more }) => `Not weighed: ${REASONS[reason]}${after(', ', more)}`,
  tell: 'as said',
});
