// One job: where it is, whether it reckons, what comes next, and its ledger; and the way home.
import { Hono } from 'hono';
import { JobView } from '../../views/job.tsx';
import { holderOf, placeOf, sumOf, type Thing } from '../ledger/thing.ts';
import { reckonJob } from '../projections/job-reckoning.ts';
import { thingOf } from '../store/shelf.ts';
import { formatCivilDate } from '../units/dates.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web, whoAsks } from './context.ts';
import { expectedWords, jobThings } from './form.ts';
import { entriesOf, ledgerLines } from './ledger-lines.ts';
import { respond } from './negotiate.ts';
import { nextEntries, titleOf } from './next-entry.ts';
import { groundsFor } from './reckoned.ts';
import { wordsFor } from './words.ts';

export const jobs: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/jobs/:job', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const things = await jobThings(web, job.id);
    const kept = await entriesOf(web, job.id);
    const lines = await ledgerLines(web, policyFor(c), kept);
    const pieces = things.filter(({ kind }) => kind === 'piece');
    const holder = pieces[0] ? holderOf(pieces[0], job) : null;
    const place = placeOf(pieces[0] ?? job, job);
    const { next, others } = nextEntries(job, things, whoAsks(c).id);
    const reckoned = reckonJob(kept, await groundsFor(web, policyFor(c), job.id));
    const written = lines.find(({ seq }) => String(seq) === c.req.query('written'));
    const facts = {
      bag: job.says.bag ?? '',
      metal: pieces[0]?.says.metal ?? 'other',
      title: pieces.map((piece) => wordsFor(web, piece)).join(', ') || 'Nothing received yet',
      customer: web.directory.nameOf(web.directory.customerOf(job.id) ?? '') ?? null,
      holder: holder && (web.directory.nameOf(holder) ?? holder),
      place: place && (await placeWords(web, place)),
      status: job.status ?? 'open',
      promise: job.promise ? formatCivilDate(job.promise) : null,
    };
    const expected = pieces.map((piece) => ({
      words: wordsFor(web, piece),
      expected: expectedWords(piece, policyFor(c).parameters),
      known: 'ng' in sumOf(piece.expected),
    }));
    const links = others.filter((name) => name !== next).map((name) => [`/jobs/${job.id}/write/${name}`, titleOf(name)] as const);
    const nextLink =
      next === null
        ? null
        : next === 'hand-back'
          ? ([`/jobs/${job.id}/hand-back`, 'Hand it back'] as const)
          : ([`/jobs/${job.id}/write/${next}`, titleOf(next)] as const);
    return respond(c, {
      title: `${facts.bag} · ${facts.title}`,
      current: '/',
      json: { job: { id: job.id, ...facts }, reckoned, entries: lines, expected },
      body: JobView({ facts, lines: [...lines].reverse(), reckoned, next: nextLink, links, written: written ?? null }),
    });
  });
  return app;
};

/** The job of the path, or null. */
export async function jobAt(web: Web, c: Ctx): Promise<Thing | null> {
  const [row] = await web.store.read("SELECT state FROM thing WHERE id = ? AND kind = 'job'", [c.req.param('job') ?? '']);
  return row ? thingOf(row) : null;
}

async function placeWords(web: Web, id: string): Promise<string> {
  const [row] = await web.store.read('SELECT state FROM thing WHERE id = ?', [id]);
  return row ? wordsFor(web, thingOf(row)) : id;
}
