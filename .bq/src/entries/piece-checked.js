// The last look before hand-back: stones counted, seats, size and marks.
import { defineEntry, observed, optional, ref } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { pieceIsGone } from '../book/refusals.js';
import { choice, count, decimal, lines } from '../book/values.js';
import { stonesWords } from '../book/words.js';

const SEATS = { tight: 'all tight', loose: 'not all tight', none: 'no seats' };
const MARKS = { readable: 'marks still readable', worn: 'marks hard to read', gone: 'marks gone', none: 'no marks' };
export const pieceChecked = defineEntry({
  type: 'piece_checked',
  version: 1,
  fields: {
    piece: ref('piece'),
    stones: observed(count()),
    seats: observed(choice(SEATS)),
    ringSizeMm: optional(observed(decimal('mm'))),
    marks: observed(choice(MARKS)),
    note: optional(observed(lines(1000))),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Check a piece',
    labels: {
      piece: 'Piece',
      stones: 'Stones counted',
      seats: 'Seats',
      ringSizeMm: 'Size on the stick, inside circumference in mm',
      marks: 'Marks',
      note: 'Remarks',
    },
  },
  decide: ({ piece }) => pieceIsGone(piece),
  facts: ({ piece, stones, seats, ringSizeMm, marks }) => [
    fact('count', { of: piece, stones }),
    ...identities(piece, { seats, ringSizeMm, marksState: marks }),
  ],
  say: ({ stones, seats, ringSizeMm, marks }) =>
    `Checked: ${stonesWords(stones)}, ${SEATS[seats]}${ringSizeMm ? `, ${ringSizeMm}\u00a0mm on the stick` : ''}, ${MARKS[marks]}`,
  tell: 'as said',
  next: ({ status }) => (status === 'agreed' ? 33 : status === 'finished' ? 20 : null),
});
