// Fine metal in a lot and what the refinery made of it: weight and fineness are judged apart, and the money at stake is ± U.
import { uOfSum } from '../weighing/uncertainty.js';
import { normalTail } from './distributions.js';
/** Sums a lot: f = m·φ, φ rectangular between its limits and shared by all of one alloy batch, balance gains shared by name (JCGM 100, 5.2.2). */
export function sumLot(items) {
  const shares = items.map(({ lowShare, highShare }) => (lowShare + highShare) / 2);
  const massG = items.reduce((sum, item) => sum + item.massG, 0);
  const fineG = items.reduce((sum, item, i) => sum + item.massG * (shares[i] ?? 0), 0);
  const share = massG > 0 ? fineG / massG : 0;
  const weighed = (weight) => items.map(({ worth }, i) => ({ sign: weight(i), worth }));
  const assayed = (scale) => items.map((item) => ({ sign: scale, worth: alloyWorth(item) }));
  return {
    massG,
    uMassG: uOfSum(weighed(() => 1)),
    fineG,
    uFineG: uOfSum([...weighed((i) => shares[i] ?? 0), ...assayed(1)]),
    share,
    uShare: massG > 0 ? uOfSum([...weighed((i) => ((shares[i] ?? 0) - share) / massG), ...assayed(1 / massG)]) : 0,
  };
}
const alloyWorth = ({ massG, lowShare, highShare, alloy }) => ({
  uRandomG: 0,
  factors: [{ id: `alloy:${alloy}`, sensitivityG: (massG * (highShare - lowShare)) / Math.sqrt(12) }],
});
/** Compares a lot with its outturn before any deduction; |E_n| to 1 within, to 1.5 ask, beyond differs. `price` is of a gram of fine metal. */
export function checkSettlement(expected, settled, price) {
  const fineG = settled.massG * settled.share;
  const uFineG = Math.hypot(settled.share * settled.uMassG, settled.massG * settled.uShare);
  const shortG = expected.fineG - fineG;
  const uG = Math.hypot(expected.uFineG, uFineG);
  const z = shortG / uG;
  const en = Math.abs(z) / 2;
  return {
    fineG,
    uFineG,
    shortG,
    uG,
    z,
    en: z / 2,
    pShort: normalTail(z),
    byWeightG: ((expected.massG - settled.massG) * (expected.share + settled.share)) / 2,
    byFinenessG: ((expected.share - settled.share) * (expected.massG + settled.massG)) / 2,
    zWeight: (expected.massG - settled.massG) / Math.hypot(expected.uMassG, settled.uMassG),
    zFineness: (expected.share - settled.share) / Math.hypot(expected.uShare, settled.uShare),
    verdict: en <= 1 ? 'within what both can tell' : en <= 1.5 ? 'ask for a second assay' : 'differs',
    detectableG: 3.2897072539029444 * uG,
    money: price === undefined ? null : { short: shortG * price, U: 2 * uG * price },
  };
}
/** Running bias of one refinery over its lots: Σz/√n, standard normal when it is fair; a steady 1 σ shave passes 3 after about nine lots. */
export const runningBias = (zs) => zs.reduce((sum, z) => sum + z, 0) / Math.sqrt(Math.max(1, zs.length));
/** Inverse-variance mean of estimates of one quantity, with its u: for shipper, receiver and umpire once a cause is cleared. */
export function weightedMean(estimates) {
  const weight = estimates.reduce((sum, { u }) => sum + u ** -2, 0);
  return { value: estimates.reduce((sum, { value, u }) => sum + value * u ** -2, 0) / weight, u: weight ** -0.5 };
}
