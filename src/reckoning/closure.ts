// One job: does what came in equal what went out, how much could hide below the balance's steps, and is a loss beyond the usual?
import { type MassNg, massNg } from '../units/mass.ts';
import { effectiveDof, uOfSum, type Worth } from '../weighing/uncertainty.ts';
import { normalTails, studentTail, studentUpper } from './distributions.ts';

/** Version of this arithmetic; every verdict handed out names it. */
export const CALC_VERSION = '1';
/** Chance of a false note (at the bench: "weigh again now") and of a false action (to the owner), each for one side of one job. */
export const NOTE_ALPHA = 0.05;
export const ACTION_ALPHA = 0.001;
/** Upper 5 % point of the normal distribution. */
export const Z95 = 1.6448536269514722;
/** No weight is known better than 1 µg, the finest a balance of this trade shows: keeps a variance off zero. */
export const LEAST_U_G = 1e-6;

/** A net weighing of something that came in (+1) or went out (−1), with the step it was read to. */
export interface Weighing {
  readonly id: string;
  readonly sign: 1 | -1;
  readonly ng: MassNg;
  readonly worth: Worth;
  readonly stepNg?: MassNg;
}
/** Spread of a loss that was read in steps: u includes the rounding. `usual` is the mean working loss and its spread between jobs. */
export interface Spread {
  readonly uG: number;
  readonly stepNg: number;
  readonly dof?: number;
  readonly usual?: UsualLoss;
}
export interface UsualLoss {
  readonly meanG: number;
  readonly tauG: number;
}

/** √(u² − d²/12), widened by the spread of the usual loss. */
function smoothU({ uG, stepNg, usual }: Spread): number {
  return Math.max(LEAST_U_G, Math.sqrt(Math.max(0, uG ** 2 - (stepNg / 1e9) ** 2 / 12) + (usual?.tauG ?? 0) ** 2));
}
const halfStepG = ({ stepNg }: Spread): number => stepNg / 2e9;

/** Chance of a loss of `lossNg` or more, read in steps, when nothing (or no more than usual) was lost: 1 − Φ((r − μ − d/2)/√(u² − d²/12 + τ²)). */
export function lossTail(lossNg: number, spread: Spread): number {
  const beyondG = lossNg / 1e9 - (spread.usual?.meanG ?? 0) - halfStepG(spread);
  return studentTail(beyondG / smoothU(spread), spread.dof ?? Number.POSITIVE_INFINITY);
}

/** Both sides: min(1, 2·tail(|r|)), 1 when the loss is zero. */
export const eitherTail = (lossNg: number, spread: Spread): number =>
  lossNg === 0 ? 1 : Math.min(1, 2 * lossTail(Math.abs(lossNg), spread));

/** What a level of suspicion means on these balances. */
export interface Level {
  /** Smallest loss, a multiple of the step, whose chance is no more than `alpha`. */
  readonly flagNg: number;
  readonly trueAlpha: number;
  /** A loss this large is flagged 95 times in 100. */
  readonly detectableG: number;
}

/** Flag value, its true chance and the detectable loss at `alpha` for readings in steps (derived; confirmed by simulation). */
export function levelAt(alpha: number, spread: Spread): Level {
  const u = smoothU(spread);
  const edgeG = studentUpper(alpha, spread.dof ?? Number.POSITIVE_INFINITY) * u + halfStepG(spread) + (spread.usual?.meanG ?? 0);
  const { stepNg } = spread;
  let flagNg = stepNg === 0 ? edgeG * 1e9 : Math.ceil((edgeG * 1e9) / stepNg) * stepNg;
  if (stepNg > 0 && lossTail(flagNg - stepNg, spread) <= alpha) flagNg -= stepNg;
  if (stepNg > 0 && lossTail(flagNg, spread) > alpha) flagNg += stepNg;
  return { flagNg, trueAlpha: lossTail(flagNg, spread), detectableG: flagNg / 1e9 - halfStepG(spread) + Z95 * u };
}

type Finding = 'closes' | 'usual loss' | 'loss' | 'gain';
export type Verdict = 'agrees' | 'weigh again' | 'does not agree' | 'not checked';
export interface Closure {
  readonly calcVersion: string;
  /** Σ in − Σ out, exact; a loss is positive. */
  readonly lossNg: MassNg;
  readonly uG: number;
  readonly dof: number;
  readonly stepNg: number;
  /** r/u and its plain chance on both sides: information; the levels use the steps. */
  readonly z: number;
  readonly plainP: number;
  readonly pLoss: number;
  readonly pGain: number;
  readonly note: Level;
  readonly action: Level;
  /** With 95 % confidence no more than this was lost. */
  readonly mostLostG: number;
  /** Chance of this loss or more in the usual run of such work. */
  readonly pBeyondUsual: number | null;
  readonly finding: Finding;
  readonly verdict: Verdict;
}

/** Closes the weighings of one job. `unweighed`: something came in or went out without a weight, so that nothing can be said. */
export function closure(
  weighings: readonly Weighing[],
  options: { readonly usual?: UsualLoss; readonly unweighed?: boolean } = {},
): Closure {
  const lossNg = massNg(weighings.reduce((sum, { sign, ng }) => sum + sign * ng, 0));
  const uG = Math.max(LEAST_U_G, uOfSum(weighings));
  const stepNg = Math.max(0, ...weighings.map((weighing) => weighing.stepNg ?? 0));
  const spread: Spread = { uG, stepNg, dof: effectiveDof(weighings, uG) };
  const z = lossNg / 1e9 / uG;
  const pLoss = lossTail(lossNg, spread);
  const pGain = lossTail(-lossNg, spread);
  const pBeyondUsual = options.usual ? lossTail(lossNg, { ...spread, usual: options.usual }) : null;
  const checked = !options.unweighed && [1, -1].every((side) => weighings.some(({ sign }) => sign === side));
  return {
    calcVersion: CALC_VERSION,
    lossNg,
    uG,
    dof: spread.dof ?? Number.POSITIVE_INFINITY,
    stepNg,
    z,
    plainP: normalTails(z),
    pLoss,
    pGain,
    note: levelAt(NOTE_ALPHA, spread),
    action: levelAt(ACTION_ALPHA, spread),
    mostLostG: Math.max(0, lossNg / 1e9 + Z95 * uG),
    pBeyondUsual,
    finding: findingOf(pLoss, pGain, pBeyondUsual),
    verdict: checked ? verdictOf(Math.min(pBeyondUsual ?? pLoss, pGain)) : 'not checked',
  };
}

function findingOf(pLoss: number, pGain: number, pBeyondUsual: number | null): Finding {
  if (pGain <= NOTE_ALPHA) return 'gain';
  if (pLoss > NOTE_ALPHA) return 'closes';
  return pBeyondUsual !== null && pBeyondUsual > NOTE_ALPHA ? 'usual loss' : 'loss';
}

function verdictOf(p: number): Verdict {
  if (p > NOTE_ALPHA) return 'agrees';
  return p > ACTION_ALPHA ? 'weigh again' : 'does not agree';
}
