// A piece goes home although something does not agree: the customer was told what, and signed.
import { defineEntry, observed, optional, ref, sealed, stated, weight } from '../book/entry.js';
import { countedOut, countedOutWords, RETURNED_TO } from '../book/hand-back.js';
import { anyStaffByPin } from '../book/may.js';
import { onHold, pieceIsGone, pieceIsOutside } from '../book/refusals.js';
import { choice, count, lines, text, tick } from '../book/values.js';
export const returnedWithException = defineEntry({
  type: 'returned_with_exception',
  version: 1,
  fields: {
    piece: ref('piece'),
    stones: observed(count()),
    exception: observed(lines(2000)),
    to: stated(choice(RETURNED_TO)),
    taker: optional(sealed('shop', stated(text(120)))),
    shown: observed(text(200)),
    weight: optional(weight()),
    signed: stated(tick()),
  },
  subject: 'piece',
  may: anyStaffByPin,
  form: {
    title: 'Hand back with an exception',
    labels: {
      piece: 'Piece',
      stones: 'Stones counted out with the customer',
      exception: 'What does not agree',
      to: 'To whom',
      taker: 'Name of who took it',
      shown: 'What they showed',
      weight: 'Weight at hand-back',
      signed: 'They were told what does not agree, and signed',
    },
    hints: { exception: 'Facts and figures, never fault, no names.' },
    weighs: { weight: 'piece' },
    cautions: ['tell-insurer-first', 'posting-cover'],
  },
  decide: ({ piece }, { to }, { today }) => pieceIsGone(piece) ?? pieceIsOutside(piece, to) ?? onHold(piece, today, 'piece'),
  facts: (data) => countedOut(data),
  say: (data) => `Returned ${RETURNED_TO[data.to]} with an exception: ${countedOutWords(data)}; ${data.exception}`,
  tell: 'as said',
  next: ({ status }) => (status === 'finished' ? 23 : null),
});
