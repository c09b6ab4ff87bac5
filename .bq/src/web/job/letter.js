// The customer's record letter: as a page, and as one file that she keeps. What does not agree is put to the shop before it goes out.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hono } from 'hono';
import { LetterFile, LetterPage } from '../../../views/letter.js';
import { TellFirst } from '../../../views/tell-first.js';
import { jobTold } from '../../letter/job-told.js';
import { entriesOf } from '../../queries/entries.js';
import { readPhoto } from '../../store/photos.js';
import { CAUTIONS } from '../../trade/caution-table.js';
import { jobThings } from '../form/form.js';
import { respond } from '../form/negotiate.js';
import { policyFor, thingsOf } from '../session/context.js';
import { checkDataOf } from './check-data.js';
import { jobAt } from './job-at.js';
import { groundsFor } from './reckoned.js';
export const letter = (web) => {
  const app = new Hono();
  app.get('/jobs/:job/letter', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const shown = await toldNow(web, c, job, await entriesOf(web.store, job.id));
    if (mustTellFirst(c, shown)) return tellFirst(c, job, shown);
    const told = c.req.query('told') === 'yes';
    return respond(c, { title: `Letter for ${shown.bag}`, json: shown, body: LetterPage({ shown, job: job.id, told, src: photoPath }) });
  });
  app.get('/jobs/:job/letter.html', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const shown = await toldNow(web, c, job, await entriesOf(web.store, job.id));
    if (mustTellFirst(c, shown)) return c.redirect(`/jobs/${job.id}/letter`, 303);
    const check = await checkDataOf(web, job.id);
    const photos = new Map(await Promise.all(shown.photos.map(async ({ hash }) => [hash, await photoInline(web, hash)])));
    const css = readFileSync(join(web.assetsDir, 'letter.css'), 'utf8');
    const file = LetterFile({ shown, css, check: inScript(check), src: (hash) => photos.get(hash) ?? '' });
    c.header('Content-Disposition', `attachment; filename="record-letter-${shown.bag}.html"`);
    c.header('Referrer-Policy', 'no-referrer');
    return c.html(`<!doctype html>${await file}`);
  });
  return app;
};
const mustTellFirst = (c, { letter: { disagreements } }) => disagreements.length > 0 && c.req.query('told') !== 'yes';
function tellFirst(c, job, { bag, letter: { disagreements } }) {
  const { text, source } = CAUTIONS['tell-insurer-first'];
  return respond(c, {
    title: 'Tell your insurer first',
    json: { tellInsurerFirst: disagreements },
    body: TellFirst({ job: job.id, bag, disagreements, caution: `${text} (${source})` }),
  });
}
export const photoPath = (hash) => `/photos/${hash}`;
async function photoInline(web, hash) {
  const bytes = await readPhoto(web.photosDir, hash);
  return bytes ? `data:image/webp;base64,${Buffer.from(bytes).toString('base64')}` : '';
}
/** JSON that cannot end the script element it stands in. */
const inScript = (value) => JSON.stringify(value).replaceAll('<', '\\u003c');
/** All that is told of a job outside the house, as it stands now. */
export async function toldNow(web, c, job, kept) {
  const shop = policyFor(c);
  const things = await jobThings(web, job.id);
  const roles = new Map((await thingsOf(web, 'person')).map(({ id, role }) => [id, role]));
  return jobTold({ shop, job, things, kept }, await groundsFor(web, shop, job.id), (person) => roles.get(person), web.clock());
}
