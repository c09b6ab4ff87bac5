// Whether the program is alive, and whether it can serve: for the machine that watches it.
import { statfs } from 'node:fs/promises';
import { Hono } from 'hono';
import { logSize } from '../../queries/sizes.ts';
import type { Env, Resource, Web } from './context.ts';

/** Below this nothing that matters is begun any more: a photograph, a batch and its write-ahead log need room together. */
const ROOM_BYTES = 32 * 1024 * 1024;

export const health: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/healthz', (c) => c.json({ alive: true }));
  app.get('/readyz', async (c) => {
    const entries = await logSize(web.store);
    const isSigned = (web.store.head()?.size ?? 0) === entries;
    const trouble = web.store.readOnly ?? (await roomTrouble(web)) ?? (isSigned ? null : 'The newest entries are not signed.');
    return c.json({ ready: trouble === null, entries, trouble, readOnly: web.store.readOnly }, trouble === null ? 200 : 503);
  });
  return app;
};

async function roomTrouble({ store }: Web): Promise<string | null> {
  const waits = store.memoryWaits();
  if (waits !== null) return `checkpoints.log cannot be written (${waits}). Free some space.`;
  const { bavail, bsize } = await statfs(store.dir);
  return bavail * bsize < ROOM_BYTES ? 'The disk is full, or nearly so. Free some space.' : null;
}
