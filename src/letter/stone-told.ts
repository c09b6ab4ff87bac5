// What a customer is told of the weights of a stone or of stones together: the count first, then what was read, and what it is worth that two weights agree.
import type { StoneCheck } from '../projections/stone-checks.ts';
import { UNFIT_WORDS } from '../reckoning/stone-words.ts';
import { customerParcel, customerStone } from '../reckoning/words.ts';
import { massNg } from '../units/mass.ts';

/** One sentence or two on stones that were read more than once; null where they were not. */
export function stoneTold({ before, after, compared, worth, unfit }: StoneCheck): string | null {
  if (unfit) return UNFIT_WORDS[unfit];
  if (!before || !after || !compared) return null;
  const stepNg = before.stepNg ?? massNg(200_000);
  return before.stones === 1
    ? customerStone(before.ng, after.ng, stepNg, compared, worth)
    : customerParcel(before, after, stepNg, compared);
}
