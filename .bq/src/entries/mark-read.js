// A mark as it is struck, letter for letter. It tells what somebody struck, not what an assay found.
import { defineEntry, observed, optional, ref, refuse } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { pieceIsGone } from '../book/refusals.js';
import { choice, text } from '../book/values.js';

const MARK_KINDS = {
  fineness: 'fineness mark',
  sponsor: 'sponsor’s mark',
  office: 'assay office mark',
  date: 'date letter',
  other: 'other mark',
};
const LEGIBLE = { clear: 'clear', worn: 'worn', illegible: 'cannot be read' };
export const markRead = defineEntry({
  type: 'mark_read',
  version: 1,
  fields: {
    piece: ref('piece'),
    kind: observed(choice(MARK_KINDS)),
    where: observed(text(80)),
    struck: optional(observed(text(80))),
    legible: observed(choice(LEGIBLE)),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Read a mark',
    labels: {
      piece: 'Piece',
      kind: 'What kind of mark',
      where: 'Where it is',
      struck: 'As struck, letter for letter',
      legible: 'How well it reads',
    },
    hints: { struck: 'An inscription with a name does not belong here.' },
    cautions: ['mark-is-not-an-assay', 'plated-not-solid'],
  },
  decide({ piece }, { struck, legible }) {
    const gone = pieceIsGone(piece);
    if (gone) return gone;
    if (legible === 'illegible' && struck !== undefined) {
      return refuse('illegible_but_read', 'A mark that cannot be read has no letters. Leave them out, or say that it is worn.', 'struck');
    }
    if (legible !== 'illegible' && struck === undefined) {
      return refuse('mark_missing', 'Write the mark as it is struck, or say that it cannot be read.', 'struck');
    }
    return null;
  },
  facts: ({ piece, kind, struck, legible }) => identities(piece, { [`mark ${kind}`]: struck ?? legible }),
  say: ({ kind, where, struck, legible }) =>
    `Mark read ${where}: ${struck ?? LEGIBLE.illegible} (${MARK_KINDS[kind]}${legible === 'worn' ? ', worn' : ''})`,
  tell: 'as said',
  next: ({ status, pieces }) => (status === 'agreed' || (status === 'open' && pieces > 0) ? 22 : null),
});
