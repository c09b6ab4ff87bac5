// How much of the metal in a returned piece is the customer's own: a range, since filings after other metal is joined are mixed.
import { uOfSum, type Worth } from '../weighing/uncertainty.ts';

interface Part {
  readonly ng: number;
  readonly worth: Worth;
}
/** The weighings of one piece. `offBefore` and `offAfter`: cut, filed or swept before and after other metal was joined. */
export interface PieceMetal {
  readonly received: readonly Part[];
  readonly stonesOut: readonly Part[];
  readonly offBefore: readonly Part[];
  readonly offAfter: readonly Part[];
  readonly returned: readonly Part[];
  readonly stonesSet: readonly Part[];
}
export interface OwnMetal {
  /** Metal in the returned piece, stones left out. */
  readonly metalNg: number;
  /** Customer's own metal in it if all, or none, of the mixed filings were the customer's. */
  readonly lowNg: number;
  readonly highNg: number;
  readonly uLowG: number;
  readonly uHighG: number;
  readonly lowShare: number;
  readonly highShare: number;
}

/** Own metal between (received − stones − all taken off) and (received − stones − taken off before the joining), each ± 2u; null when no metal came back. */
export function ownMetal(piece: PieceMetal): OwnMetal | null {
  const { received, stonesOut, offBefore, offAfter, returned, stonesSet } = piece;
  const kept = [...signed(received, 1), ...signed([...stonesOut, ...offBefore], -1)];
  const least = [...kept, ...signed(offAfter, -1)];
  const metalNg = sumNg([...signed(returned, 1), ...signed(stonesSet, -1)]);
  if (metalNg <= 0) return null;
  const within = (ng: number) => Math.min(Math.max(0, ng), metalNg);
  const [lowNg, highNg] = [within(sumNg(least)), within(sumNg(kept))];
  return { metalNg, lowNg, highNg, uLowG: uOfSum(least), uHighG: uOfSum(kept), lowShare: lowNg / metalNg, highShare: highNg / metalNg };
}

const signed = (parts: readonly Part[], sign: 1 | -1) => parts.map((part) => ({ ...part, sign }));
const sumNg = (terms: readonly { readonly sign: number; readonly ng: number }[]) => terms.reduce((sum, { sign, ng }) => sum + sign * ng, 0);
