// What a coat weighs: area × thickness × density. Half a micrometre of rhodium on a band is about 4 mg, which no 0.01 g balance shows.
import { ELEMENT_DENSITY } from './alloys.js';
import { estimateOf } from './estimate.js';

/** g/cm³ of what is plated. Deposits from a bath are porous or alloyed and may be a tenth lighter. */
const COAT_DENSITY = { rhodium: ELEMENT_DENSITY.Rh, gold: ELEMENT_DENSITY.Au, silver: ELEMENT_DENSITY.Ag };
/** mg on a square centimetre for each micrometre: 1.241 for rhodium (a forum's 40 mg/dm² is three times too small). */
export const coatMgPerCm2PerMicrometre = (coat) => COAT_DENSITY[coat] / 10;
/** All faces of a flat band in mm²: 2π(ID + t)(w + t). */
export function flatBandAreaMm2(insideDiameterMm, widthMm, thicknessMm) {
  return 2 * Math.PI * (insideDiameterMm + thicknessMm) * (widthMm + thicknessMm);
}
/** Mass of a coat; ± half, since a bath does not throw evenly (common practice, no source). */
export function coatMass(coat, areaMm2, micrometres) {
  return estimateOf((areaMm2 * micrometres * COAT_DENSITY[coat]) / 1e6, 50, 'plating-1');
}
