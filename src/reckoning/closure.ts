// One job: does what came in equal what went out, how much could hide below the balance's steps, and is a loss beyond the usual?
import { type MassNg, massNg } from '../units/mass.ts';
import { effectiveDof, uOfSum, type Worth } from '../weighing/uncertainty.ts';
import { normalTails } from './distributions.ts';
import {
  ACTION_ALPHA,
  dustUpper,
  LEAST_U_G,
  type Level,
  levelAt,
  lossTail,
  NOTE_ALPHA,
  type Spread,
  type UsualLoss,
  Z95,
} from './loss-law.ts';

/** Version of this arithmetic; every verdict handed out names it. */
export const CALC_VERSION = '2';
/** A net weighing of something that came in (+1) or went out (−1), with the step it was read to. */
export interface Weighing {
  readonly id: string;
  readonly sign: 1 | -1;
  readonly ng: MassNg;
  readonly worth: Worth;
  readonly stepNg?: MassNg;
}
type Finding = 'closes' | 'usual loss' | 'loss' | 'gain';
export type Verdict = 'agrees' | 'cannot tell' | 'weigh again' | 'does not agree' | 'not checked';
export interface Closure {
  readonly calcVersion: string;
  /** Σ in − Σ out, exact; a loss is positive. */
  readonly lossNg: MassNg;
  /** Weighing error alone. */
  readonly uG: number;
  readonly dof: number;
  readonly stepNg: number;
  /** r/u and its plain chance on both sides: information; the levels use the steps. */
  readonly z: number;
  readonly plainP: number;
  /** Chance of this loss or more by weighing error alone, and with usual dust; chance of this gain, for which no dust is reckoned, since there may have been none. */
  readonly pWeighing: number;
  readonly pLoss: number;
  readonly pGain: number;
  /** Levels of a loss, usual dust included, and of a gain. */
  readonly note: Level;
  readonly action: Level;
  readonly gainNote: Level;
  readonly gainAction: Level;
  readonly usual: UsualLoss | null;
  /** Nineteen in twenty such jobs leave no more dust than this; 0 where the work makes none. */
  readonly dustMostG: number;
  /** With 95 % confidence no more than this was lost. */
  readonly mostLostG: number;
  /** Weighings with a wider 2u than this cannot say that they agree. */
  readonly fitnessG: number;
  readonly finding: Finding;
  readonly verdict: Verdict;
}
interface Options {
  readonly usual?: UsualLoss;
  /** Something came in or went out without a weight, so that nothing can be said. */
  readonly unweighed?: boolean;
  readonly fitnessG?: number;
}

/** Closes the weighings of one job. */
export function closure(
  weighings: readonly Weighing[],
  { usual, unweighed = false, fitnessG = Number.POSITIVE_INFINITY }: Options = {},
): Closure {
  const lossNg = massNg(weighings.reduce((sum, { sign, ng }) => sum + sign * ng, 0));
  const uG = Math.max(LEAST_U_G, uOfSum(weighings));
  const stepNg = Math.max(0, ...weighings.map((weighing) => weighing.stepNg ?? 0));
  const error: Spread = { uG, stepNg, dof: effectiveDof(weighings, uG) };
  const checked = !unweighed && [1, -1].every((side) => weighings.some(({ sign }) => sign === side));
  const judged = judge(lossNg, error, usual);
  const z = lossNg / 1e9 / uG;
  return {
    calcVersion: CALC_VERSION,
    ...{ lossNg, uG, dof: error.dof ?? Number.POSITIVE_INFINITY, stepNg, z, plainP: normalTails(z), fitnessG },
    mostLostG: Math.max(0, lossNg / 1e9 + Z95 * uG),
    ...judged,
    verdict: checked ? verdictOf(judged, uG, fitnessG) : 'not checked',
  };
}

type Judged = Pick<
  Closure,
  'pWeighing' | 'pLoss' | 'pGain' | 'note' | 'action' | 'gainNote' | 'gainAction' | 'usual' | 'dustMostG' | 'finding'
>;

/** Every level and chance of one loss, from the one law of it. */
function judge(lossNg: number, error: Spread, usual: UsualLoss | undefined): Judged {
  const law: Spread = usual ? { ...error, usual } : error;
  const [pWeighing, pLoss, pGain] = [lossTail(lossNg, error), lossTail(lossNg, law), lossTail(-lossNg, error)];
  const [gainNote, gainAction] = [levelAt(NOTE_ALPHA, error), levelAt(ACTION_ALPHA, error)];
  return {
    ...{ pWeighing, pLoss, pGain, gainNote, gainAction },
    note: usual ? levelAt(NOTE_ALPHA, law) : gainNote,
    action: usual ? levelAt(ACTION_ALPHA, law) : gainAction,
    usual: usual ?? null,
    dustMostG: usual ? dustUpper(usual, Z95) : 0,
    finding: findingOf(pWeighing, pLoss, pGain),
  };
}

/** The same weighings judged by another usual loss: what a job is worth once the shop has learned more. */
export function judgedAnew(closed: Closure, usual: UsualLoss | undefined): Closure {
  const { lossNg, uG, stepNg, dof, fitnessG, verdict } = closed;
  const judged = judge(lossNg, { uG, stepNg, dof }, usual);
  return { ...closed, ...judged, verdict: verdict === 'not checked' ? verdict : verdictOf(judged, uG, fitnessG) };
}

function findingOf(pWeighing: number, pLoss: number, pGain: number): Finding {
  if (pGain <= NOTE_ALPHA) return 'gain';
  if (pWeighing > NOTE_ALPHA) return 'closes';
  return pLoss > NOTE_ALPHA ? 'usual loss' : 'loss';
}

/** A finding stands however wide the weighings are; agreement only where they are fit to show it. */
function verdictOf({ pLoss, pGain }: Judged, uG: number, fitnessG: number): Verdict {
  const p = Math.min(pLoss, pGain);
  if (p > NOTE_ALPHA) return 2 * uG <= fitnessG ? 'agrees' : 'cannot tell';
  return p > ACTION_ALPHA ? 'weigh again' : 'does not agree';
}
