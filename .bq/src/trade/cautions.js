// When the cautions on hallmarked pieces are due: computed from the ledger's own weights, quiet for everyday work, never a bar.
import { massNg } from '../units/mass.js';
import { UK_HALLMARKS } from './fineness-law.js';

/** Hallmarking Act 1973 s5(4),(5), text as at 6 April 2007 (superseded; check current). Palladium was not yet in it. */
const ADDITION_LIMIT_NG = {
  gold: massNg(1_000_000_000),
  silver: massNg(5_000_000_000),
  platinum: massNg(500_000_000),
};
const MOST_COAT_MICROMETRES = 2;
/** Whether metal added to a piece stays outside the offence of altering a hallmarked article: same metal, not below its standard, character unchanged, not new ware, and no more than the lesser of the limit and half the weight before. */
export function ukAdditionGate(addition) {
  if (!addition.isHallmarked) return { gate: 'not-applicable', limitNg: null };
  const capNg = ADDITION_LIMIT_NG[addition.articleMetal];
  if (capNg === undefined) return { gate: 'assay-office-consent', limitNg: null };
  const limitNg = massNg(Math.min(capNg, Math.floor(addition.beforeNg / 2)));
  const isKept = !addition.isNewWare && addition.isCharacterUnaltered && addition.addedMetal === addition.articleMetal;
  const isExempt = isKept && addition.addedPermille >= addition.articlePermille && addition.addedNg <= limitNg;
  return { gate: isExempt ? 'exempt' : 'assay-office-consent', limitNg };
}
/** Whether the caution on additions is shown: beyond the gate, or within a tenth of it (the tenth is ours), and no consent on file. */
export function showsAdditionCaution(addition, hasConsent) {
  const { gate, limitNg } = ukAdditionGate(addition);
  if (gate === 'not-applicable' || hasConsent) return false;
  return gate === 'assay-office-consent' || (limitNg !== null && addition.addedNg * 10 >= limitNg * 9);
}
/** Whether a coat on a hallmarked piece is one the same section names: up to 2 µm of gold on gold, silver on silver or gold on silver, none below the standard. Rhodium is not named. */
export function ukCoatingGate({ articleMetal, articlePermille, coat, coatPermille, thickestMicrometres }) {
  const leastPermille = coat === articleMetal ? articlePermille : Math.min(...UK_HALLMARKS.gold.standards);
  const isNamed = (coat === articleMetal && (coat === 'gold' || coat === 'silver')) || (coat === 'gold' && articleMetal === 'silver');
  return isNamed && coatPermille >= leastPermille && thickestMicrometres <= MOST_COAT_MICROMETRES ? 'exempt' : 'assay-office-consent';
}
