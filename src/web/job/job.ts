// One job: where it is, whether it reckons, what comes next, its photographs and its ledger; and the screen turned to the customer.
import { Hono } from 'hono';
import { JobView } from '../../../views/job.tsx';
import { CustomerFace } from '../../../views/letter.tsx';
import { allIn, wordsIn } from '../../book/us-words.ts';
import { ENTRIES } from '../../entries/index.ts';
import type { Kept } from '../../ledger/leaf.ts';
import { holderOf, placeOf, sumOf, type Thing } from '../../ledger/thing.ts';
import { jobFaced } from '../../letter/job-told.ts';
import { reckonJob } from '../../projections/job-reckoning.ts';
import { fullPathReasons } from '../../projections/path.ts';
import { photosIn } from '../../projections/photos.ts';
import { entriesOf } from '../../queries/entries.ts';
import { thingAt } from '../../queries/things.ts';
import { SHEETS } from '../../sheets/index.ts';
import { formatCivilDate } from '../../units/dates.ts';
import { holderWords } from '../bench/house.ts';
import { expectedWords } from '../form/expected-beside.ts';
import { jobThings } from '../form/form.ts';
import { respond } from '../form/negotiate.ts';
import { type Ctx, type Env, mayWrite, policyFor, type Resource, type Web, whoAsks } from '../session/context.ts';
import { jobCautions } from './cautions.ts';
import { jobAt } from './job-at.ts';
import { ledgerLines } from './ledger-lines.ts';
import { photoPath, toldNow } from './letter.ts';
import { isSheet, nextEntries, titleOf } from './next-entry.ts';
import { groundsFor } from './reckoned.ts';
import { wordsFor } from './words.ts';

export const jobs: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/jobs/:job', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const kept = await entriesOf(web.store, job.id);
    return c.req.query('face') === 'customer' ? turned(web, c, job, kept) : page(web, c, job, kept);
  });
  return app;
};

async function page(web: Web, c: Ctx, job: Thing, kept: readonly Kept[]): Promise<Response> {
  const policy = policyFor(c);
  const things = await jobThings(web, job.id);
  const lines = await ledgerLines(web, policy, kept);
  const pieces = things.filter(({ kind }) => kind === 'piece');
  const reckoned = reckonJob(kept, await groundsFor(web, policy, job.id));
  const facts = await factsOfJob(web, job, pieces);
  const cautions = allIn(policy.words, await jobCautions(web, c, job, things));
  const reasons = fullPathReasons(things, { isHighValue: isHighValue(saidOf(kept)), nearsGate: cautions.length > 0 });
  const { next, others } = mayWrite(whoAsks(c))
    ? nextEntries(job, things, whoAsks(c).id, reasons.length === 0)
    : { next: null, others: [] };
  const hrefOf = (name: string) => (isSheet(name) ? `/jobs/${job.id}/${name}` : `/jobs/${job.id}/write/${name}`);
  const path = reasons.length === 0 ? 'short ticket' : `full path: ${reasons.join(', ')}`;
  const expected = pieces.map((piece) => ({
    words: wordsFor(web, piece),
    expected: expectedWords(piece, policy.parameters),
    known: 'ng' in sumOf(piece.expected),
  }));
  return respond(c, {
    title: `${facts.bag} · ${facts.title}`,
    current: '/',
    json: { job: { ...facts, path }, reckoned, entries: lines, expected },
    body: JobView({
      cautions,
      facts: { ...facts, path },
      reckoned,
      lines: [...lines].reverse(),
      next: next === null ? null : [hrefOf(next), wordsIn(policy.words, titleOf(next))],
      links: [
        ...(mayWrite(whoAsks(c)) && next !== 'finish' ? sheetsFor(job) : []),
        ...others.map((name) => [hrefOf(name), wordsIn(policy.words, titleOf(name))] as const),
      ],
      photos: photosIn(kept),
      mayWrite: mayWrite(whoAsks(c)),
      written: lines.find(({ seq }) => String(seq) === c.req.query('written')) ?? null,
    }),
  });
}

/** Every sealed field that could be opened, as it was said last. */
const saidOf = (kept: readonly Kept[]): Readonly<Record<string, unknown>> =>
  Object.assign({}, ...kept.map(({ leaf, opened }) => ('is' in opened ? { [String(leaf.data.field)]: opened.is } : opened)));

/** From 2,000 of the shop's currency on, as a figure or a band. */
const HIGH_MINOR = 200_000;
function isHighValue({ value, band }: Readonly<Record<string, unknown>>): boolean {
  const minor = typeof value === 'object' && value !== null && 'minor' in value ? Number(value.minor) : 0;
  return minor >= HIGH_MINOR || band === 'to-10000' || band === 'over';
}

/** Sheets that write several entries at once, by where the job stands. */
function sheetsFor({ id, status }: Thing): readonly (readonly [href: string, words: string])[] {
  if (status === 'agreed') return [[`/jobs/${id}/finish`, SHEETS.finish.form.title]];
  return status === 'finished' ? [[`/jobs/${id}/hand-back-with-exception`, ENTRIES.returned_with_exception.form.title]] : [];
}

async function factsOfJob(web: Web, job: Thing, pieces: readonly Thing[]) {
  const [first] = pieces;
  const place = placeOf(first ?? job, job);
  return {
    id: job.id,
    bag: job.says.bag ?? '',
    metal: first?.says.metal ?? 'other',
    title: pieces.map((piece) => wordsFor(web, piece)).join(', ') || 'Nothing received yet',
    customer: web.directory.nameOf(web.directory.customerOf(job.id) ?? '') ?? null,
    holder: holderWords(web, first ? holderOf(first, job) : null) || null,
    place: place && (await placeWords(web, place)),
    status: job.status ?? 'open',
    promise: job.promise ? formatCivilDate(job.promise) : null,
  };
}

/** The screen turned to the customer. */
async function turned(web: Web, c: Ctx, job: Thing, kept: readonly Kept[]): Promise<Response> {
  const face = jobFaced(await toldNow(web, c, job, kept));
  return respond(c, { title: face.title, json: face, body: CustomerFace({ shown: face, job: job.id, src: photoPath }) });
}

async function placeWords(web: Web, id: string): Promise<string> {
  const place = await thingAt(web.store, id);
  return place ? wordsFor(web, place) : id;
}
