import { balancesIn } from '../../projections/balances.js';
import { told } from '../../projections/told.js';
import { entriesOfTypes } from '../../queries/entries.js';
import { growing } from '../../queries/growing.js';

/** The entries that speak of balances, and those that correct some entry. */
const OF_BALANCES = ['balance_put_in_service', 'balance_calibrated', 'balance_checked'];
const CORRECTED = 'corrected';
/** Balances by their entries. A reading rests on what its balance was before it, so an entry changes nothing earlier; a correction may. */
export const balanceStory = growing(
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
