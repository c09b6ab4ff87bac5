// The collection slip with its counterfoil and the bag label: written as an entry, then printed with the signed note of the ledger as it
// stood, so that whoever holds the slip can show that the record was there.
import { Hono } from 'hono';
import { ulid } from 'ulid';
import { IssueSlip, SlipView } from '../../../views/slip.tsx';
import { wordsIn } from '../../book/us-words.ts';
import { jobSlip } from '../../letter/job-told.ts';
import { hex, utf8 } from '../../log/bytes.ts';
import { formatCheckpoint } from '../../log/checkpoint.ts';
import { rootOf } from '../../log/merkle.ts';
import { formatNote, formatVerifierKey, signatureLine } from '../../log/note.ts';
import { entriesOf, signatureAt } from '../../queries/entries.ts';
import { sha256 } from '../../store/crypto.ts';
import { readFrontier } from '../../store/tree.ts';
import { jobThings } from '../form/form.ts';
import { goTo, respond } from '../form/negotiate.ts';
import { jobAt } from '../job/job-at.ts';
import { wholeNumber } from '../session/address.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web, whoAsks } from '../session/context.ts';
import { trouble } from '../session/trouble.ts';

export const slip: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/jobs/:job/slip', async (c) => {
    const job = await jobAt(web, c);
    const size = job?.says['ticket slip'];
    if (!job) return c.notFound();
    if (size !== undefined) return goTo(c, `/jobs/${job.id}/slip/${size}`);
    const title = wordsIn(policyFor(c).words, 'Collection slip');
    return respond(c, { title, json: { issued: null }, body: IssueSlip({ title, action: c.req.path, again: false }) });
  });
  app.post('/jobs/:job/slip', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const slip = await issueSlip(web, c, job.id);
    return 'say' in slip ? trouble(c, 422, slip.say) : goTo(c, `/jobs/${job.id}/slip/${slip.size}`);
  });
  app.get('/jobs/:job/slip/:size', (c) => issued(web, c));
  return app;
};

/** The slip of that size, its counterfoil and the bag label. */
async function issued(web: Web, c: Ctx): Promise<Response> {
  const job = await jobAt(web, c);
  const size = wholeNumber(c.req.param('size') ?? '');
  const note = await noteAt(web, size);
  if (!job || size === null || note === null) return c.notFound();
  const vkey = formatVerifierKey(web.store.logKey);
  const kept = (await entriesOf(web.store, job.id)).filter(({ seq }) => seq < size);
  const slip = {
    ...jobSlip({ shop: policyFor(c), job, things: await jobThings(web, job.id), kept }),
    job: job.id,
    title: wordsIn(policyFor(c).words, 'Collection slip'),
    customer: web.directory.nameOf(web.directory.customerOf(job.id) ?? '') ?? '',
    ...{ size, note, fingerprint: shortKey(vkey) },
  };
  return respond(c, {
    title: `${slip.title} ${slip.bag}`,
    current: '/',
    json: { ...slip, vkey },
    body: SlipView({ ...slip, bagLink: `${web.baseUrl}/b/${slip.bag}` }),
  });
}

/** Issues the newest checkpoint and writes that it was printed; answers its size, or why it was not, as a sentence. */
export async function issueSlip(web: Web, c: Ctx, job: string): Promise<{ readonly size: number } | { readonly say: string }> {
  const { size } = await web.store.issueCheckpoint();
  const answer = await web.store.record({
    id: ulid(web.clock()).toLowerCase(),
    by: whoAsks(c).id,
    auth: 'session',
    device: c.get('session')?.device ?? 'none',
    seen: {},
    lines: [{ type: 'ticket_issued', data: { job, kind: 'slip', checkpoint: String(size) } }],
  });
  if (answer.answer === 'written') return { size };
  return { say: 'say' in answer ? answer.say : 'The slip was not printed. Open the job again, and print it from there.' };
}

/** The signed note of the ledger at that size, as it was signed then; null where no commit ended there. */
async function noteAt(web: Web, size: number | null): Promise<string | null> {
  const { read, log, logKey } = web.store;
  const signature = size === null ? null : await signatureAt(web.store, size);
  if (size === null || !signature) return null;
  const text = formatCheckpoint({ origin: log, size, root: rootOf(sha256, await readFrontier(read, size)) });
  return formatNote(text, [signatureLine(logKey, signature)]);
}

/** The first 64 bits of the digest of our key, in groups of four: short enough to be read aloud and compared. */
const shortKey = (vkey: string): string =>
  hex(sha256(utf8(vkey)))
    .slice(0, 16)
    .replace(/(.{4})(?=.)/g, '$1 ');
