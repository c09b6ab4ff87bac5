// What the reckoning of a job rests on besides its own leaves, looked up once for a page: balances, listed tares, other open pieces, the log's size.
import { type Balances, balancesIn } from '../../projections/balances.ts';
import type { Grounds } from '../../projections/job-reckoning.ts';
import { rateFrom } from '../../projections/loss.ts';
import { told } from '../../projections/told.ts';
import { keptAll, shelfOn } from '../../store/shelf.ts';
import { lossHistory } from '../owner/loss-history.ts';
import type { Policy, Web } from '../session/context.ts';

const BALANCE_ENTRIES = `SELECT seq, leaf, leaf_hash FROM entry_link JOIN entry USING (seq)
  WHERE stream = ? AND type IN ('balance_put_in_service', 'balance_calibrated', 'balance_checked', 'corrected') ORDER BY n`;

/** The balances over time, by the entries that speak of them. */
export async function balancesOf(web: Web, policy: Policy | null): Promise<Balances> {
  const { read, keys } = web.store;
  const rows = policy ? await read(BALANCE_ENTRIES, [policy.shop]) : [];
  return balancesIn(told(await keptAll(read, keys, rows)));
}

/** Grounds for any job; `but` is the job whose own pieces are not "other" pieces. */
export async function groundsFor(web: Web, policy: Policy | null, but?: string): Promise<Grounds> {
  const { read, keys } = web.store;
  const balances = await balancesOf(web, policy);
  const losses = (await lossHistory(web, balances)).filter(({ job }) => job !== but);
  const [size] = await read('SELECT COALESCE(MAX(seq) + 1, 0) AS n FROM entry');
  return {
    balances,
    rateOf: (operation, family) => rateFrom(losses, operation, family),
    size: Number(size?.n ?? 0),
    tares: [...(policy?.tares ?? [])].map(([name, ng]) => ({ name, ng })),
    others: (await shelfOn(read, keys).openPieces()).filter(({ stream }) => stream !== but),
  };
}
