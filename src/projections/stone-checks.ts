// Each stone and parcel of a job: counted out and in, and its first weight against its last where it was weighed twice.

import { pairCosts, restoreLabels } from '../reckoning/labels.ts';
import {
  compareParcels,
  identityWorth,
  type Measured,
  type ParcelComparison,
  type StoneComparison,
  type StoneVerdict,
  shareAlsoAgreeing,
  type Worthwhile,
} from '../reckoning/stone-agreement.ts';
import { sizeSpreadCt } from '../trade/stone-spread.ts';
import type { MassNg } from '../units/mass.ts';
import { uOfSum, type Worth } from '../weighing/uncertainty.ts';
import type { History, Step } from './history.ts';
import { type Pan, passagesOf } from './stone-pans.ts';
import type { Told } from './told.ts';

interface StoneWeight {
  readonly seq: number;
  readonly ng: MassNg;
  readonly stepNg: MassNg | null;
  /** How many were on the pan. */
  readonly stones: number;
}
/** Why what was read of stones more than once are no two weights of the same stones alone. */
export type Unfit = 'not they alone' | 'not the same stones';
export interface StoneCheck {
  readonly thing: string;
  /** It was not in a piece when that came. */
  readonly supplied: boolean;
  /** Stones that came to it, that went from it into a piece, and that are in it now. */
  readonly out: number;
  readonly setAgain: number;
  readonly loose: number;
  readonly before: StoneWeight | null;
  readonly after: StoneWeight | null;
  readonly compared: ParcelComparison | null;
  /** Null where they were read once at most. */
  readonly verdict: StoneVerdict | null;
  readonly unfit: Unfit | null;
  /** What it is worth that the weights agree; nothing of stones weighed together, one of which may be changed for its like. */
  readonly worth: Worthwhile;
  /** The share of other stones of its size that would agree too; null of stones weighed together, and where nothing is compared. */
  readonly alsoShare: number | null;
}
/** Two weighings wider than this share of the stone cannot say that they agree (common practice, no source). */
const FITNESS_SHARE = 0.05;
type Weighed = Step & { readonly ng: MassNg };
interface OnPan {
  readonly pan: Pan;
  readonly step: Weighed;
}

/** The checks of every stone and parcel that was out of its piece. A reading that is not of the stones alone is none of their weights. */
export function stoneChecks({ streams, pieces }: History, entries: readonly Told[]): readonly StoneCheck[] {
  return [...passagesOf(entries, pieces)].map(([thing, { supplied, came, set, loose, pans }]): StoneCheck => {
    const [first, last] = twiceOf(pans, streams) ?? [];
    const compared = first && last ? compareParcels(asMeasured(first), asMeasured(last), FITNESS_SHARE * (first.step.ng / 1e9)) : null;
    const agreement = compared && first?.pan.stones === 1 ? worthOf(compared, first.step.ng / 2e8) : NOTHING;
    const unfit = compared || pans.length < 2 ? null : pans.some(({ isAlone }) => !isAlone) ? 'not they alone' : 'not the same stones';
    const weights = { before: weightOf(first), after: weightOf(last), compared, unfit } as const;
    const verdict = compared?.verdict ?? (unfit && 'cannot tell');
    return { thing, supplied, out: came, setAgain: set, loose, ...weights, verdict, ...agreement };
  });
}

/** The first and the last weighing of the same stones alone, of the latest stones that were weighed twice. */
function twiceOf(pans: readonly Pan[], streams: readonly Step[]): readonly [OnPan, OnPan] | null {
  const weighed = pans.flatMap((pan) => {
    const step = streams.find((one): one is Weighed => one.id === pan.id && one.ng !== null);
    return step && pan.isAlone && pan.lot >= 0 ? [{ pan, step }] : [];
  });
  const isAsMany = (one: OnPan) => (other: OnPan) => one.pan.lot === other.pan.lot && one.pan.stones === other.pan.stones;
  const last = weighed.findLast((one) => weighed.filter(isAsMany(one)).length > 1);
  const first = last && weighed.find(isAsMany(last));
  return first && last ? [first, last] : null;
}

const NOTHING = { worth: 'cannot tell', alsoShare: null } as const;

/** What the agreement of two weights of a stone of that many carats is worth, against others sold as its size. */
function worthOf({ differenceG, uG }: StoneComparison, carats: number): Pick<StoneCheck, 'worth' | 'alsoShare'> {
  const spread = sizeSpreadCt(carats) / 5;
  return { worth: identityWorth([{ difference: differenceG, u: uG, spread }]).worth, alsoShare: shareAlsoAgreeing(uG, spread) };
}

/** Single stones that are out and were weighed by themselves, and whether their weights would tell each from the others if their papers were mixed up. */
export function apartByWeight({ streams, pieces }: History, entries: readonly Told[]): readonly { thing: string; isTold: boolean }[] {
  const loose = [...passagesOf(entries, pieces)].flatMap(([thing, passage]) => {
    const pan = passage.pans.findLast(({ isAlone, lot, stones }) => isAlone && lot === passage.lot && stones === 1);
    const step = passage.loose === 1 ? streams.find((one): one is Weighed => one.id === pan?.id && one.ng !== null) : undefined;
    return pan && step ? [{ thing, ...asMeasured({ pan, step }) }] : [];
  });
  const uG = Math.max(0, ...loose.map(({ worth }) => uOfSum([{ sign: 1, worth }])));
  const weights = loose.map(({ g }) => g);
  const { columns } = restoreLabels(pairCosts(weights, weights, Math.SQRT2 * uG));
  return loose.map(({ thing }, index) => ({ thing, isTold: columns[index] === index }));
}

const weightOf = (one: OnPan | undefined): StoneWeight | null =>
  one ? { seq: one.step.seq, ng: one.step.ng, stepNg: one.step.reading?.stepNg ?? null, stones: one.pan.stones } : null;

function asMeasured({ pan, step: { ng, uRandomG, factors } }: OnPan): Measured & { readonly stones: number } {
  const worth: Worth = { uRandomG, factors };
  return { g: ng / 1e9, worth, stones: pan.stones };
}
