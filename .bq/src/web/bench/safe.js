// The safe: what is in, by place and tray, what is out and with whom, and a count of a tray by scanning its bags.
import { Hono } from 'hono';
import { CountView, SafeView } from '../../../views/safe.js';
import { formatInstant } from '../../units/dates.js';
import { readBagCode } from '../../units/ids.js';
import { respond } from '../form/negotiate.js';
import { policyFor, thingsOf, whoAsks } from '../session/context.js';
import { jobLine } from './bench.js';
import { isInSafe, jobsInHouse } from './house.js';
export const safe = (web) => {
  const app = new Hono();
  app.get('/safe', async (c) => {
    const policy = policyFor(c);
    const rows = await jobsInHouse(web, policy);
    const shelves = (await safePlaces(web)).map((place) => shelfOf(place, rows, whoAsks(c).id));
    const out = rows.filter(({ inSafe, pieces }) => !inSafe && pieces.length > 0).map((row) => jobLine(row, whoAsks(c).id));
    const at = formatInstant(web.clock(), policy.zone);
    return respond(c, { title: 'Safe', current: '/safe', json: { at, shelves, out }, body: SafeView({ at, shelves, out }) });
  });
  app.get('/safe/count/:place', (c) => count(web, c));
  return app;
};
async function safePlaces(web) {
  const all = await thingsOf(web, 'place');
  const known = new Map(all.map((place) => [place.id, place]));
  return all.filter(({ id }) => isInSafe(id, known));
}
const shelfOf = (place, rows, me) => ({
  id: place.id,
  name: place.says.name ?? '',
  kind: place.says.kind ?? '',
  jobs: rows.filter((row) => row.inSafe && row.place === place.id).map((row) => jobLine(row, me)),
});
/** The bags scanned so far are in the address, so that a count survives a reload, the back key and a browser without scripts. */
async function count(web, c) {
  const place = (await safePlaces(web)).find(({ id }) => id === c.req.param('place'));
  if (!place) return c.notFound();
  const rows = await jobsInHouse(web, policyFor(c));
  const shelf = shelfOf(place, rows, whoAsks(c).id);
  const scanned = [...new Set([...(c.req.queries('found') ?? []), c.req.query('code') ?? ''].flatMap((text) => readBagCode(text) ?? []))];
  const typed = c.req.query('code') ?? '';
  const problem = typed.trim() !== '' && readBagCode(typed) === null ? `${typed} is no bag code. Scan it again, or type it.` : null;
  const known = new Map(rows.map((row) => [row.bag, jobLine(row, whoAsks(c).id)]));
  const counted = {
    found: shelf.jobs.filter(({ bag }) => scanned.some((code) => code === bag)),
    missing: shelf.jobs.filter(({ bag }) => !scanned.some((code) => code === bag)),
    extra: scanned.filter((code) => !shelf.jobs.some(({ bag }) => bag === code)).map((code) => ({ code, job: known.get(code) ?? null })),
  };
  return respond(c, {
    title: `Count ${shelf.name}`,
    current: '/safe',
    status: problem ? 422 : 200,
    json: { place: shelf.id, scanned, ...counted, problem },
    body: CountView({ shelf, scanned, problem, ...counted }),
  });
}
