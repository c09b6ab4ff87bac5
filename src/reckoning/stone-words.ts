// What two weights of a stone say, in words for the bench: never that it is the same stone.
import type { MassNg } from '../units/mass.ts';
import { toStep } from '../units/rounded.ts';
import type { StoneComparison } from './stone-agreement.ts';

/** The sentence on two weights of a stone, or of stones together where `alsoShare` is null: the share of other stones of that size that would agree too. */
export function benchStone(
  beforeNg: MassNg,
  afterNg: MassNg,
  stepNg: MassNg,
  { verdict }: StoneComparison,
  alsoShare: number | null,
): string {
  return `${toStep(beforeNg, stepNg, 'ct')}, then ${toStep(afterNg, stepNg, 'ct')}: ${saysOf(verdict, alsoShare)}`;
}

/** Why what was read of stones more than once says nothing of them, for the bench and the customer alike. */
export const UNFIT_WORDS = {
  'not they alone':
    'Weighed more than once, but perhaps wet, with glue or dirt, or with something else on the pan: these weights cannot tell.',
  'not the same stones': 'Weighed more than once, but not the same stones each time: these weights cannot tell.',
} as const;

function saysOf(verdict: StoneComparison['verdict'], alsoShare: number | null): string {
  if (verdict === 'cannot tell') return 'such weighings are too coarse for so small a weight, and cannot tell.';
  if (verdict === 'weigh again') return 'weigh again, clean and dry, before more is said.';
  if (verdict !== 'agrees') return 'the two weights do not agree.';
  if (alsoShare === null) return 'the two weights agree. One stone changed for another of its size would not show.';
  const of100 = Math.round(100 * alsoShare);
  return `the two weights agree; ${of100 < 1 ? 'fewer than 1' : `about ${of100}`} of 100 other stones of that size would agree too.`;
}

/** The sentence on the papers of stones that are out: which of them their weights would tell apart; null where there is nothing to mix up. */
export function benchPapers(told: readonly string[], untold: readonly string[]): string | null {
  if (told.length + untold.length < 2) return null;
  if (untold.length === 0) return `If the papers were mixed up, these weights would tell which stone is which: ${told.join(', ')}.`;
  const others = told.length === 0 ? '' : ` They would tell ${told.join(', ')}.`;
  return `If the papers were mixed up, these weights could not tell ${untold.join(', ')} apart: draw or photograph them.${others}`;
}
