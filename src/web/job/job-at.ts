// The job that an address names.
import type { Thing } from '../../ledger/thing.ts';
import { jobNamed } from '../../queries/things.ts';
import type { Ctx, Web } from '../session/context.ts';

/** The job that the address names, or null. */
export const jobAt = ({ store }: Web, c: Ctx): Promise<Thing | null> => jobNamed(store, c.req.param('job'));
