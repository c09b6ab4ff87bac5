// An estimate of mass: what a formula says, how far it may be off, and which formula it was. An estimate never proves a match.
import { type MassNg, massNg } from '../units/mass.ts';

/** A stable name of a formula and its version; once stored it is never given to another formula. */
export type FormulaId = `${string}-${1 | 2}`;
export interface MassEstimate {
  readonly massNg: MassNg;
  readonly plusMinusNg: MassNg;
  readonly formula: FormulaId;
}

/** Alloys of one karat differ by as much in density (published tables STG and TMT against the reciprocal rule). */
export const ALLOY_BAND_PERCENT = 3;

/** An estimate of `grams` within ± `bandPercent` of itself. Throws on a size that is not a number of zero or more. */
export function estimateOf(grams: number, bandPercent: number, formula: FormulaId): MassEstimate {
  if (!(grams >= 0)) throw new RangeError(`${formula} needs sizes of zero or more, got ${grams} g`);
  return { massNg: massNg(Math.round(grams * 1e9)), plusMinusNg: massNg(Math.round(grams * bandPercent * 1e7)), formula };
}

/** Whether a weighed mass lies within the estimate's band; inside proves nothing, outside asks a question. */
export function agreesWith({ massNg: ng, plusMinusNg }: MassEstimate, weighedNg: MassNg): 'consistent' | 'flag' {
  return Math.abs(weighedNg - ng) <= plusMinusNg ? 'consistent' : 'flag';
}

/** Whether a balance with this step shows a mass at all: 4 mg of rhodium or one 2 mm stone does not show at 0.01 g. */
export const showsAt = (stepNg: MassNg, ng: MassNg): boolean => ng >= stepNg;
