import { readingWords } from '../weighing/reading.js';
import { fact, flowOfWhole } from './facts.js';
import { given } from './given.js';
import { stonesWords } from './words.js';
export const RETURNED_TO = { customer: 'to the customer', named: 'to someone they named', post: 'by post' };
export const SIGNED = { signature: 'signed', witness: 'before a witness', receipt: 'against the carrier’s receipt' };
/** All of a thing leaves the shop. What is posted stays with the outside until it is known to have come. */
export const goesHome = (of, to) => [
  flowOfWhole(of, 'outside', { kind: 'mixed' }),
  fact('custody', { of, is: 'with', holder: to === 'post' ? 'outside' : 'customer' }),
];
/** A piece is weighed and counted out, then leaves. */
export const countedOut = ({ piece, stones, to, weight }) => [
  ...given(weight, (reading) => fact('reading', { of: piece, state: 'returned', reading })),
  fact('count', { of: piece, stones }),
  ...goesHome(piece, to),
];
/** "3 stones counted out, 5.58 g". */
export const countedOutWords = ({ stones, weight }) => `${stonesWords(stones)} counted out${weight ? `, ${readingWords(weight)}` : ''}`;
