// Stones: counted exactly, compared by E_n, and never said to be the same by weight alone.
import { uOfSum } from '../weighing/uncertainty.js';
import { chiSquaredTail, normalTails } from './distributions.js';
/** A stone (or a parcel in one pan) in and out: E_n = d/2u with the shared factors cancelling where they are shared; above the limit of fitness a wide u never agrees. */
export function compareWeights(before, after, fitnessG = Number.POSITIVE_INFINITY) {
  const differenceG = after.g - before.g;
  const uG = uOfSum([
    { sign: -1, worth: before.worth },
    { sign: 1, worth: after.worth },
  ]);
  const z = differenceG / uG;
  return { differenceG, uG, en: z / 2, z, p: normalTails(z), verdict: verdictOf(Math.abs(z) / 2, 2 * uG, fitnessG) };
}
/** |E_n| to 1 agrees, to 1.5 weigh again (clean both times), beyond does not agree (ISO 13528; 1.5 is z = 3, its action limit). */
function verdictOf(en, U, fitnessG) {
  if (en > 1.5) return 'does not agree';
  if (en > 1) return 'weigh again';
  return U <= fitnessG ? 'agrees' : 'cannot tell';
}
/** A parcel: the count first and exact, then its total weight; a wrong count never agrees. */
export function compareParcels(before, after, fitnessG) {
  const missing = before.stones - after.stones;
  const compared = compareWeights(before, after, fitnessG);
  return { ...compared, missing, verdict: missing === 0 ? compared.verdict : 'does not agree' };
}
/** What agreement is worth: Π N(d; 0, u²)/N(d; 0, u² + 2σ²) over features taken as independent; from 3 strong, from 1 some (derived). */
export function identityWorth(features) {
  const logRatio = ({ difference, u, spread }) => {
    const wide = Math.hypot(u, Math.SQRT2 * spread);
    return (Math.log(wide / u) - ((difference / u) ** 2 - (difference / wide) ** 2) / 2) / Math.LN10;
  };
  const log10Ratio = features.reduce((sum, feature) => sum + logRatio(feature), 0);
  const distance = features.reduce((sum, { difference, u }) => sum + (difference / u) ** 2, 0);
  const worth = log10Ratio >= 3 ? 'strong' : log10Ratio >= 1 ? 'some' : 'cannot tell';
  return { log10Ratio, distance, p: chiSquaredTail(distance, features.length), worth };
}
/** Share of other stones of the same trade size that would also agree within 2u by this one measure. */
export const shareAlsoAgreeing = (u, spread) => 1 - normalTails((2 * u) / Math.hypot(u, Math.SQRT2 * spread));
/** An unlabelled piece against open holdings: those it could be, nearest first; `only` when one agrees and every other is beyond 1.5. */
export function couldBe(found, holdings) {
  const candidates = holdings
    .map(({ id, ...weight }) => ({ id, en: compareWeights(weight, found).en }))
    .filter(({ en }) => Math.abs(en) <= 1.5)
    .sort((a, b) => Math.abs(a.en) - Math.abs(b.en));
  const [best, second] = candidates;
  return { candidates, only: best && !second && Math.abs(best.en) <= 1 ? best.id : null };
}
