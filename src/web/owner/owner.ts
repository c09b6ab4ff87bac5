// For the owner: what needs a decision today, each with the page where it is decided.
import { Hono } from 'hono';
import { type Heap, OwnerView } from '../../../views/owner.tsx';
import { stonesWords } from '../../book/words.ts';
import type { Kept } from '../../ledger/leaf.ts';
import { type Grounds, reckonJob } from '../../projections/job-reckoning.ts';
import { countsThatDiffer, stonesOf } from '../../projections/job-stones.ts';
import { entriesOfAll } from '../../queries/entries.ts';
import { streamSizes } from '../../queries/sizes.ts';
import { ownerJob } from '../../reckoning/words.ts';
import { type CivilDate, civilDateOf, formatCivilDate } from '../../units/dates.ts';
import { type InHouse, jobsInHouse } from '../bench/house.ts';
import { respond } from '../form/negotiate.ts';
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
    const judgedBy = await judged(web, grounds, rows);
    const found = rows.map((row) => ({ row, of: judgedBy.get(row.job.id) ?? { weights: null, stones: null } }));
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
    return respond(c, { title: 'For the owner', current: '/owner', json: { heaps }, body: OwnerView({ heaps }) });
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

interface Remembered {
  readonly size: number;
  readonly balances: Grounds['balances'];
  /** The shop's rates that were asked for, as they were answered. */
  readonly rates: readonly (readonly [...ask: Parameters<RateOf>, answer: string])[];
  readonly judged: Judged;
}
type RateOf = NonNullable<Grounds['rateOf']>;

/** Judges the jobs in the house: each once, for as long as nothing is written on it and what it rests on answers the same. */
function rememberingJudge(): (web: Web, grounds: Grounds, rows: readonly InHouse[]) => Promise<ReadonlyMap<string, Judged>> {
  let known: ReadonlyMap<string, Remembered> = new Map();
  return async (web, { rateOf = () => null, ...grounds }, rows) => {
    const ids = rows.map(({ job }) => job.id);
    const sizes = await streamSizes(web.store, ids);
    const isFresh = ({ size, balances, rates }: Remembered, id: string) =>
      size === sizes.get(id) &&
      balances === grounds.balances &&
      rates.every(([operation, family, answer]) => JSON.stringify(rateOf(operation, family)) === answer);
    const fresh = new Map([...known].filter(([id, before]) => sizes.has(id) && isFresh(before, id)));
    const kept = await entriesOfAll(
      web.store,
      ids.filter((id) => !fresh.has(id)),
    );
    for (const { job, things } of rows.filter((row) => kept.has(row.job.id))) {
      const rates: Remembered['rates'][number][] = [];
      const noting: RateOf = (operation, family) => {
        const rate = rateOf(operation, family);
        rates.push([operation, family, JSON.stringify(rate)]);
        return rate;
      };
      const kinds = new Map(things.map(({ id, kind }) => [id, kind]));
      const judged = judge(kept.get(job.id) ?? [], { ...grounds, rateOf: noting }, kinds);
      fresh.set(job.id, { size: sizes.get(job.id) ?? 0, balances: grounds.balances, rates, judged });
    }
    known = fresh;
    return new Map([...fresh].map(([id, { judged }]) => [id, judged]));
  };
}

function judge(kept: readonly Kept[], grounds: Grounds, kinds: ReadonlyMap<string, string>): Judged {
  const { state, closed, problem, sentence } = reckonJob(kept, grounds);
  const [differs] = countsThatDiffer(stonesOf(kept, (id) => kinds.get(id)));
  return {
    weights: problem ? sentence : state === 'off' && closed ? ownerJob(closed) : null,
    stones: differs ? `${stonesWords(differs.counted)} counted in entry ${differs.seq}, ${differs.reckoned} expected.` : null,
  };
}
