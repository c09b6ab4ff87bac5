// What a balance may show and how far it may be out: accuracy classes, verification interval e, displayed step d.
import { massNg, NG_PER_UNIT } from '../units/mass.js';

/** UK SI 1995/1907 Sch. 2 Tables 1 and 3, paras 2.2, 3.1, 4.1; class II's 5,000 e and 50 e as OIML R 76-1 (memory). */
const CLASS_RULES = {
  I: { leastENg: 1_000_000, mostDivisions: Number.POSITIVE_INFINITY, leastLoad: [100, 100], bands: [50_000, 200_000] },
  II: { leastENg: 1_000_000, mostDivisions: 100_000, leastLoad: [20, 50], bands: [5_000, 20_000] },
  III: { leastENg: 100_000_000, mostDivisions: 10_000, leastLoad: [20, 20], bands: [500, 2_000] },
  IIII: { leastENg: 5_000_000_000, mostDivisions: 1_000, leastLoad: [10, 10], bands: [50, 200] },
};
const COARSE_NG = 100_000_000;
/** Largest error allowed at a load, counted in e and never in d (SI 1995/1907 Sch. 2, Table 3; in service twice: para 4.2); null beyond the class. */
export function permissibleError(accuracyClass, eNg, loadNg) {
  const { mostDivisions, bands } = CLASS_RULES[accuracyClass];
  if (loadNg > mostDivisions * eNg) return null;
  const halves = loadNg <= bands[0] * eNg ? 1 : loadNg <= bands[1] * eNg ? 2 : 3;
  return { initialNg: massNg((halves * eNg) / 2), inServiceNg: massNg(halves * eNg) };
}
/** Least load: in e, or in d where the balance shows finer than e (SI 1995/1907 Sch. 2, Table 1 and para 3.1). */
export function leastLoadNg(accuracyClass, eNg, stepNg) {
  const [fine, coarse] = CLASS_RULES[accuracyClass].leastLoad;
  return massNg((eNg < COARSE_NG ? fine : coarse) * stepNg);
}
/** What is wrong with an e and a step d of one balance, or null (SI 1995/1907 Sch. 2, paras 2.2.1 to 2.2.3 and 3.1). */
export function stepProblem(accuracyClass, unit, eNg, stepNg) {
  const [eDigit, stepDigit] = [leadingDigit(eNg, unit), leadingDigit(stepNg, unit)];
  if (![1, 2, 5].includes(stepDigit)) return 'step is not 1, 2 or 5';
  if (![1, 2, 5].includes(eDigit)) return 'e is not 1, 2 or 5';
  if (eNg < CLASS_RULES[accuracyClass].leastENg) return 'e is too small for the class';
  if (stepNg === eNg) return null;
  if (accuracyClass === 'III' || accuracyClass === 'IIII') return 'class shows no finer step';
  if (eDigit !== 1) return 'e must be a power of ten';
  const analytical = accuracyClass === 'I' && stepNg < 100_000 && eNg === 1_000_000;
  return analytical || (stepNg < eNg && eNg <= 10 * stepNg) ? null : 'step is not finer than e by up to ten';
}
const leadingDigit = (ng, unit) => Number((ng / NG_PER_UNIT[unit]).toExponential(9).split('e')[0]);
/** NIST HB 44 s. 2.20 Table 8: divisions d in the least load; class II as quoted by Minnesota Commerce, the others from memory. */
export function leastDivisionsUs(accuracyClass, stepNg) {
  const [fine, coarse] = CLASS_RULES[accuracyClass].leastLoad;
  return stepNg < COARSE_NG ? fine : coarse;
}
/** NIST HB 44 s. 2.20 Table 6: loads in d up to which the tolerance is 1, 2, 3 d; above, 5 d. Class II's first as quoted by Minnesota Commerce; the others from memory. */
const US_BANDS = {
  I: [50_000, 200_000, Number.POSITIVE_INFINITY],
  II: [5_000, 20_000, Number.POSITIVE_INFINITY],
  III: [500, 2_000, 4_000],
  IIII: [50, 200, 400],
};
/** US maintenance tolerance at a load, in service (NIST HB 44 s. 2.20 Table 6); at acceptance half of it. */
export function maintenanceToleranceNg(accuracyClass, stepNg, loadNg) {
  const band = US_BANDS[accuracyClass].findIndex((divisions) => loadNg <= divisions * stepNg);
  return massNg((band === -1 ? 5 : band + 1) * stepNg);
}
/** The coarsest step fit for a least load, both in one unit: 50 steps to the load (Oregon Dept of Agriculture, precious-metal scales). */
export const coarsestStep = (leastLoad) => leastLoad / 50;
/** The range a load is weighed in: the smallest that carries it; null when the balance cannot. */
export function rangeFor(balance, loadNg) {
  return balance.ranges.find(({ maxNg }) => loadNg <= maxNg) ?? null;
}
/** Why a balance is not the one for a load, or null: beyond its ranges, below its least load, or fewer than 50 steps of it. */
export function loadProblem(balance, loadNg) {
  const range = rangeFor(balance, loadNg);
  if (range === null) return 'beyond the balance';
  if (loadNg < (balance.minNg ?? leastLoadNg(balance.accuracyClass, balance.eNg, range.stepNg))) return 'below its least load';
  return range.stepNg > coarsestStep(loadNg) ? 'coarse for this load' : null;
}
/** Parameters of a balance of which only its steps are known: e = d, class II, s and linearity one step, checked at a fifth of its load (common practice, no source). */
export function assumedParameters(known) {
  const { id, unit, ranges, repeatabilityNg } = known;
  const [first] = ranges;
  if (first === undefined) throw new RangeError(`balance ${id} has no range`);
  const atNg = massNg(Math.round(first.maxNg / 5));
  const limitNg = permissibleError('II', first.stepNg, atNg)?.inServiceNg ?? 3 * first.stepNg;
  return {
    id,
    accuracyClass: 'II',
    unit,
    eNg: first.stepNg,
    ranges,
    repeatability: { sNg: repeatabilityNg ?? first.stepNg, readings: Number.POSITIVE_INFINITY },
    linearityNg: first.stepNg,
    eccentricity: { ng: 0, atNg },
    uGain: limitNg / atNg / Math.sqrt(3),
  };
}
