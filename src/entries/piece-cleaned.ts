// A piece is cleaned before work; weighed dry, this is the base weight where the reckoning starts.
import { defineEntry, observed, optional, ref, weight } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { given } from '../book/given.ts';
import { anyStaff } from '../book/may.ts';
import { atBench } from '../book/next.ts';
import { pieceIsGone } from '../book/refusals.ts';
import { choice, choices } from '../book/values.ts';
import { weightWords } from '../book/words.ts';
import { wordsOf } from '../book/work.ts';

const HOW = { ultrasonic: 'ultrasonic', steam: 'steam', soap: 'soap and brush', pickle: 'pickle', cloth: 'cloth' } as const;
const DRY = { dry: 'dry', unsure: 'not sure it is dry' } as const;

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
