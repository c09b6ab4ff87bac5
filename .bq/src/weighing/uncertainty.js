import { rangeFor } from './balance.js';

const NG_PER_G = 1e9;
/** Variance of a rectangular error of half-width `half` (JCGM 100, 4.3.7). */
const rectangular = (half) => half ** 2 / 3;
/** Variance of rounding to a step `step` (JCGM 100, F.2.2.1). */
const rounding = (step) => step ** 2 / 12;
/** u² = s² + d²/12 + d0²/12 + lin²/3 + (ecc·y)²/3 (EURAMET cg-18 form). The rounding terms stand in for a floor of s ≥ 0.41 d, which is never applied here. */
export function readingVariance({ s, step, zeroStep, linearity = 0, eccentricity, repeats = 1 }) {
  const offCentre = eccentricity === undefined ? 0 : eccentricity.relative * eccentricity.load;
  return (s ** 2 + rounding(step) + rounding(zeroStep)) / repeats + rectangular(linearity) + rectangular(offCentre);
}
/** u of the difference of two readings of one load; half-widths of what does not cancel (drift, permissible errors of two balances) come with the terms. */
export function uOfDifference(before, after, driftHalf) {
  return Math.sqrt(readingVariance(before) + readingVariance(after) + rectangular(driftHalf));
}
/** Root sum of squares of independent components (JCGM 100, 5.1.2). */
export function combined(components) {
  const variance = (c) => (c.shape === 'normal' ? c.u ** 2 : c.shape === 'rectangular' ? rectangular(c.half) : (c.U / c.k) ** 2);
  return Math.sqrt(components.reduce((sum, c) => sum + variance(c), 0));
}
/** u at a load from a calibration's expanded U (k = 2) at two loads, by a straight line between them. */
export function uFromCalibration(load, low, high) {
  return (low.U + ((high.U - low.U) * (load - low.load)) / (high.load - low.load)) / 2;
}
/** Relative u of a balance's drift within a day after a check weight passed with limit `limitNg`. */
export const driftAfterCheck = (limitNg, checkNg) => limitNg / checkNg / Math.sqrt(3);
/** Worth of a reading of `loadNg` on a balance; factors gain:<balance>:<epoch>, drift:<balance>:<day>, tare:<container>. Throws when the balance cannot carry it. */
export function worthOfReading(balance, loadNg, circumstances) {
  const range = rangeFor(balance, loadNg);
  if (range === null) throw new RangeError(`${loadNg} ng is beyond the balance ${balance.id}`);
  const { repeatability, linearityNg, eccentricity, uGain, id } = balance;
  const { epoch, drift, tare, repeats = 1 } = circumstances;
  const [loadG, stepG, sG] = [loadNg / NG_PER_G, range.stepNg / NG_PER_G, repeatability.sNg / NG_PER_G];
  const relative = eccentricity.ng / (2 * eccentricity.atNg);
  const terms = {
    s: sG,
    step: stepG,
    zeroStep: stepG,
    linearity: linearityNg / NG_PER_G,
    eccentricity: { relative, load: loadG },
    repeats,
  };
  const factors = [{ id: `gain:${id}:${epoch}`, sensitivityG: uGain * loadG }];
  if (drift) factors.push({ id: `drift:${id}:${drift.day}`, sensitivityG: drift.uRelative * loadG });
  if (tare) factors.push({ id: `tare:${tare.container}`, sensitivityG: -tare.uG });
  return {
    uRandomG: Math.sqrt(readingVariance(terms)),
    factors,
    sG: sG / Math.sqrt(repeats),
    dof: repeatability.readings - 1,
    sOf: `${id}:${epoch}`,
  };
}
/** Worth of an estimate between two limits, rectangular unless told otherwise (JCGM 100, 4.3.7); a formula's shared error is a factor. */
export function worthOfEstimate(lowNg, highNg, factors = []) {
  return { uRandomG: (highNg - lowNg) / NG_PER_G / Math.sqrt(12), factors };
}
/** The effect of each shared factor on a signed sum, in grams by factor id. */
function sharedEffects(terms) {
  const effects = new Map();
  for (const { sign, worth } of terms)
    for (const { id, sensitivityG } of worth.factors) effects.set(id, (effects.get(id) ?? 0) + sign * sensitivityG);
  return effects;
}
/** u in grams of a signed sum: u² = Σ a²u² + Σ over factors (Σ a·s)² (JCGM 100, 5.2.2). */
export function uOfSum(terms) {
  const own = terms.reduce((sum, { sign, worth }) => sum + (sign * worth.uRandomG) ** 2, 0);
  return Math.sqrt([...sharedEffects(terms).values()].reduce((sum, effect) => sum + effect ** 2, own));
}
/** Effective degrees of freedom of a sum with u = `uG` (Welch–Satterthwaite, JCGM 100, G.4.1): the s of one balance is one estimate, however many weighings lean on it. */
export function effectiveDof(terms, uG) {
  const estimates = new Map();
  for (const [i, { sign, worth }] of terms.entries()) {
    const { sG = 0, dof = Number.POSITIVE_INFINITY, sOf = `${i}` } = worth;
    const estimate = estimates.get(sOf) ?? { variance: 0, dof };
    estimate.variance += (sign * sG) ** 2;
    estimates.set(sOf, estimate);
  }
  const sum = [...estimates.values()].reduce((total, { variance, dof }) => total + variance ** 2 / dof, 0);
  return sum === 0 ? Number.POSITIVE_INFINITY : uG ** 4 / sum;
}
/** Covariance in g² = diag(random²) + Σ s·sᵀ over factors. */
export function covariance(worths) {
  const matrix = worths.map((worth, i) => worths.map((_, j) => (i === j ? worth.uRandomG ** 2 : 0)));
  const byFactor = new Map();
  for (const [i, { factors }] of worths.entries())
    for (const { id, sensitivityG } of factors) byFactor.set(id, [...(byFactor.get(id) ?? []), { i, sensitivityG }]);
  for (const members of byFactor.values())
    for (const a of members)
      for (const b of members) {
        const row = matrix[a.i];
        if (row) row[b.i] = (row[b.i] ?? 0) + a.sensitivityG * b.sensitivityG;
      }
  return matrix;
}
