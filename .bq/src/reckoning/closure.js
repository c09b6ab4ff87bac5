// One job: does what came in equal what went out, how much could hide below the balance's steps, and is a loss beyond the usual?
import { massNg } from '../units/mass.js';
import { effectiveDof, uOfSum } from '../weighing/uncertainty.js';
import { normalTails } from './distributions.js';
import { ACTION_ALPHA, dustUpper, LEAST_U_G, levelAt, lossTail, NOTE_ALPHA, Z95 } from './loss-law.js';
/** Version of this arithmetic; every verdict handed out names it. */
export const CALC_VERSION = '2';
/** Closes the weighings of one job. */
export function closure(weighings, { usual, unweighed = false, fitnessG = Number.POSITIVE_INFINITY } = {}) {
  const lossNg = massNg(weighings.reduce((sum, { sign, ng }) => sum + sign * ng, 0));
  const uG = Math.max(LEAST_U_G, uOfSum(weighings));
  const stepNg = Math.max(0, ...weighings.map((weighing) => weighing.stepNg ?? 0));
  const error = { uG, stepNg, dof: effectiveDof(weighings, uG) };
  const checked = !unweighed && [1, -1].every((side) => weighings.some(({ sign }) => sign === side));
  const judged = judge(lossNg, error, usual);
  const z = lossNg / 1e9 / uG;
  return {
    calcVersion: CALC_VERSION,
    ...{ lossNg, uG, dof: error.dof ?? Number.POSITIVE_INFINITY, stepNg, z, plainP: normalTails(z), fitnessG },
    mostLostG: Math.max(0, lossNg / 1e9 + Z95 * uG),
    ...judged,
    verdict: checked ? verdictOf(Math.min(judged.pLoss, judged.pGain), 2 * uG <= fitnessG) : 'not checked',
  };
}
/** Every level and chance of one loss, from the one law of it. */
function judge(lossNg, error, usual) {
  const law = usual ? { ...error, usual } : error;
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
function findingOf(pWeighing, pLoss, pGain) {
  if (pGain <= NOTE_ALPHA) return 'gain';
  if (pWeighing > NOTE_ALPHA) return 'closes';
  return pLoss > NOTE_ALPHA ? 'usual loss' : 'loss';
}
/** A finding stands however wide the weighings are; agreement only where they are fit to show it. */
function verdictOf(p, isFit) {
  if (p > NOTE_ALPHA) return isFit ? 'agrees' : 'cannot tell';
  return p > ACTION_ALPHA ? 'weigh again' : 'does not agree';
}
