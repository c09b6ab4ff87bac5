// The safe: what is in, by place and tray, what is out and with whom, and a count of a tray by scanning its bags.
import { Hono } from 'hono';
import { CountView, type SafePlace, SafeView } from '../../../views/safe.tsx';
import type { Thing } from '../../ledger/thing.ts';
import { formatInstant } from '../../units/dates.ts';
import { readBagCode } from '../../units/ids.ts';
import { respond } from '../form/negotiate.ts';
import { type Ctx, type Env, policyFor, type Resource, thingsOf, type Web, whoAsks } from '../session/context.ts';
import { jobLine } from './bench.ts';
import { type InHouse, isInSafe, jobsInHouse } from './house.ts';

export const safe: Resource = (web) => {
  const app = new Hono<Env>();
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

async function safePlaces(web: Web): Promise<readonly Thing[]> {
  const all = await thingsOf(web, 'place');
  const known = new Map(all.map((place) => [place.id, place]));
  return all.filter(({ id }) => isInSafe(id, known));
}

const shelfOf = (place: Thing, rows: readonly InHouse[], me: string): SafePlace => ({
  id: place.id,
  name: place.says.name ?? '',
  kind: place.says.kind ?? '',
  jobs: rows.filter((row) => row.inSafe && row.place === place.id).map((row) => jobLine(row, me)),
});

/** The bags scanned so far are in the address, so that a count survives a reload, the back key and a browser without scripts. */
async function count(web: Web, c: Ctx): Promise<Response> {
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
