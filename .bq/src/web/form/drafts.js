// What was typed and not written: kept as it is typed, or when a form arrives after its session has ended, and offered again after sign-in.
import { Hono } from 'hono';
import { DraftsView } from '../../../views/drafts.js';
import { ENTRIES } from '../../entries/index.js';
import { entryType } from '../../ledger/registry.js';
import { jobNamed } from '../../queries/things.js';
import { formatInstant, instant } from '../../units/dates.js';
import { policyFor, whoAsks } from '../session/context.js';
import { goTo, respond } from './negotiate.js';
import { first, readPosted } from './posted.js';
export const drafts = (web) => {
  const app = new Hono();
  app.get('/drafts', async (c) => {
    const all = await Promise.all((await web.access.draftsOf(whoAsks(c).id)).map((draft) => lineOf(web, c, draft)));
    return respond(c, { title: 'Not written yet', json: { drafts: all }, body: DraftsView({ drafts: all }) });
  });
  app.post('/drafts', async (c) => {
    const { posted } = await readPosted(c);
    await keepDraft(web, whoAsks(c).id, first(posted, DRAFT_PATH), posted);
    return c.body(null, 204);
  });
  app.post('/drafts/drop', async (c) => {
    const key = first((await readPosted(c)).posted, 'key');
    if (await web.access.draft(key, whoAsks(c).id)) await web.access.dropDraft(key);
    return goTo(c, '/drafts');
  });
  return app;
};
/** The name under which the script says which form a draft belongs to. */
const DRAFT_PATH = 'draft.path';
const NEVER_KEPT = ['pin', 'password', 'witnessPin', DRAFT_PATH];
const LARGEST_DRAFT = 100_000;
const FORM_PATH = /^(\/[\w-]+)+$/;
/** Keeps what was posted, but never a PIN, for the form at `path`; answers the address that opens it again, or null where it is no form. */
export async function keepDraft(web, writer, path, posted) {
  const key = first(posted, 'formKey');
  const fields = JSON.stringify([...posted].filter(([name]) => !NEVER_KEPT.includes(name)));
  if (!/^[0-9a-z]{26}$/.test(key) || !FORM_PATH.test(path) || fields.length > LARGEST_DRAFT) return null;
  await web.access.saveDraft(key, writer, path, fields);
  return addressOf({ path, key });
}
/** What arrived by POST after its session had ended, kept for whoever signs in with it; the address that opens it again, or null. */
export async function keepPosted(web, c) {
  const { posted } = await readPosted(c);
  const writer = c.get('session')?.person ?? 'nobody';
  return keepDraft(web, writer, c.req.path === '/drafts' ? first(posted, DRAFT_PATH) : c.req.path, posted);
}
/** What was typed in the draft that the address names, for this person; undefined where it names none. */
export async function draftTyped(web, c) {
  const key = c.req.method === 'GET' ? c.req.query('draft') : undefined;
  const person = c.get('person');
  const draft = key && person ? await web.access.draft(key, person.id) : null;
  return draft ? new Map(JSON.parse(draft.fields)) : undefined;
}
const addressOf = ({ path, key }) => `${path}?draft=${key}`;
async function lineOf(web, c, draft) {
  const [, , job] = /^\/(jobs)\/([^/]+)/.exec(draft.path) ?? [];
  return {
    key: draft.key,
    href: addressOf(draft),
    title: titleOf(draft.path),
    bag: (await jobNamed(web.store, job))?.says.bag ?? '',
    savedAt: formatInstant(instant(draft.savedAt), policyFor(c).zone),
  };
}
/** The title of the form at a path. */
function titleOf(path) {
  const type = /\/write\/(\w+)$/.exec(path)?.[1] ?? '';
  if (Object.hasOwn(ENTRIES, type)) return entryType(type).form.title;
  const words = path.split('/').at(-1)?.replaceAll(/[-_]/g, ' ') ?? '';
  return words.charAt(0).toUpperCase() + words.slice(1);
}
