// What goes home: to whom, against what, and the facts that every way of handing back shares.
import type { Holding } from '../units/ids.ts';
import { type Reading, readingWords } from '../weighing/reading.ts';
import { type Fact, fact, flowOfWhole } from './facts.ts';
import { given } from './given.ts';
import { stonesWords } from './words.ts';

export const RETURNED_TO = { customer: 'to the customer', named: 'to someone they named', post: 'by post' } as const;

export const SIGNED = { signature: 'signed', witness: 'before a witness', receipt: 'against the carrier’s receipt' } as const;

/** All of a thing leaves the shop. What is posted stays with the outside until it is known to have come. */
export const goesHome = (of: Holding, to: keyof typeof RETURNED_TO): readonly Fact[] => [
  flowOfWhole(of, 'outside', { kind: 'mixed' }),
  fact('custody', { of, is: 'with', holder: to === 'post' ? 'outside' : 'customer' }),
];

interface CountedOut {
  readonly piece: Holding;
  readonly stones: number;
  readonly to: keyof typeof RETURNED_TO;
  readonly weight?: Reading;
}
/** A piece is weighed and counted out, then leaves. */
export const countedOut = ({ piece, stones, to, weight }: CountedOut): readonly Fact[] => [
  ...given(weight, (reading) => fact('reading', { of: piece, state: 'returned', reading })),
  fact('count', { of: piece, stones }),
  ...goesHome(piece, to),
];

/** "3 stones counted out, 5.58 g". */
export const countedOutWords = ({ stones, weight }: Pick<CountedOut, 'stones' | 'weight'>): string =>
  `${stonesWords(stones)} counted out${weight ? `, ${readingWords(weight)}` : ''}`;
