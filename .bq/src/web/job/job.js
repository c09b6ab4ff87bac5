// One job: where it is, whether it reckons, what comes next, its photographs and its ledger; and the screen turned to the customer.
import { Hono } from 'hono';
import { JobView } from '../../../views/job.js';
import { CustomerFace } from '../../../views/letter.js';
import { ENTRIES } from '../../entries/index.js';
import { holderOf, placeOf, sumOf } from '../../ledger/thing.js';
import { jobFaced } from '../../letter/job-told.js';
import { reckonJob } from '../../projections/job-reckoning.js';
import { fullPathReasons } from '../../projections/path.js';
import { photosIn } from '../../projections/photos.js';
import { entriesOf } from '../../queries/entries.js';
import { thingAt } from '../../queries/things.js';
import { SHEETS } from '../../sheets/index.js';
import { formatCivilDate } from '../../units/dates.js';
import { holderWords } from '../bench/house.js';
import { expectedWords, jobThings } from '../form/form.js';
import { respond } from '../form/negotiate.js';
import { mayWrite, policyFor, whoAsks } from '../session/context.js';
import { jobCautions } from './cautions.js';
import { jobAt } from './job-at.js';
import { ledgerLines } from './ledger-lines.js';
import { photoPath, toldNow } from './letter.js';
import { isSheet, nextEntries, titleOf } from './next-entry.js';
import { groundsFor } from './reckoned.js';
import { wordsFor } from './words.js';
export const jobs = (web) => {
  const app = new Hono();
  app.get('/jobs/:job', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const kept = await entriesOf(web.store, job.id);
    return c.req.query('face') === 'customer' ? turned(web, c, job, kept) : page(web, c, job, kept);
  });
  return app;
};
async function page(web, c, job, kept) {
  const policy = policyFor(c);
  const things = await jobThings(web, job.id);
  const lines = await ledgerLines(web, policy, kept);
  const pieces = things.filter(({ kind }) => kind === 'piece');
  const reckoned = reckonJob(kept, await groundsFor(web, policy, job.id));
  const facts = await factsOfJob(web, job, pieces);
  const cautions = await jobCautions(web, c, job, things);
  const reasons = fullPathReasons(things, { isHighValue: isHighValue(saidOf(kept)), nearsGate: cautions.length > 0 });
  const { next, others } = mayWrite(whoAsks(c))
    ? nextEntries(job, things, whoAsks(c).id, reasons.length === 0)
    : { next: null, others: [] };
  const hrefOf = (name) => (isSheet(name) ? `/jobs/${job.id}/${name}` : `/jobs/${job.id}/write/${name}`);
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
      next: next === null ? null : [hrefOf(next), titleOf(next)],
      links: [...(mayWrite(whoAsks(c)) && next !== 'finish' ? sheetsFor(job) : []), ...others.map((name) => [hrefOf(name), titleOf(name)])],
      photos: photosIn(kept),
      mayWrite: mayWrite(whoAsks(c)),
      written: lines.find(({ seq }) => String(seq) === c.req.query('written')) ?? null,
    }),
  });
}
/** Every sealed field that could be opened, as it was said last. */
const saidOf = (kept) =>
  Object.assign({}, ...kept.map(({ leaf, opened }) => ('is' in opened ? { [String(leaf.data.field)]: opened.is } : opened)));
/** From 2,000 of the shop's currency on, as a figure or a band. */
const HIGH_MINOR = 200_000;
function isHighValue({ value, band }) {
  const minor = typeof value === 'object' && value !== null && 'minor' in value ? Number(value.minor) : 0;
  return minor >= HIGH_MINOR || band === 'to-10000' || band === 'over';
}
/** Sheets that write several entries at once, by where the job stands. */
function sheetsFor({ id, status }) {
  if (status === 'agreed') return [[`/jobs/${id}/finish`, SHEETS.finish.form.title]];
  return status === 'finished' ? [[`/jobs/${id}/hand-back-with-exception`, ENTRIES.returned_with_exception.form.title]] : [];
}
async function factsOfJob(web, job, pieces) {
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
async function turned(web, c, job, kept) {
  const face = jobFaced(await toldNow(web, c, job, kept));
  return respond(c, { title: face.title, json: face, body: CustomerFace({ shown: face, job: job.id, src: photoPath }) });
}
async function placeWords(web, id) {
  const place = await thingAt(web.store, id);
  return place ? wordsFor(web, place) : id;
}
