// The balances over time, folded once and brought up to date by the entries that speak of them.
import type { Corrected } from '../../ledger/corrections.ts';
import type { Kept } from '../../ledger/leaf.ts';
import { entryType, readingsIn } from '../../ledger/registry.ts';
import { type Balances, balancesIn } from '../../projections/balances.ts';
import { told } from '../../projections/told.ts';
import { entriesOfTypes } from '../../queries/entries.ts';
import { growing } from '../../queries/growing.ts';

/** The entries that speak of balances, and those that correct some entry. */
const OF_BALANCES = ['balance_put_in_service', 'balance_calibrated', 'balance_checked'];
const CORRECTED = 'corrected';

interface BalanceStory {
  readonly kept: readonly Kept[];
  /** The same object for as long as nothing is said of a balance. */
  readonly balances: Balances;
  /** For each entry, in order: from when on readings may be worth something else than before it. */
  readonly changes: readonly number[];
}

/** Balances by their entries. A reading rests on what its balance was before it, so an entry changes nothing earlier; a correction may. */
export const balanceStory = growing<BalanceStory>(
  () => ({ kept: [], balances: balancesIn([]), changes: [] }),
  async (store, before, from, to) => {
    const found = (await entriesOfTypes(store, [...OF_BALANCES, CORRECTED], from)).filter(({ seq }) => seq < to);
    const known = new Set([...before.kept, ...found].filter(({ leaf }) => leaf.type !== CORRECTED).map(({ seq }) => seq));
    const fresh = found.filter(({ leaf }) => leaf.type !== CORRECTED || known.has(Number(leaf.data.seq)));
    if (fresh.length === 0) return before;
    const kept = [...before.kept, ...fresh];
    const changes = fresh.map(({ leaf }) => (leaf.type === CORRECTED ? Number.NEGATIVE_INFINITY : leaf.occurredAt));
    return { kept, balances: balancesIn(told(kept)), changes: [...before.changes, ...changes] };
  },
);

/** Whether a weight in it was read on a balance that failed a check before or after. */
export async function isInDoubt(store: Parameters<typeof balanceStory>[0], { leaf, data, occurredAt }: Corrected): Promise<boolean> {
  const readings = readingsIn(entryType(leaf.type), data).filter(({ reading }) => reading.balance !== undefined);
  if (readings.length === 0 || leaf.type === 'balance_checked') return false;
  const { balances: known } = await balanceStory(store);
  return readings.some(({ reading }) => known.isDoubted(reading, occurredAt));
}
