// How the program stands, in sentences: why nothing is written, what will soon stop it, what to look at. Every page and /readyz say the same.
import { statfs } from 'node:fs/promises';
import type { MiddlewareHandler } from 'hono';
import type { Env, Web } from './context.ts';

/** Below this nothing that matters is begun any more: a photograph, a batch and its write-ahead log need room together. */
const ROOM_BYTES = 32 * 1024 * 1024;

/** What keeps it from writing, now or soon; none where all is well. */
export async function troubles({ store }: Web): Promise<readonly string[]> {
  const { readOnly } = store;
  const waits = store.memoryWaits();
  if (readOnly !== null) return [`Nothing is written now. ${readOnly}`];
  const { bavail, bsize } = await statfs(store.dir);
  return [
    ...(waits === null ? [] : [`checkpoints.log cannot be written (${waits}). Free some space.`]),
    ...(bavail * bsize < ROOM_BYTES ? ['The disk is full, or nearly so. Free some space.'] : []),
  ];
}

/** The same, and what stops nothing and must be looked at all the same. */
export async function notices(web: Web): Promise<readonly string[]> {
  const clock = web.store.clockTrouble();
  return [...(await troubles(web)), ...(clock === null ? [] : [clock]), ...web.store.told];
}

/** Lets every page say how the program stands when it is made, after whoever asked was heard. */
export function standing(web: Web): MiddlewareHandler<Env> {
  return async function sayHowItStands(c, next) {
    c.set('standing', () => notices(web));
    return next();
  };
}
