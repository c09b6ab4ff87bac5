// Whether the program is alive, and whether it can serve: for the machine that watches it.
import { Hono } from 'hono';
import { logSize } from '../../queries/sizes.ts';
import type { Env, Resource } from './context.ts';
import { notices, troubles } from './standing.ts';

export const health: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/healthz', (c) => c.json({ alive: true }));
  app.get('/readyz', async (c) => {
    const entries = await logSize(web.store);
    const isSigned = (web.store.head()?.size ?? 0) === entries;
    const [trouble = null] = [...(await troubles(web)), ...(isSigned ? [] : ['The newest entries are not signed.'])];
    const told = await notices(web);
    return c.json({ ready: trouble === null, entries, trouble, told, readOnly: web.store.readOnly }, trouble === null ? 200 : 503);
  });
  return app;
};
