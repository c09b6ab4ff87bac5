import { rateFrom } from '../../projections/loss.js';
import { logSize } from '../../queries/sizes.js';
import { shelfOn } from '../../store/shelf.js';
import { lossHistory } from '../owner/loss-history.js';
import { balanceStory } from './balance-story.js';
/** Grounds for any job; `but` is the job whose own pieces are not "other" pieces. */
export async function groundsFor(web, policy, but) {
  const { read, keys } = web.store;
  const { balances } = await balanceStory(web.store);
  const losses = (await lossHistory(web)).jobs.filter(({ job }) => job !== but);
  return {
    balances,
    rateOf: (operation, family) => rateFrom(losses, operation, family),
    size: await logSize(web.store),
    tares: [...(policy?.tares ?? [])].map(([name, ng]) => ({ name, ng })),
    others: (await shelfOn(read, keys).openPieces()).filter(({ stream }) => stream !== but),
  };
}
