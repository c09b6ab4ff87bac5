// The web application: every resource behind one gate. No I/O at import.
import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { StorageFault } from './store/connection.ts';
import { ReadOnly } from './store/guard.ts';
import { balances } from './web/bench/balances.ts';
import { bench } from './web/bench/bench.ts';
import { calculator } from './web/bench/calculator.ts';
import { safe } from './web/bench/safe.ts';
import { whose } from './web/bench/whose.ts';
import { counter } from './web/counter/counter.ts';
import { find } from './web/counter/find.ts';
import { handBack } from './web/counter/hand-back.ts';
import { slip } from './web/counter/slip.ts';
import { takeIn } from './web/counter/take-in.ts';
import { drafts } from './web/form/drafts.ts';
import { NotTaken } from './web/form/posted.ts';
import { entries } from './web/job/entries.ts';
import { finish } from './web/job/finish.ts';
import { jobs } from './web/job/job.ts';
import { letter } from './web/job/letter.ts';
import { news } from './web/job/news.ts';
import { photos } from './web/job/photos.ts';
import { reckoning } from './web/job/reckoning.ts';
import { stones } from './web/job/stones.ts';
import { things } from './web/job/things.ts';
import { baseline } from './web/owner/baseline.ts';
import { flow } from './web/owner/flow.ts';
import { loss } from './web/owner/loss.ts';
import { owner } from './web/owner/owner.ts';
import { trail } from './web/owner/trail.ts';
import { assets } from './web/session/assets.ts';
import type { App, Env, Web } from './web/session/context.ts';
import { gate, headers, knownHost, sameOrigin } from './web/session/guard.ts';
import { health } from './web/session/health.ts';
import { oneMoment } from './web/session/moment.ts';
import { remembered } from './web/session/remembered.ts';
import { signIn } from './web/session/sign-in.ts';
import { standing } from './web/session/standing.ts';
import { noSuchPage, trouble } from './web/session/trouble.ts';
import { devices } from './web/setup/devices.ts';
import { firstRun } from './web/setup/first-run.ts';
import { setup } from './web/setup/setup.ts';
import { terms } from './web/setup/terms.ts';

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
  whose,
  owner,
  reckoning,
  loss,
  baseline,
  flow,
  things,
  find,
  trail,
  setup,
  terms,
  calculator,
  balances,
  drafts,
  devices,
];

/** Puts the resources together behind headers, origin check and route table. */
export function createApp(web: Web, onBug: (error: unknown, path: string) => void = () => undefined): App {
  const app = new Hono<Env>();
  app.use('*', compress(), headers, standing(web), knownHost(web), sameOrigin(web), oneMoment(web), gate(web), remembered(web));
  for (const resource of RESOURCES) app.route('/', resource(web));
  app.notFound(noSuchPage);
  app.onError((error, c) => {
    if (error instanceof NotTaken) return trouble(c, error.status, error.message);
    if (error instanceof ReadOnly) return trouble(c, 503, `Not written. ${error.message}`);
    if (error instanceof StorageFault) return trouble(c, 503, `${error.message} What you typed is still on the screen behind this one.`);
    onBug(error, c.req.path);
    const say = 'Not written: something in the program is wrong. Go back; what you typed is still there. The log of the program says more.';
    return trouble(c, 500, say);
  });
  return app;
}
