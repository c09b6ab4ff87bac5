// The counter: what is in the house, and a piece taken in.
import { Hono } from 'hono';
import { Counter } from '../../views/counter.tsx';
import { holderOf } from '../ledger/thing.ts';
import { SHEETS } from '../sheets/index.ts';
import { formatCivilDate } from '../units/dates.ts';
import { type Env, policyFor, type Resource, thingsOf } from './context.ts';
import { jobThings } from './form.ts';
import { entryAt } from './ledger-lines.ts';
import { respond } from './negotiate.ts';
import { readPosted } from './posted.ts';
import { type FormOf, showFormPage, submitForm } from './submit.ts';
import { wordsFor } from './words.ts';

export const counter: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/', async (c) => {
    policyFor(c);
    const jobs = (await thingsOf(web, 'job')).filter(({ status }) => status !== 'closed' && status !== 'withdrawn');
    const rows = await Promise.all(
      jobs.map(async (job) => {
        const pieces = (await jobThings(web, job.id)).filter(({ kind }) => kind === 'piece');
        const holder = pieces[0] ? holderOf(pieces[0], job) : null;
        return {
          id: job.id,
          bag: job.says.bag ?? '',
          metal: pieces[0]?.says.metal ?? 'other',
          what: pieces.map((piece) => wordsFor(web, piece)).join(', '),
          customer: web.directory.nameOf(web.directory.customerOf(job.id) ?? '') ?? '',
          status: job.status ?? 'open',
          promise: job.promise ? formatCivilDate(job.promise) : '',
          holder: holder ? (web.directory.nameOf(holder) ?? holder) : '',
        };
      }),
    );
    return respond(c, { title: 'Counter', current: '/', json: { jobs: rows }, body: Counter({ rows }) });
  });
  const takeIn: FormOf = {
    fields: SHEETS['take-in'].fields,
    form: SHEETS['take-in'].form,
    action: '/take-in',
    current: '/',
    next: (from) => `/taken-in/${from}`,
    lines: (data) => SHEETS['take-in'].lines(data as never),
  };
  app.get('/take-in', (c) => showFormPage(web, c, takeIn, { typed: new Map(DEFAULTS) }));
  app.post('/take-in', async (c) => submitForm(web, c, takeIn, (await readPosted(c)).posted));
  app.get('/taken-in/:seq', async (c) => {
    const kept = await entryAt(web, Number(c.req.param('seq')));
    const job = [0, 1].map((step) => (kept?.seq ?? 0) + step);
    for (const seq of job) {
      const stream = (await entryAt(web, seq))?.leaf;
      if (typeof stream?.data.job === 'string') return c.redirect(`/jobs/${stream.data.job}?written=${seq}`, 303);
    }
    return c.notFound();
  });
  return app;
};

/** What most take-ins begin with. */
const DEFAULTS: [string, string[]][] = [
  ['broughtBy', ['customer']],
  ['owner', ['customer']],
  ['channel', ['counter']],
  ['priceKind', ['fixed']],
  ['dust', ['shop']],
  ['cutMetal', ['customer']],
  ['oldParts', ['customer']],
  ['agreedBy', ['signature']],
  ['terms', ['1']],
];
