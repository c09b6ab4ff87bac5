// Fine metal of a lot by its stamps, by the lowest its stamps lawfully mean, and what a refinery returned. Plain sums; what the balances can tell is elsewhere.
import { fineNg, karat, permille, permilleOf } from '../units/fineness.js';
import { massNg } from '../units/mass.js';
import { mulDiv } from '../units/muldiv.js';
import { lowestLawful } from './fineness-law.js';
/** Fine gold if every stamp were exact. */
export function expectedFineNg(parcels) {
  return massNg(parcels.reduce((sum, parcel) => sum + fineNg(parcel.massNg, karat(parcel.karat)), 0));
}
/** The last day on which US law let a whole piece fall a karat short. */
const OLD_LAW = '1981-09-30';
/** Fine gold if every piece ran as low as US law let it before October 1981, one karat: 6 to 7 % less with nobody at fault. A floor; most run nearer. */
export function lowestFineOldUsNg(parcels) {
  const fine = (parcel) => {
    const marked = { law: 'US', metal: 'gold', markedPermille: permilleOf(karat(parcel.karat)), madeOn: OLD_LAW };
    return Math.round((parcel.massNg * (lowestLawful(marked, 'whole') ?? 0)) / 1000);
  };
  return massNg(parcels.reduce((sum, parcel) => sum + fine(parcel), 0));
}
/** What a melt and assay return, beside the fine metal expected from the stamps. */
export function refineryReturn({ sentNg, afterMeltNg, assayPermille, payablePercent }, expectedNg) {
  const returnedNg = fineNg(afterMeltNg, permille(assayPermille));
  return {
    meltLossPercent: ((sentNg - afterMeltNg) / sentNg) * 100,
    fineNg: returnedNg,
    payableFineNg: massNg(mulDiv(returnedNg, Math.round(payablePercent * 100), 10_000, 'half even')),
    gapNg: massNg(returnedNg - expectedNg),
    gapPercent: ((returnedNg - expectedNg) / expectedNg) * 100,
  };
}
