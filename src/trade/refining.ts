// Fine metal of a lot by its stamps, by the lowest its stamps lawfully mean, and what a refinery returned. Plain sums; what the balances can tell is elsewhere.
import { fineNg, karat, permille, permilleOf } from '../units/fineness.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { mulDiv } from '../units/muldiv.ts';
import { usGoldMinimum } from './fineness-law.ts';

export interface KaratParcel {
  readonly massNg: MassNg;
  readonly karat: number;
}

/** Fine gold if every stamp were exact. */
export function expectedFineNg(parcels: readonly KaratParcel[]): MassNg {
  return massNg(parcels.reduce((sum, parcel) => sum + fineNg(parcel.massNg, karat(parcel.karat)), 0));
}

/** Fine gold if every piece ran as low as US law let it before 1981, one karat: 6 to 7 % less with nobody at fault. A floor; most run nearer. */
export function lowestFinePre1981Ng(parcels: readonly KaratParcel[]): MassNg {
  const floor = (parcel: KaratParcel) => usGoldMinimum(permilleOf(karat(parcel.karat)), 'whole', 'pre1981');
  return massNg(parcels.reduce((sum, parcel) => sum + Math.round((parcel.massNg * floor(parcel)) / 1000), 0));
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
