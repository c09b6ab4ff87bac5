// What a stone should weigh from its measurements: an estimate with a named formula. It can ask a question, never prove that two stones are one.
import { agreesWith, estimateOf } from './estimate.js';
import { GEMS } from './gems.js';
import { GIRDLE_FACTORS, STONE_FORMULAS } from './stone-formulas.js';
/** ± percent of an estimate: the stone in the open, or measured in its setting (MGC). */
export const BAND_PERCENT = { open: 5, obstructed: 15 };
/** Length over width to two decimals, halves up. */
export const lengthWidthRatio = (lengthMm, widthMm) => Math.round((lengthMm / widthMm) * 100) / 100;
/** The girdle's factor for a diameter or a fancy cut's width in mm; the columns meet at 4.15 and 7 mm. */
export function girdleFactor(girdle, diameterMm) {
  return GIRDLE_FACTORS[girdle][diameterMm < 4.15 ? 0 : diameterMm < 7 ? 1 : 2];
}
/** Mass of a diamond by its measurements; `girdle` is a factor, 1 where it is medium or not seen. Throws for a formula of coloured stones. */
export function diamondMass(formula, size, access, girdle = 1) {
  const found = formulaOf(formula, 'diamond');
  return estimateOf((carats(found, size) * girdle) / 5, BAND_PERCENT[access], formula);
}
/** Mass of a coloured stone by its measurements and specific gravity. Throws for a formula of diamonds. */
export function colouredMass(formula, size, specificGravity, access) {
  const found = formulaOf(formula, 'coloured');
  return estimateOf((carats(found, size) * specificGravity) / 5, BAND_PERCENT[access], formula);
}
/** Mass of a sphere of this diameter in mm, such as a pearl. */
export function sphereMass(diameterMm, specificGravity, access) {
  return colouredMass('sphere-1', { lengthMm: diameterMm, widthMm: diameterMm, depthMm: diameterMm }, specificGravity, access);
}
/** Depth of the diamond that charts by diameter speak of, as a share of the diameter. */
const CHART_DEPTH = 0.6;
/** Mass of a round brilliant by diameter alone; charts differ by 15 %, below 2 mm by 30 % (MM1, MM2). */
export function roundByDiameter(diameterMm) {
  const size = { lengthMm: diameterMm, widthMm: diameterMm, depthMm: CHART_DEPTH * diameterMm };
  return estimateOf(carats(STONE_FORMULAS['diamond-round-1'], size) / 5, diameterMm < 2 ? 30 : 15, 'diamond-by-diameter-1');
}
/** How much heavier one gem is than another of the same size: zirconia for diamond +65 %, moissanite −9 %, which hides in the band of an estimate. */
export const simulantRatio = (from, toSpecificGravity) => toSpecificGravity / GEMS[from].nominal;
/** A weighed stone beside its estimate: the verdict, and by how many percent it is off. */
export function besideEstimate(estimate, weighedNg) {
  return { verdict: agreesWith(estimate, weighedNg), offPercent: (weighedNg / estimate.massNg - 1) * 100 };
}
function carats({ coefficient, base }, { lengthMm, widthMm, depthMm }) {
  const area = base === 'length × width' ? lengthMm * widthMm : ((lengthMm + widthMm) / 2) ** 2;
  return (typeof coefficient === 'number' ? coefficient : nearest(coefficient, lengthMm / widthMm)) * area * depthMm;
}
/** The coefficient printed for the ratio nearest to this one, as the tables are used (GGM). */
function nearest(table, ratio) {
  const [first, ...rest] = table;
  if (!first) throw new Error('a table of coefficients is empty');
  return rest.reduce((best, next) => (Math.abs(next[0] - ratio) < Math.abs(best[0] - ratio) ? next : best), first)[1];
}
function formulaOf(id, kind) {
  const formula = STONE_FORMULAS[id];
  if (formula.kind !== kind) throw new RangeError(`${id} is for ${formula.kind} stones`);
  return formula;
}
