// The web application: every resource behind one gate. No I/O at import.
import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { StorageFault } from './store/connection.js';
import { ReadOnly } from './store/open.js';
import { balances } from './web/bench/balances.js';
import { bench } from './web/bench/bench.js';
import { calculator } from './web/bench/calculator.js';
import { safe } from './web/bench/safe.js';
import { counter } from './web/counter/counter.js';
import { find } from './web/counter/find.js';
import { handBack } from './web/counter/hand-back.js';
import { slip } from './web/counter/slip.js';
import { takeIn } from './web/counter/take-in.js';
import { drafts } from './web/form/drafts.js';
import { NotTaken } from './web/form/posted.js';
import { entries } from './web/job/entries.js';
import { finish } from './web/job/finish.js';
import { jobs } from './web/job/job.js';
import { letter } from './web/job/letter.js';
import { news } from './web/job/news.js';
import { photos } from './web/job/photos.js';
import { reckoning } from './web/job/reckoning.js';
import { stones } from './web/job/stones.js';
import { things } from './web/job/things.js';
import { flow } from './web/owner/flow.js';
import { loss } from './web/owner/loss.js';
import { owner } from './web/owner/owner.js';
import { trail } from './web/owner/trail.js';
import { assets } from './web/session/assets.js';
import { gate, headers, knownHost, sameOrigin } from './web/session/guard.js';
import { health } from './web/session/health.js';
import { oneMoment } from './web/session/moment.js';
import { signIn } from './web/session/sign-in.js';
import { noSuchPage, trouble } from './web/session/trouble.js';
import { devices } from './web/setup/devices.js';
import { firstRun } from './web/setup/first-run.js';
import { setup } from './web/setup/setup.js';

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
/** Puts the resources together behind headers, origin check and route table. */
export function createApp(web, onBug = () => undefined) {
  const app = new Hono();
  app.use('*', compress(), headers, knownHost(web), sameOrigin(web), oneMoment(web), gate(web));
  for (const resource of RESOURCES) app.route('/', resource(web));
  app.notFound(noSuchPage);
  app.onError((error, c) => {
    if (error instanceof NotTaken) return trouble(c, error.status, error.message);
    if (error instanceof ReadOnly) return trouble(c, 503, `Not written. ${error.message}`);
    if (error instanceof StorageFault)
      return trouble(c, 503, `Not written (${error.code}). What you typed is still on the screen behind this one: go back and try again.`);
    onBug(error, c.req.path);
    const say = 'Not written: something in the program is wrong. Go back; what you typed is still there. The log of the program says more.';
    return trouble(c, 500, say);
  });
  return app;
}
