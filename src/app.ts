// The web application: every resource behind one gate. No I/O at import.
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { ReadOnly } from './store/open.ts';
import { StorageFault } from './store/sqlite.ts';
import { assets } from './web/assets.ts';
import { balances } from './web/balances.ts';
import { bench } from './web/bench.ts';
import { calculator } from './web/calculator.ts';
import type { App, Env, Web } from './web/context.ts';
import { counter } from './web/counter.ts';
import { devices } from './web/devices.ts';
import { drafts } from './web/drafts.ts';
import { entries } from './web/entries.ts';
import { find } from './web/find.ts';
import { finish } from './web/finish.ts';
import { firstRun } from './web/first-run.ts';
import { flow } from './web/flow.ts';
import { gate, headers, sameOrigin } from './web/guard.ts';
import { handBack } from './web/hand-back.ts';
import { health } from './web/health.ts';
import { jobs } from './web/jobs.ts';
import { letter } from './web/letter.ts';
import { loss } from './web/loss.ts';
import { news } from './web/news.ts';
import { owner } from './web/owner.ts';
import { photos } from './web/photos.ts';
import { reckoning } from './web/reckoning.ts';
import { safe } from './web/safe.ts';
import { setup } from './web/setup.ts';
import { signIn } from './web/sign-in.ts';
import { slip } from './web/slip.ts';
import { stones } from './web/stones.ts';
import { takeIn } from './web/take-in.ts';
import { things } from './web/things.ts';
import { trail } from './web/trail.ts';

const RESOURCES = [
  assets,
  health,
  firstRun,
  signIn,
  counter,
  takeIn,
  slip,
  finish,
  handBack,
  jobs,
  entries,
  photos,
  bench,
  stones,
  letter,
  news,
  safe,
  owner,
  reckoning,
  loss,
  flow,
  things,
  find,
  trail,
  setup,
  calculator,
  balances,
  drafts,
  devices,
];
const LARGEST_BODY = 24 * 1024 * 1024;

/** Puts the resources together behind headers, origin check and route table. */
export function createApp(web: Web, onBug: (error: unknown, path: string) => void = () => undefined): App {
  const app = new Hono<Env>();
  app.use('*', headers, bodyLimit({ maxSize: LARGEST_BODY }), sameOrigin(web), gate(web));
  for (const resource of RESOURCES) app.route('/', resource(web));
  app.notFound((c) => c.text('There is no such page. Go back, or start from the Counter.', 404));
  app.onError((error, c) => {
    if (error instanceof ReadOnly) return c.text(`Not written. ${error.message}`, 503);
    if (error instanceof StorageFault)
      return c.text(`Not written (${error.code}). What you typed is still on the screen behind this one: go back and try again.`, 503);
    onBug(error, c.req.path);
    return c.text(
      'Not written: something in the program is wrong. Go back; what you typed is still there. The log of the program says more.',
      500,
    );
  });
  return app;
}
