// An estimate of mass: what a formula says, how far it may be off, and which formula it was. An estimate never proves a match.
import { massNg } from '../units/mass.js';
/** Alloys of one karat differ by as much in density (published tables STG and TMT against the reciprocal rule). */
export const ALLOY_BAND_PERCENT = 3;
/** An estimate of `grams` within ± `bandPercent` of itself. Throws on a size that is not a number of zero or more. */
export function estimateOf(grams, bandPercent, formula) {
  if (!(grams >= 0)) throw new RangeError(`${formula} needs sizes of zero or more, got ${grams} g`);
  return { massNg: massNg(Math.round(grams * 1e9)), plusMinusNg: massNg(Math.round(grams * bandPercent * 1e7)), formula };
}
/** Whether a weighed mass lies within the estimate's band; inside proves nothing, outside asks a question. */
export function agreesWith({ massNg: ng, plusMinusNg }, weighedNg) {
  return Math.abs(weighedNg - ng) <= plusMinusNg ? 'consistent' : 'flag';
}
/** Whether a balance with this step shows a mass at all: 4 mg of rhodium or one 2 mm stone does not show at 0.01 g. */
export const showsAt = (stepNg, ng) => ng >= stepNg;
