// Sizing a ring: blank length, the piece let in or cut out, and the metal it moves. A stretched or compressed ring moves none.
import { massNg } from '../units/mass.js';
import { diameterMm, usStepMm } from '../units/ring-size.js';
import { ALLOYS } from './alloys.js';
import { stockMass } from './stock-shapes.js';
/** Length in mm to bend a ring of this inside diameter from stock of this thickness: π(ID + t), and what the shop allows for a wide band (0.5 to 2 mm above 4 mm, by bench). */
export function blankLengthMm(insideDiameterMm, thicknessMm, allowanceMm = 0) {
  return Math.PI * (insideDiameterMm + thicknessMm) + allowanceMm;
}
const CLEAN_JOINTS = { kerfMm: 0, filedMm: 0 };
/** Lengths for going from one inside circumference to another in mm, whatever the thickness. Up: one saw cut, and the insert makes good kerf and filing; down: two cuts, whose kerf and filing are part of what goes. */
export function sizingLengths(fromMm, toMm, { kerfMm, filedMm } = CLEAN_JOINTS) {
  const growMm = toMm - fromMm;
  if (growMm >= 0)
    return { insertMm: growMm === 0 ? 0 : growMm + kerfMm + filedMm, cutOutMm: 0, lemelMm: growMm === 0 ? 0 : kerfMm + filedMm };
  const lemelMm = Math.min(-growMm, 2 * kerfMm + filedMm);
  return { insertMm: 0, cutOutMm: -growMm - lemelMm, lemelMm };
}
/** Metal of `sizes` US sizes of this shank; by stretching or compressing it is nothing. */
export function sizingMass(shank, density, sizes, how = 'cut') {
  const mass = stockMass(shank, how === 'stretch' ? 0 : usStepMm(Math.abs(sizes)).circumference, density);
  return { ...mass, formula: `sizing-${mass.formula}` };
}
/** Rules of thumb in print, to set beside our own figure and not in its place. */
const RULES_OF_THUMB = {
  platinum: { words: 'almost 1 g per two sizes', density: ALLOYS.Pt950Ru.density, source: 'KIR' },
};
/** Metal of `sizes` US sizes of a flat band, beside the printed rule of thumb for that metal; null where none was read. */
export function sizingBesideRule(metal, band, sizes) {
  const rule = RULES_OF_THUMB[metal];
  return rule ? { mass: sizingMass({ ...band, section: 'rect' }, rule.density, sizes), printed: rule.words } : null;
}
/** Thickness in mm of a usual shank, where nobody measured it (common practice, no source). */
const SHANK_MM = 1.5;
/** Metal that a change of inside circumference moves in a ring of this weight, were it as heavy all round, in ng: a shank is lighter than its head, so this is near the most. */
export function sizingOfRingNg(ringNg, fromMm, toMm) {
  return massNg(Math.round((ringNg * Math.abs(toMm - fromMm)) / blankLengthMm(diameterMm(fromMm), SHANK_MM)));
}
