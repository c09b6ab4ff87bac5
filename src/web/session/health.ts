// Whether the program is alive, and whether it can serve: for the machine that watches it.
import { Hono } from 'hono';
import type { Env, Resource } from './context.ts';

export const health: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/healthz', (c) => c.json({ alive: true }));
  app.get('/readyz', async (c) => {
    const [row] = await web.store.read('SELECT COALESCE(MAX(seq) + 1, 0) AS size FROM entry');
    const ready = web.store.readOnly === null;
    return c.json({ ready, entries: Number(row?.size), readOnly: web.store.readOnly }, ready ? 200 : 503);
  });
  return app;
};
