// The daily check with a certified weight: it passes, warns or fails, and never edits a weighing.
import { massNg } from '../units/mass.js';
import { permissibleError } from './balance.js';
/** Reading of a certified weight against the in-service error allowed at that load; warns beyond half (common practice, no source). Null beyond the class. */
export function dailyCheck(accuracyClass, eNg, certifiedNg, readingNg) {
  const allowed = permissibleError(accuracyClass, eNg, certifiedNg);
  if (allowed === null) return null;
  const deviationNg = massNg(readingNg - certifiedNg);
  const size = Math.abs(deviationNg);
  const result = size > allowed.inServiceNg ? 'fail' : 2 * size > allowed.inServiceNg ? 'warn' : 'pass';
  return { deviationNg, allowedNg: allowed.inServiceNg, result };
}
/** The ids of one balance's weighings in doubt: those between a failed check and the passes (or warnings) on either side of it. */
export function weighingsInDoubt(checks, weighings) {
  const ordered = checks.toSorted((a, b) => a.atMs - b.atMs);
  const doubted = ({ atMs }) =>
    ordered.findLast((check) => check.atMs < atMs)?.result === 'fail' || ordered.find((check) => check.atMs >= atMs)?.result === 'fail';
  return weighings.filter(doubted).map(({ id }) => id);
}
/** USP <41> least weight: 2 s ≤ 0.10 % of the load, s not below 0.41 d. No bench is bound by it; it shows how far 0.1 % is. */
export function uspLeastWeight(sNg, stepNg) {
  const flooredNg = Math.max(sNg, (41 * stepNg) / 100);
  return { sNg: flooredNg, leastNg: 2000 * flooredNg };
}
/** USP <41> accuracy: within 0.10 % with a weight of 5 to 100 % of the capacity. */
export function uspAccuracy(certifiedNg, capacityNg, readingNg) {
  const deviationNg = readingNg - certifiedNg;
  const fits = 20 * certifiedNg >= capacityNg && certifiedNg <= capacityNg;
  return { percent: (100 * deviationNg) / certifiedNg, pass: fits && Math.abs(1000 * deviationNg) <= certifiedNg };
}
