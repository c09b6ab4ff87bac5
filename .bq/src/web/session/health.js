// Whether the program is alive, and whether it can serve: for the machine that watches it.
import { Hono } from 'hono';
import { logSize } from '../../queries/sizes.js';
export const health = (web) => {
  const app = new Hono();
  app.get('/healthz', (c) => c.json({ alive: true }));
  app.get('/readyz', async (c) => {
    const ready = web.store.readOnly === null;
    return c.json({ ready, entries: await logSize(web.store), readOnly: web.store.readOnly }, ready ? 200 : 503);
  });
  return app;
};
