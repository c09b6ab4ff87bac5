// Each stone and parcel of a job: counted out and in, and its first weight against its last where it was weighed twice.

import { pairCosts, restoreLabels } from '../reckoning/labels.ts';
import { OUTSIDE } from '../reckoning/network.ts';
import {
  compareWeights,
  identityWorth,
  type Measured,
  type StoneComparison,
  shareAlsoAgreeing,
  type Worthwhile,
} from '../reckoning/stone-agreement.ts';
import { sizeSpreadCt } from '../trade/stone-spread.ts';
import type { MassNg } from '../units/mass.ts';
import { uOfSum, type Worth } from '../weighing/uncertainty.ts';
import type { History, Step } from './history.ts';

interface StoneWeight {
  readonly seq: number;
  readonly ng: MassNg;
  readonly stepNg: MassNg | null;
}
export interface StoneCheck {
  readonly thing: string;
  /** It was not in a piece when that came. */
  readonly supplied: boolean;
  /** Stones that came to it, and that went from it into a piece; what is left is still out. */
  readonly out: number;
  readonly setAgain: number;
  readonly before: StoneWeight | null;
  readonly after: StoneWeight | null;
  readonly compared: StoneComparison | null;
  /** What it is worth that the weights agree; nothing of stones weighed together, one of which may be changed for its like. */
  readonly worth: Worthwhile;
  /** The share of other stones of its size that would agree too; null of stones weighed together, and where nothing is compared. */
  readonly alsoShare: number | null;
}
/** Two weighings wider than this share of the stone cannot say that they agree (common practice, no source). */
const FITNESS_SHARE = 0.05;
type Weighed = Step & { readonly ng: MassNg };

/** The checks of every stone and parcel that was out of its piece. A reading that was perhaps wet is none of its weights. */
export function stoneChecks({ streams, pieces, now }: History): readonly StoneCheck[] {
  const things = new Set(
    streams.flatMap(({ into, stones }) => (stones !== undefined && into !== undefined && !pieces.has(into) ? [into] : [])),
  );
  return [...things].map((thing): StoneCheck => {
    const came = streams.filter(({ into, part }) => into === thing && part !== 'weighing');
    const went = streams.filter(({ outOf, part }) => outOf === thing && part === 'stones');
    const weighings = streams.filter(({ into, part }) => into === thing && part === 'weighing');
    const out = came.reduce((sum, { stones = 0 }) => sum + stones, 0);
    const taken = went.reduce((sum, { stones = 0 }) => sum + stones, 0);
    const isHere = now.has(thing) || streams.some(({ outOf, part }) => outOf === thing && part === 'left whole');
    const [first, ...later] = [...came, ...weighings].filter((step): step is Weighed => step.ng !== null);
    const after = later.at(-1);
    const compared =
      first && after && came.length === 1 ? compareWeights(asMeasured(first), asMeasured(after), FITNESS_SHARE * (first.ng / 1e9)) : null;
    const supplied = came.length > 0 && came.every(({ from }) => from === OUTSIDE);
    const agreement = compared && first && out === 1 ? worthOf(compared, first.ng / 2e8) : NOTHING;
    const weights = { before: weightOf(first), after: weightOf(after), compared };
    return { thing, supplied, out, setAgain: isHere ? taken : out, ...weights, ...agreement };
  });
}

const NOTHING = { worth: 'cannot tell', alsoShare: null } as const;

/** What the agreement of two weights of a stone of that many carats is worth, against others sold as its size. */
function worthOf({ differenceG, uG }: StoneComparison, carats: number): Pick<StoneCheck, 'worth' | 'alsoShare'> {
  const spread = sizeSpreadCt(carats) / 5;
  return { worth: identityWorth([{ difference: differenceG, u: uG, spread }]).worth, alsoShare: shareAlsoAgreeing(uG, spread) };
}

/** Single stones that are out and were weighed, and whether their weights would tell each from the others if their papers were mixed up. */
export function apartByWeight({ streams, now }: History, checks: readonly StoneCheck[]): readonly { thing: string; isTold: boolean }[] {
  const loose = checks.flatMap(({ thing, out, setAgain }) => {
    const last = streams.findLast((step): step is Weighed => step.into === thing && step.ng !== null);
    return now.has(thing) && out - setAgain === 1 && last ? [{ thing, g: last.ng / 1e9, worth: asMeasured(last).worth }] : [];
  });
  const uG = Math.max(0, ...loose.map(({ worth }) => uOfSum([{ sign: 1, worth }])));
  const weights = loose.map(({ g }) => g);
  const { columns } = restoreLabels(pairCosts(weights, weights, Math.SQRT2 * uG));
  return loose.map(({ thing }, index) => ({ thing, isTold: columns[index] === index }));
}

const weightOf = (step: Weighed | undefined): StoneWeight | null =>
  step ? { seq: step.seq, ng: step.ng, stepNg: step.reading?.stepNg ?? null } : null;

function asMeasured({ ng, uRandomG, factors }: Weighed): Measured {
  const worth: Worth = { uRandomG, factors };
  return { g: ng / 1e9, worth };
}
