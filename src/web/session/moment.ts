// A page shows one moment: everything it reads of the ledger is as it was when it began, however many write meanwhile.
import type { MiddlewareHandler } from 'hono';
import type { Env, Web } from './context.ts';

/** Only pages that are asked for: whoever writes must see what was written. */
export function oneMoment(web: Web): MiddlewareHandler<Env> {
  return async function readInOneMoment(c, next) {
    return c.req.method === 'GET' || c.req.method === 'HEAD' ? web.store.snapshot(() => next()) : next();
  };
}
