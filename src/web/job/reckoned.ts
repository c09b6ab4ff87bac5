// What the reckoning of a job rests on besides its own leaves, looked up once for a page: balances, listed tares, other open pieces, the log's size.
import type { Grounds } from '../../projections/job-reckoning.ts';
import { logSize } from '../../queries/sizes.ts';
import { shelfOn } from '../../store/shelf.ts';
import { lossHistory } from '../owner/loss-history.ts';
import type { Policy, Web } from '../session/context.ts';
import { balanceStory } from './balance-story.ts';

/** Grounds for any job; `but` is the job whose own pieces are not "other" pieces. */
export async function groundsFor(web: Web, policy: Policy | null, but?: string): Promise<Grounds> {
  const { read, keys } = web.store;
  const { balances } = await balanceStory(web.store);
  const { learned } = await lossHistory(web);
  return {
    balances,
    rateOf: (operation, family) => learned.rateOf(operation, family, but),
    size: await logSize(web.store),
    tares: [...(policy?.tares ?? [])].map(([name, ng]) => ({ name, ng })),
    others: (await shelfOn(read, keys).openPieces()).filter(({ stream }) => stream !== but),
  };
}
