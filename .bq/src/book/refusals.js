import { refuse } from './entry.js';
import { standing } from './holds.js';
/** A piece that has gone home can be written about only once it is received again. */
export const pieceIsGone = ({ gone }) =>
  gone ? refuse('piece_is_gone', 'This piece has gone home. Receive it again before writing about it.', 'piece') : null;
/** Work needs an agreement on its job first. */
export const workNotAgreed = ({ jobStatus }) =>
  jobStatus === 'open' ? refuse('work_not_agreed', 'Write what was agreed with the customer before this work.', 'piece') : null;
/** Nothing is added to a job that is closed or was withdrawn. */
export const jobIsClosed = ({ status }) =>
  status === 'closed' || status === 'withdrawn' ? refuse('job_is_closed', 'This job is closed. Open a new job for it.', 'job') : null;
/** Hand-back, melting and use wait while a hold stands. */
export const onHold = ({ holds }, today, field) => {
  const [why] = standing(holds, today);
  return why === undefined ? null : refuse('on_hold', `This is on hold (${why}). Lift the hold first, or wait until it ends.`, field);
};
/** Where one of two fields must be filled in, neither and both are refused. */
export const exactlyOne = (a, b, code, say, field) => ((a === undefined) === (b === undefined) ? refuse(code, say, field) : null);
/** A stone is one stone: its count cannot be otherwise. */
export const notOneStone = (stone, stones) =>
  stone !== undefined && stones !== 1
    ? refuse('one_stone_is_one', 'One stone counts as 1. For several, choose a packet instead.', 'stones')
    : null;
/** A thing that has left the shop for good is neither taken, moved nor weighed. */
export const thingIsGone = (of, field = 'of') =>
  ('gone' in of ? of.gone : of.status === 'closed' || of.status === 'withdrawn')
    ? refuse('thing_is_gone', 'This is no longer in the shop. Check the bag, or receive the piece again.', field)
    : null;
/** A lot that is sealed takes nothing more. */
export const lotIsSealed = ({ status }) =>
  status === 'open' ? null : refuse('lot_is_sealed', 'That lot is sealed. Choose an open lot, or open a new one.', 'lot');
/** A promise is for today or a day to come. */
export const promiseIsPast = (promise, today) =>
  promise < today ? refuse('promise_is_past', 'That day has passed. Give today or a day to come.', 'promise') : null;
/** What is with somebody outside, or on its way there, is not here to be counted out; what is being posted is on its way by that very hand-back. */
export const pieceIsOutside = ({ holder, offeredTo }, to) =>
  holder === 'outside' || (offeredTo === 'outside' && to !== 'post')
    ? refuse('piece_is_outside', 'This piece is with somebody outside. Accept it back first, then hand it out.', 'piece')
    : null;
