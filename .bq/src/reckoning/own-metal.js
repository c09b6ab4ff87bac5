// How much of the metal in a returned piece is the customer's own: a range, since filings after other metal is joined are mixed.
import { uOfSum } from '../weighing/uncertainty.js';
/** Own metal between (received − stones − all taken off) and (received − stones − taken off before the joining), each ± 2u; null when no metal came back. */
export function ownMetal(piece) {
  const { received, stonesOut, offBefore, offAfter, returned, stonesSet } = piece;
  const kept = [...signed(received, 1), ...signed([...stonesOut, ...offBefore], -1)];
  const least = [...kept, ...signed(offAfter, -1)];
  const metalNg = sumNg([...signed(returned, 1), ...signed(stonesSet, -1)]);
  if (metalNg <= 0) return null;
  const within = (ng) => Math.min(Math.max(0, ng), metalNg);
  const [lowNg, highNg] = [within(sumNg(least)), within(sumNg(kept))];
  return { metalNg, lowNg, highNg, uLowG: uOfSum(least), uHighG: uOfSum(kept), lowShare: lowNg / metalNg, highShare: highNg / metalNg };
}
const signed = (parts, sign) => parts.map((part) => ({ ...part, sign }));
const sumNg = (terms) => terms.reduce((sum, { sign, ng }) => sum + sign * ng, 0);
