// Fine metal of a lot by its stamps, by the lowest its stamps lawfully mean, and what a refinery returned. Plain sums; what the balances can tell is elsewhere.
import { fineNg, karat, permille, permilleOf } from '../units/fineness.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { mulDiv } from '../units/muldiv.ts';
import { lowestLawful } from './fineness-law.ts';

export interface KaratParcel {
  readonly massNg: MassNg;
  readonly karat: number;
}

/** Fine gold if every stamp were exact. */
export function expectedFineNg(parcels: readonly KaratParcel[]): MassNg {
  return massNg(parcels.reduce((sum, parcel) => sum + fineNg(parcel.massNg, karat(parcel.karat)), 0));
}

/** The last day on which US law let a whole piece fall a karat short. */
const OLD_LAW = '1981-09-30';

/** Fine gold if every piece ran as low as US law let it before October 1981, one karat: 6 to 7 % less with nobody at fault. A floor; most run nearer. */
export function lowestFineOldUsNg(parcels: readonly KaratParcel[]): MassNg {
  const fine = (parcel: KaratParcel) => {
    const marked = { law: 'US', metal: 'gold', markedPermille: permilleOf(karat(parcel.karat)), madeOn: OLD_LAW } as const;
    return Math.round((parcel.massNg * (lowestLawful(marked, 'whole') ?? 0)) / 1000);
  };
  return massNg(parcels.reduce((sum, parcel) => sum + fine(parcel), 0));
}

export interface Melt {
  readonly sentNg: MassNg;
  readonly afterMeltNg: MassNg;
  /** Permille, two decimals at most. */
  readonly assayPermille: number;
  /** Percent of the fine metal that is paid, two decimals at most. */
  readonly payablePercent: number;
}
export interface Return {
  readonly meltLossPercent: number;
  readonly fineNg: MassNg;
  readonly payableFineNg: MassNg;
  /** Fine metal returned less expected; a shortage is negative. */
  readonly gapNg: MassNg;
  readonly gapPercent: number;
}

/** What a melt and assay return, beside the fine metal expected from the stamps. */
export function refineryReturn({ sentNg, afterMeltNg, assayPermille, payablePercent }: Melt, expectedNg: MassNg): Return {
  const returnedNg = fineNg(afterMeltNg, permille(assayPermille));
  return {
    meltLossPercent: ((sentNg - afterMeltNg) / sentNg) * 100,
    fineNg: returnedNg,
    payableFineNg: massNg(mulDiv(returnedNg, Math.round(payablePercent * 100), 10_000, 'half even')),
    gapNg: massNg(returnedNg - expectedNg),
    gapPercent: ((returnedNg - expectedNg) / expectedNg) * 100,
  };
}
