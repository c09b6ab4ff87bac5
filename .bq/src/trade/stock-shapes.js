// Volumes and masses of plain stock: wire, strip, sheet and the flat band. Lengths in mm, densities in g/cm³.
import { ALLOY_BAND_PERCENT, estimateOf } from './estimate.js';

/** Share of width × thickness that is metal. Half-round is taken as half an ellipse of full height; real profiles are fuller or flatter. */
const FILL = { round: Math.PI / 4, rect: 1, halfRound: Math.PI / 4 };
const FORMULA = { round: 'stock-round-1', rect: 'stock-rect-1', halfRound: 'stock-half-round-1' };
/** ± percent: the alloy alone, and for half-round the profile too (10 %: common practice, no source). */
const BAND = { round: ALLOY_BAND_PERCENT, rect: ALLOY_BAND_PERCENT, halfRound: 10 };
/** Round wire of this diameter. */
export const roundWire = (diameterMm) => ({ section: 'round', widthMm: diameterMm, thicknessMm: diameterMm });
/** Area of a cross-section in mm². */
const sectionMm2 = ({ section, widthMm, thicknessMm }) => FILL[section] * widthMm * thicknessMm;
/** Mass of a length of stock. */
export function stockMass(stock, lengthMm, density) {
  return estimateOf((sectionMm2(stock) * lengthMm * density) / 1000, BAND[stock.section], FORMULA[stock.section]);
}
/** Mass of sheet. */
export function sheetMass(lengthMm, widthMm, thicknessMm, density) {
  return estimateOf((lengthMm * widthMm * thicknessMm * density) / 1000, ALLOY_BAND_PERCENT, 'stock-sheet-1');
}
/** Volume in mm³ of a band bent from this stock over an inside diameter: π(ID + t) × section (CCR). */
export const bandMm3 = (stock, insideDiameterMm) => Math.PI * (insideDiameterMm + stock.thicknessMm) * sectionMm2(stock);
/** Mass of a band bent from this stock over an inside diameter. */
export function bandMass(stock, insideDiameterMm, density) {
  return estimateOf((bandMm3(stock, insideDiameterMm) * density) / 1000, BAND[stock.section], `band-${FORMULA[stock.section]}`);
}
