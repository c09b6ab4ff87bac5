// The web application: every resource behind one gate. No I/O at import.
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { ReadOnly } from './store/open.ts';
import { StorageFault } from './store/sqlite.ts';
import { balances } from './web/bench/balances.ts';
import { bench } from './web/bench/bench.ts';
import { calculator } from './web/bench/calculator.ts';
import { safe } from './web/bench/safe.ts';
import { counter } from './web/counter/counter.ts';
import { find } from './web/counter/find.ts';
import { handBack } from './web/counter/hand-back.ts';
import { slip } from './web/counter/slip.ts';
import { takeIn } from './web/counter/take-in.ts';
import { drafts } from './web/form/drafts.ts';
import { entries } from './web/job/entries.ts';
import { finish } from './web/job/finish.ts';
import { jobs } from './web/job/job.ts';
import { letter } from './web/job/letter.ts';
import { news } from './web/job/news.ts';
import { photos } from './web/job/photos.ts';
import { reckoning } from './web/job/reckoning.ts';
import { stones } from './web/job/stones.ts';
import { things } from './web/job/things.ts';
import { flow } from './web/owner/flow.ts';
import { loss } from './web/owner/loss.ts';
import { owner } from './web/owner/owner.ts';
import { trail } from './web/owner/trail.ts';
import { assets } from './web/session/assets.ts';
import type { App, Env, Web } from './web/session/context.ts';
import { gate, headers, sameOrigin } from './web/session/guard.ts';
import { health } from './web/session/health.ts';
import { signIn } from './web/session/sign-in.ts';
import { devices } from './web/setup/devices.ts';
import { firstRun } from './web/setup/first-run.ts';
import { setup } from './web/setup/setup.ts';

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
