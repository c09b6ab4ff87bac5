// A piece is cleaned before work; weighed dry, this is the base weight where the reckoning starts.
import { defineEntry, observed, optional, ref, weight } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { given } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { pieceIsGone } from '../book/refusals.js';
import { choice, choices } from '../book/values.js';
import { weightWords } from '../book/words.js';
import { wordsOf } from '../book/work.js';

const HOW = { ultrasonic: 'ultrasonic', steam: 'steam', soap: 'soap and brush', pickle: 'pickle', cloth: 'cloth' };
const DRY = { dry: 'dry', unsure: 'not sure it is dry' };
export const pieceCleaned = defineEntry({
  type: 'piece_cleaned',
  version: 1,
  fields: {
    piece: ref('piece'),
    how: observed(choices(HOW)),
    dry: observed(choice(DRY)),
    weight: optional(weight()),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Clean a piece',
    labels: { piece: 'Piece', how: 'How', dry: 'Dry and cool?', weight: 'Base weight' },
    weighs: { weight: 'piece' },
    cautions: ['wet-or-hollow', 'unknown-foiled', 'ashes'],
  },
  decide: ({ piece }) => pieceIsGone(piece),
  facts: ({ piece, dry, weight: reading }) =>
    given(reading, (shown) => fact('reading', { of: piece, state: dry === 'dry' ? 'cleaned and dry' : 'cleaned', reading: shown })),
  say: ({ how, dry, weight: reading }) => `Cleaned${how.length > 0 ? `: ${wordsOf(HOW, how)}` : ''}, ${DRY[dry]}${weightWords(reading)}`,
  tell: 'as said',
  next: atBench(4),
});
