// The collection slip with its counterfoil and the bag label: written as an entry, then printed with the signed note of the ledger as it
// stood, so that whoever holds the slip can show that the record was there.
import { Hono } from 'hono';
import { ulid } from 'ulid';
import { IssueSlip, SlipView } from '../../../views/slip.js';
import { wordsIn } from '../../book/us-words.js';
import { jobHead } from '../../letter/job-told.js';
import { hex, utf8 } from '../../log/bytes.js';
import { formatCheckpoint } from '../../log/checkpoint.js';
import { rootOf } from '../../log/merkle.js';
import { formatNote, formatVerifierKey, signatureLine } from '../../log/note.js';
import { entriesOf, signatureAt } from '../../queries/entries.js';
import { sha256 } from '../../store/crypto.js';
import { readFrontier } from '../../store/tree.js';
import { jobThings } from '../form/form.js';
import { goTo, respond } from '../form/negotiate.js';
import { jobAt } from '../job/job-at.js';
import { wholeNumber } from '../session/address.js';
import { policyFor, whoAsks } from '../session/context.js';
import { qrOf } from './qr.js';
export const slip = (web) => {
  const app = new Hono();
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
    return job ? goTo(c, `/jobs/${job.id}/slip/${await issueSlip(web, c, job.id)}`) : c.notFound();
  });
  app.get('/jobs/:job/slip/:size', async (c) => {
    const job = await jobAt(web, c);
    const size = wholeNumber(c.req.param('size'));
    const note = await noteAt(web, size);
    if (!job || size === null || note === null) return c.notFound();
    const policy = policyFor(c);
    const kept = (await entriesOf(web.store, job.id)).filter(({ seq }) => seq < size);
    const head = jobHead({ shop: policy, job, things: await jobThings(web, job.id), kept });
    const vkey = formatVerifierKey(web.store.logKey);
    const slip = {
      ...head,
      job: job.id,
      title: wordsIn(policy.words, 'Collection slip'),
      pieces: head.pieces.map((piece) => wordsIn(policy.words, piece)),
      customer: web.directory.nameOf(web.directory.customerOf(job.id) ?? '') ?? '',
      size,
      note,
      fingerprint: groups(hex(sha256(utf8(vkey)))),
    };
    return respond(c, {
      title: `${slip.title} ${slip.bag}`,
      current: '/',
      json: { ...slip, vkey },
      body: SlipView({ ...slip, noteCode: qrOf(note), bagCode: qrOf(`${web.baseUrl}/b/${slip.bag}`) }),
    });
  });
  return app;
};
/** Issues the newest checkpoint and writes that it was printed; answers its size. */
export async function issueSlip(web, c, job) {
  const { size } = await web.store.issueCheckpoint();
  const answer = await web.store.record({
    id: ulid(web.clock()).toLowerCase(),
    by: whoAsks(c).id,
    auth: 'session',
    device: c.get('session')?.device ?? 'none',
    seen: {},
    lines: [{ type: 'ticket_issued', data: { job, kind: 'slip', checkpoint: String(size) } }],
  });
  if (answer.answer !== 'written') throw new Error(`a slip was not written: ${JSON.stringify(answer)}`);
  return size;
}
/** The signed note of the ledger at that size, as it was signed then; null where no commit ended there. */
async function noteAt(web, size) {
  const { read, log, logKey } = web.store;
  const signature = size === null ? null : await signatureAt(web.store, size);
  if (size === null || !signature) return null;
  const text = formatCheckpoint({ origin: log, size, root: rootOf(sha256, await readFrontier(read, size)) });
  return formatNote(text, [signatureLine(logKey, signature)]);
}
/** In groups of eight, as it is read aloud. */
const groups = (digits) => digits.match(/.{1,8}/g)?.join(' ') ?? digits;
