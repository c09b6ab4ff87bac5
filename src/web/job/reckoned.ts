// What the reckoning of a job rests on besides its own leaves, looked up once for a page: balances, listed tares, other open pieces, the log's size.
import { type Balances, balancesIn } from '../../projections/balances.ts';
import type { Grounds } from '../../projections/job-reckoning.ts';
import { rateFrom } from '../../projections/loss.ts';
import { told } from '../../projections/told.ts';
import { entriesOfTypes, withCorrections } from '../../queries/entries.ts';
import { logSize } from '../../queries/sizes.ts';
import { shelfOn } from '../../store/shelf.ts';
import { lossHistory } from '../owner/loss-history.ts';
import type { Policy, Web } from '../session/context.ts';

/** The entries that speak of balances. */
const OF_BALANCES = ['balance_put_in_service', 'balance_calibrated', 'balance_checked'];

/** The balances over time, by the entries that speak of them. */
export async function balancesOf({ store }: Web): Promise<Balances> {
  return balancesIn(told(await withCorrections(store, await entriesOfTypes(store, OF_BALANCES))));
}

/** Grounds for any job; `but` is the job whose own pieces are not "other" pieces. */
export async function groundsFor(web: Web, policy: Policy | null, but?: string): Promise<Grounds> {
  const { read, keys } = web.store;
  const balances = await balancesOf(web);
  const losses = (await lossHistory(web, balances)).filter(({ job }) => job !== but);
  return {
    balances,
    rateOf: (operation, family) => rateFrom(losses, operation, family),
    size: await logSize(web.store),
    tares: [...(policy?.tares ?? [])].map(([name, ng]) => ({ name, ng })),
    others: (await shelfOn(read, keys).openPieces()).filter(({ stream }) => stream !== but),
  };
}
