// The last look before hand-back: stones counted, seats, size and marks.
import { defineEntry, observed, optional, ref } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { identities } from '../book/given.ts';
import { anyStaff } from '../book/may.ts';
import { pieceIsGone } from '../book/refusals.ts';
import { choice, count, decimal, lines } from '../book/values.ts';
import { stonesWords } from '../book/words.ts';

const SEATS = { tight: 'all tight', loose: 'not all tight', none: 'no seats' } as const;
const MARKS = { readable: 'marks still readable', worn: 'marks hard to read', gone: 'marks gone', none: 'no marks' } as const;

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
