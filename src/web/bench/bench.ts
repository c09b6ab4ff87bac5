// The bench: what is in my hand, what comes next, what is late, and what waits in the safe.

import { Hono } from 'hono';
import { type BalanceLine, BenchView } from '../../../views/bench.tsx';
import type { JobLine } from '../../../views/parts/jobs.tsx';
import { fullPathReasons } from '../../projections/path.ts';
import { formatInstant, instant } from '../../units/dates.ts';
import { respond } from '../form/negotiate.ts';
import { balanceStory } from '../job/balance-story.ts';
import { nextEntries, titleOf } from '../job/next-entry.ts';
import { type Env, policyFor, type Resource, thingsOf, type Web, whoAsks } from '../session/context.ts';
import { type InHouse, jobsInHouse } from './house.ts';

export const bench: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/bench', async (c) => {
    const me = whoAsks(c).id;
    const rows = await jobsInHouse(web, policyFor(c));
    const isMine = (row: InHouse) => row.holder === me && !row.inSafe && row.job.status !== 'finished';
    const lineOf = (row: InHouse) => jobLine(row, me);
    const mine = rows.filter(isMine);
    const inHand = mine.toSorted((a, b) => lastTouched(b) - lastTouched(a))[0];
    const rest = rows.filter((row) => !isMine(row));
    const groups = {
      inHand: inHand ? lineOf(inHand) : null,
      next: mine.filter((row) => row !== inHand).map(lineOf),
      late: rest.filter(({ late }) => late).map(lineOf),
      waiting: rest.filter(({ late, inSafe, job }) => inSafe && !late && job.status !== 'finished').map(lineOf),
      balances: await balanceLines(web, policyFor(c).zone),
    };
    return respond(c, { title: 'Bench', current: '/bench', json: groups, body: BenchView(groups) });
  });
  return app;
};

/** Every balance and its last check: whoever weighs on one checks it from here. */
async function balanceLines(web: Web, zone: string): Promise<readonly BalanceLine[]> {
  const { balances } = await balanceStory(web.store);
  return (await thingsOf(web, 'balance')).map(({ id, says }) => {
    const last = balances.checksOf(id).at(-1);
    const at = last ? formatInstant(instant(last.atMs), zone) : '';
    const failed = last?.result === 'fail';
    const checked = last ? `${failed ? 'failed its check' : 'last checked'} ${at}` : 'not checked yet';
    return { id, name: says.name ?? 'Balance', checked, failed };
  });
}

const lastTouched = ({ job, pieces }: InHouse): number =>
  Math.max(job.custody?.seq ?? -1, ...pieces.map(({ custody }) => custody?.seq ?? -1));

/** `me` decides which entry is suggested; a list looks at the things alone, the job's own page at its value and marks too. */
export function jobLine(row: InHouse, me: string): JobLine {
  const { next } = nextEntries(row.job, row.things, me, fullPathReasons(row.things, { isHighValue: false, nearsGate: false }).length === 0);
  return {
    id: row.job.id,
    bag: row.bag,
    metal: row.metal,
    what: row.what,
    next: next === null ? '' : titleOf(next),
    promised: row.promised,
    late: row.late,
    where: row.inSafe ? row.placeWords : row.holderWords ? `with ${row.holderWords}` : '',
  };
}
