// The job that an address names.
import type { Thing } from '../../ledger/thing.ts';
import { thingOf } from '../../store/shelf.ts';
import type { Ctx, Web } from '../session/context.ts';

/** The job that the address names, or null. */
export async function jobAt(web: Web, c: Ctx): Promise<Thing | null> {
  const [row] = await web.store.read("SELECT state FROM thing WHERE id = ? AND kind = 'job'", [c.req.param('job') ?? '']);
  return row ? thingOf(row) : null;
}
