// A piece goes home: counted out with whoever takes it. A count that does not agree stops it.
import { defineEntry, observed, optional, ref, refuse, sealed, stated, weight } from '../book/entry.js';
import { countedOut, countedOutWords, RETURNED_TO, SIGNED } from '../book/hand-back.js';
import { anyStaffByPin } from '../book/may.js';
import { onHold, pieceIsGone, pieceIsOutside } from '../book/refusals.js';
import { choice, count, text } from '../book/values.js';
import { stonesWords } from '../book/words.js';
export const pieceReturned = defineEntry({
  type: 'piece_returned',
  version: 1,
  fields: {
    piece: ref('piece'),
    stones: observed(count()),
    to: stated(choice(RETURNED_TO)),
    taker: optional(sealed('shop', stated(text(120)))),
    shown: observed(text(200)),
    weight: optional(weight()),
    signed: stated(choice(SIGNED)),
  },
  subject: 'piece',
  may: anyStaffByPin,
  form: {
    title: 'Hand a piece back',
    labels: {
      piece: 'Piece',
      stones: 'Stones counted out with the customer',
      to: 'To whom',
      taker: 'Name of who took it',
      shown: 'What they showed',
      weight: 'Weight at hand-back',
      signed: 'Signed',
    },
    hints: { shown: 'The collection slip, or how you knew them. No names or numbers here.' },
    weighs: { weight: 'piece' },
    cautions: ['valuation-stale', 'posting-cover', 'ashes'],
  },
  decide({ piece }, { stones, to }, { today }) {
    const refused = pieceIsGone(piece) ?? pieceIsOutside(piece, to) ?? onHold(piece, today, 'piece');
    if (refused) return refused;
    if (piece.owner === 'disputed') {
      const settle = 'Settle that first, then hand it out with an exception that says how.';
      return refuse('owner_disputed', `It is disputed whose this is. ${settle}`, 'piece');
    }
    if (piece.jobStatus !== 'finished') return refuse('work_not_finished', 'Write that the work is finished first.', 'piece');
    if (piece.stonesIn !== null && stones !== piece.stonesIn) {
      const should = `The record says ${stonesWords(piece.stonesIn)}.`;
      return refuse('stone_count_differs', `${should} Count again, correct the record, or return it with an exception.`, 'stones');
    }
    if (piece.stonesOut > 0) {
      const out = `Still out of this job: ${stonesWords(piece.stonesOut)}.`;
      return refuse('stones_still_out', `${out} Set or return what is out, or return it with an exception.`, 'piece');
    }
    if (piece.says.seats === 'loose') {
      const tighten = 'Tighten them and check the piece again, or return it with an exception.';
      return refuse('seats_not_tight', `The last check says that its seats are not all tight. ${tighten}`, 'piece');
    }
    return null;
  },
  facts: (data) => countedOut(data),
  say: (data) => `Returned ${RETURNED_TO[data.to]}: ${countedOutWords(data)}, ${SIGNED[data.signed]}`,
  tell: 'as said',
});
