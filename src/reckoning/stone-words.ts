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

/** What the weight of a piece or stone without a label says: how many of those here it could be, and what that is worth; never that it is one of them. */
export function foundWords(
  what: 'piece' | 'stone',
  weighed: string,
  { could, cannot, unknown }: { readonly could: number; readonly cannot: number; readonly unknown: number },
  isOnly: boolean,
  alsoShare: number | null,
): readonly string[] {
  const all = could + cannot + unknown;
  const things = what === 'piece' ? 'pieces that are here' : 'stones and packets that are out';
  if (all === 0) return [`${weighed}: there are no ${things}.`];
  const open = unknown === 0 ? '' : ` ${unknown} ${unknown === 1 ? 'was' : 'were'} not weighed and cannot be left out.`;
  const not = cannot === 0 ? '' : `, and cannot be ${cannot}`;
  const counted = `${weighed}: of ${all} ${things} it could be ${could === 0 ? 'none that was weighed' : could}${not}.${open}`;
  const only = isOnly ? ' Every other is too far off by weight or size.' : '';
  return [`${counted}${only}`, worthOfFound(what, alsoShare)];
}

function worthOfFound(what: 'piece' | 'stone', alsoShare: number | null): string {
  if (what === 'piece')
    return 'That a weight fits does not say whose it is: look at its marks, its size and its photographs before a label goes on.';
  const of100 = Math.round(100 * (alsoShare ?? 1));
  return `${of100 < 1 ? 'Fewer than 1' : `About ${of100}`} of 100 other stones of that size would weigh as much: look at the drawing and the photographs before a label goes on.`;
}
