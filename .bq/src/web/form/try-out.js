import { decideCommand } from '../../ledger/decide.js';
import { overlayOn } from '../../ledger/overlay.js';
import { logSize } from '../../queries/sizes.js';
import { sha256 } from '../../store/crypto.js';
import { shelfOn } from '../../store/shelf.js';
import { civilDateOf } from '../../units/dates.js';
import { policyFor, whoAsks } from '../session/context.js';
import { first } from './posted.js';
import { seenIn, toOutcome } from './write.js';
/** What stands in the way of these lines, as if the PIN or password were right; null when they would be written. */
export async function tryOut(web, c, posted, lines) {
  const { shop, zone, alone } = policyFor(c);
  const { store, random } = web;
  const at = web.clock();
  const decided = await store.snapshot(async (read) =>
    decideCommand(
      overlayOn(shelfOn(read, store.keys)),
      { id: first(posted, 'formKey'), by: whoAsks(c).id, auth: 'password', device: 'none', seen: seenIn(posted), lines },
      { log: store.log, seq: await logSize({ read }), shop, at, today: civilDateOf(at, zone), alone, sha256, random },
    ),
  );
  return 'answer' in decided ? toOutcome(decided.answer) : null;
}
