// The bench: what is in my hand, what comes next, what is late, and what waits in the safe.
import { Hono } from 'hono';
import { BenchView } from '../../../views/bench.js';
import { fullPathReasons } from '../../projections/path.js';
import { respond } from '../form/negotiate.js';
import { nextEntries, titleOf } from '../job/next-entry.js';
import { policyFor, whoAsks } from '../session/context.js';
import { jobsInHouse } from './house.js';
export const bench = (web) => {
  const app = new Hono();
  app.get('/bench', async (c) => {
    const me = whoAsks(c).id;
    const rows = await jobsInHouse(web, policyFor(c));
    const isMine = (row) => row.holder === me && !row.inSafe && row.job.status !== 'finished';
    const lineOf = (row) => jobLine(row, me);
    const mine = rows.filter(isMine);
    const inHand = mine.toSorted((a, b) => lastTouched(b) - lastTouched(a))[0];
    const rest = rows.filter((row) => !isMine(row));
    const groups = {
      inHand: inHand ? lineOf(inHand) : null,
      next: mine.filter((row) => row !== inHand).map(lineOf),
      late: rest.filter(({ late }) => late).map(lineOf),
      waiting: rest.filter(({ late, inSafe, job }) => inSafe && !late && job.status !== 'finished').map(lineOf),
    };
    return respond(c, { title: 'Bench', current: '/bench', json: groups, body: BenchView(groups) });
  });
  return app;
};
const lastTouched = ({ job, pieces }) => Math.max(job.custody?.seq ?? -1, ...pieces.map(({ custody }) => custody?.seq ?? -1));
/** `me` decides which entry is suggested; a list looks at the things alone, the job's own page at its value and marks too. */
export function jobLine(row, me) {
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
