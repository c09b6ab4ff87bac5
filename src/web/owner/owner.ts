// For the owner: what needs a decision today, each with the page where it is decided.
import { Hono } from 'hono';
import { type Heap, OwnerView } from '../../../views/owner.tsx';
import { stonesWords } from '../../book/words.ts';
import type { Kept } from '../../ledger/leaf.ts';
import { type Grounds, reckonJob } from '../../projections/job-reckoning.ts';
import { countsThatDiffer, stonesOf } from '../../projections/stones.ts';
import { ownerJob } from '../../reckoning/words.ts';
import { type CivilDate, civilDateOf, formatCivilDate } from '../../units/dates.ts';
import { type InHouse, jobsInHouse } from '../bench/house.ts';
import { respond } from '../form/negotiate.ts';
import { entriesOf } from '../job/ledger-lines.ts';
import { groundsFor } from '../job/reckoned.ts';
import { type Env, policyFor, type Resource, type Web } from '../session/context.ts';

export const owner: Resource = (web) => {
  const app = new Hono<Env>();
  const judged = rememberingJudge();
  app.get('/owner', async (c) => {
    const policy = policyFor(c);
    const rows = await jobsInHouse(web, policy);
    const today = civilDateOf(web.clock(), policy.zone);
    const grounds = await groundsFor(web, policy);
    const found = await Promise.all(rows.map(async (row) => ({ row, of: await judged(web, policy.shop, grounds, row.job.id) })));
    const heap = (title: string, why: (row: InHouse, of: Judged) => string | null, page = ''): Heap => ({
      title,
      rows: found.flatMap(({ row, of }) => decision(row, why(row, of), page)),
    });
    const heaps = [
      heap('Weights that do not agree', (_, { weights }) => weights),
      heap('Stone counts that differ', (_, { stones }) => stones, '/stones'),
      heap('Out too long', (row) => outTooLong(row, today)),
      heap('Promised, and late', ({ late, promised }) => (late ? `Promised for ${promised}.` : null)),
      heap('Finished, and not collected', (row) => notCollected(row, today)),
    ].filter(({ rows: some }) => some.length > 0);
    const { readOnly } = web.store;
    return respond(c, { title: 'For the owner', current: '/owner', json: { readOnly, heaps }, body: OwnerView({ readOnly, heaps }) });
  });
  return app;
};

const decision = ({ job, bag, metal, what }: InHouse, why: string | null, page: string): Heap['rows'] =>
  why === null ? [] : [{ href: `/jobs/${job.id}${page}`, bag, metal, what, why }];

function outTooLong({ holder, pieces, job, things }: InHouse, today: CivilDate): string | null {
  const away = holder === 'outside' || [...pieces, job].some(({ offered, custody }) => (offered?.seq ?? -1) > (custody?.seq ?? -1));
  if (!away) return null;
  const due = things.map(({ says }) => says.dueBack).findLast((day) => day !== undefined);
  if (due === undefined) return 'Outside, and no day was given for its return.';
  return due < today ? `Outside, and due back ${formatCivilDate(due as CivilDate)}.` : null;
}

const notCollected = ({ job, pieces, promised }: InHouse, today: CivilDate): string | null =>
  job.status === 'finished' && pieces.length > 0 && job.promise !== undefined && job.promise < today
    ? `Finished; it was promised for ${promised}.`
    : null;

interface Judged {
  readonly weights: string | null;
  readonly stones: string | null;
}

/** Judges a job once for each length of its stream and the shop's, where balances are calibrated: entries are only ever added. */
function rememberingJudge(): (web: Web, shop: string, grounds: Grounds, job: string) => Promise<Judged> {
  const known = new Map<string, { readonly size: number; readonly judged: Judged }>();
  return async (web, shop, grounds, job) => {
    const [row] = await web.store.read('SELECT COUNT(*) AS size FROM entry_link WHERE stream IN (?, ?)', [job, shop]);
    const size = Number(row?.size);
    const before = known.get(job);
    if (before?.size === size) return before.judged;
    const judged = judge(await entriesOf(web, job), grounds, await kindsOf(web, job));
    known.set(job, { size, judged });
    return judged;
  };
}

async function kindsOf(web: Web, job: string): Promise<ReadonlyMap<string, string>> {
  const rows = await web.store.read('SELECT id, kind FROM thing WHERE stream = ?', [job]);
  return new Map(rows.map(({ id, kind }) => [String(id), String(kind)]));
}

function judge(kept: readonly Kept[], grounds: Grounds, kinds: ReadonlyMap<string, string>): Judged {
  const { state, closed, problem, sentence } = reckonJob(kept, grounds);
  const [differs] = countsThatDiffer(stonesOf(kept, (id) => kinds.get(id)));
  return {
    weights: problem ? sentence : state === 'off' && closed ? ownerJob(closed) : null,
    stones: differs ? `${stonesWords(differs.counted)} counted in entry ${differs.seq}, ${differs.reckoned} expected.` : null,
  };
}
