// A piece on the pan, in a stated condition. It says something about the piece and moves nothing.
import { defineEntry, observed, ref, weight } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { pieceIsGone } from '../book/refusals.js';
import { choice } from '../book/values.js';
import { WEIGHED_STATES } from '../book/work.js';
import { readingWords } from '../weighing/reading.js';
export const pieceWeighed = defineEntry({
  type: 'piece_weighed',
  version: 1,
  fields: { piece: ref('piece'), state: observed(choice(WEIGHED_STATES)), weight: weight() },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Weigh a piece',
    labels: { piece: 'Piece', state: 'In what state', weight: 'Weight' },
    weighs: { weight: 'piece' },
    cautions: ['wet-or-hollow', 'plating-and-weight'],
  },
  decide: ({ piece }) => pieceIsGone(piece),
  facts: ({ piece, state, weight: reading }) => [fact('reading', { of: piece, state, reading })],
  say: ({ state, weight: reading }) => `Weighed, ${WEIGHED_STATES[state]}: ${readingWords(reading)}`,
  tell: 'as said',
  next: ({ status, isMine }) => (status === 'agreed' ? (isMine ? 2 : 25) : status === 'finished' ? 22 : null),
});
