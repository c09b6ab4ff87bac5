// What lots, stocks and skins have seen, told once and continued by the entries that came since.
import { readCorrected } from '../../ledger/corrections.ts';
import { NOTHING_TOLD, type Telling, toldOn } from '../../projections/told.ts';
import { entriesOfPools } from '../../queries/entries.ts';
import { growing } from '../../queries/growing.ts';

/** The entries of all lots, stocks and skins as `told` tells them; after a correction of an earlier one they are told anew. */
export const poolStory = growing<Telling>(
  () => NOTHING_TOLD,
  async (store, before, from, to) => {
    const within = async (first: number) => (await entriesOfPools(store, first)).filter(({ seq }) => seq < to);
    const fresh = await within(from);
    const own = new Set(fresh.map(({ hash }) => hash));
    const isCorrected = readCorrected(fresh).some(({ corrects }) => corrects && !own.has(corrects.of));
    return isCorrected ? toldOn(NOTHING_TOLD, await within(0)) : toldOn(before, fresh);
  },
);
