// A command decided but not written, so that what the ledger would refuse is told before anything is read back.
import type { Posted } from '../../book/codec.ts';
import { decideCommand } from '../../ledger/decide.ts';
import type { Line } from '../../ledger/leaf.ts';
import { overlayOn } from '../../ledger/overlay.ts';
import type { Thing } from '../../ledger/thing.ts';
import { logSize } from '../../queries/sizes.ts';
import { sha256 } from '../../store/crypto.ts';
import { shelfOn } from '../../store/shelf.ts';
import { civilDateOf } from '../../units/dates.ts';
import { type Ctx, policyFor, type Web, whoAsks } from '../session/context.ts';
import { first } from './posted.ts';
import { type Outcome, seenIn, toOutcome } from './write.ts';

/** What stands in the way of these lines, as if the PIN or password were right; null when they would be written. */
export async function tryOut(web: Web, c: Ctx, posted: Posted, lines: readonly Line[], job?: Thing): Promise<Outcome | null> {
  const { shop, zone, alone } = policyFor(c);
  const { store, random } = web;
  const at = web.clock();
  const of = job ? { job: job.id } : {};
  const decided = await store.snapshot(async (read) =>
    decideCommand(
      overlayOn(shelfOn(read, store.keys)),
      { id: first(posted, 'formKey'), by: whoAsks(c).id, auth: 'password', device: 'none', seen: seenIn(posted), lines, ...of },
      { log: store.log, seq: await logSize({ read }), shop, at, today: civilDateOf(at, zone), alone, sha256, random },
    ),
  );
  return 'answer' in decided ? toOutcome(decided.answer) : null;
}
