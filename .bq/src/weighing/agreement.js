// Whether two measured values agree as far as their uncertainties can tell, and whether that is fit for the question asked.
/** E_n = (x − reference)/√(U² + U_ref²), expanded uncertainties (ISO 13528, 9.7, as in NIST Dataplot EN SCORE). */
export const enScore = (x, reference, U, referenceU) => (x - reference) / Math.hypot(U, referenceU);
/** Two weighings of what may be one item, with U (k = 2) each: a wide U is never agreement but 'inconclusive' above the limit of fitness. */
export function sameItem(before, after, beforeU, afterU, fitness) {
  const U = Math.hypot(beforeU, afterU);
  const en = enScore(after, before, afterU, beforeU);
  const verdict = Math.abs(en) > 1 ? 'different' : U <= fitness ? 'consistent' : 'inconclusive';
  return { difference: after - before, U, en, zeta: 2 * en, verdict };
}
/** Non-binary decision with a guard band w on both sides of the limit (ILAC-G8:09/2019, 4.2.3); all three in one unit, whole where they can be. */
export function guardBand(deviation, limit, w) {
  const size = Math.abs(deviation);
  if (size <= limit - w) return 'pass';
  if (size <= limit) return 'conditional pass';
  return size <= limit + w ? 'conditional fail' : 'fail';
}
