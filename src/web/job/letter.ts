// The customer's record letter: as a page, and as one file that she keeps. What does not agree is put to the shop before it goes out.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hono } from 'hono';
import { LetterFile, LetterPage } from '../../../views/letter.tsx';
import { TellFirst } from '../../../views/tell-first.tsx';
import type { Kept } from '../../ledger/leaf.ts';
import type { Thing } from '../../ledger/thing.ts';
import { type JobTold, jobTold } from '../../letter/job-told.ts';
import { entriesOf } from '../../queries/entries.ts';
import { readPhoto } from '../../store/photos.ts';
import { CAUTIONS } from '../../trade/caution-table.ts';
import { jobThings } from '../form/form.ts';
import { respond } from '../form/negotiate.ts';
import { type Ctx, type Env, policyFor, type Resource, thingsOf, type Web } from '../session/context.ts';
import { checkDataOf } from './check-data.ts';
import { jobAt } from './job-at.ts';
import { groundsFor } from './reckoned.ts';

export const letter: Resource = (web) => {
  const app = new Hono<Env>();
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
    const photos = new Map(await Promise.all(shown.photos.map(async ({ hash }) => [hash, await photoInline(web, hash)] as const)));
    const css = readFileSync(join(web.assetsDir, 'letter.css'), 'utf8');
    const file = LetterFile({ shown, css, check: inScript(check), src: (hash) => photos.get(hash) ?? '' });
    c.header('Content-Disposition', `attachment; filename="record-letter-${shown.bag}.html"`);
    c.header('Referrer-Policy', 'no-referrer');
    return c.html(`<!doctype html>${await file}`);
  });
  return app;
};

const mustTellFirst = (c: Ctx, { letter: { disagreements } }: JobTold): boolean =>
  disagreements.length > 0 && c.req.query('told') !== 'yes';

function tellFirst(c: Ctx, job: Thing, { bag, letter: { disagreements } }: JobTold): Promise<Response> {
  const { text, source } = CAUTIONS['tell-insurer-first'];
  return respond(c, {
    title: 'Tell your insurer first',
    json: { tellInsurerFirst: disagreements },
    body: TellFirst({ job: job.id, bag, disagreements, caution: `${text} (${source})` }),
  });
}

export const photoPath = (hash: string): string => `/photos/${hash}`;

async function photoInline(web: Web, hash: string): Promise<string> {
  const bytes = await readPhoto(web.photosDir, hash);
  return bytes ? `data:image/webp;base64,${Buffer.from(bytes).toString('base64')}` : '';
}

/** JSON that cannot end the script element it stands in. */
const inScript = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');

/** All that is told of a job outside the house, as it stands now. */
export async function toldNow(web: Web, c: Ctx, job: Thing, kept: readonly Kept[]): Promise<JobTold> {
  const shop = policyFor(c);
  const things = await jobThings(web, job.id);
  const roles = new Map((await thingsOf(web, 'person')).map(({ id, role }) => [id as string, role]));
  return jobTold({ shop, job, things, kept }, await groundsFor(web, shop, job.id), (person) => roles.get(person), web.clock());
}
