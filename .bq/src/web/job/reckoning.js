// The reckoning of one job: its weights step by step, why it does not agree, and what a customer or an insurer may be told.
import { Hono } from 'hono';
import { ReckoningView } from '../../../views/reckoning.js';
import { reckonJob } from '../../projections/job-reckoning.js';
import { whyOf } from '../../projections/why.js';
import { entriesOf } from '../../queries/entries.js';
import { CALC_VERSION } from '../../reckoning/closure.js';
import { customerJob, customerMetal, customerStone, insurerJob } from '../../reckoning/words.js';
import { civilDateOf, formatCivilDate, instant } from '../../units/dates.js';
import { massNg } from '../../units/mass.js';
import { readingWords } from '../../weighing/reading.js';
import { jobThings } from '../form/form.js';
import { respond } from '../form/negotiate.js';
import { policyFor } from '../session/context.js';
import { jobAt } from './job-at.js';
import { groundsFor } from './reckoned.js';
import { wordsFor } from './words.js';
export const reckoning = (web) => {
  const app = new Hono();
  app.get('/jobs/:job/reckoning', async (c) => {
    const job = await jobAt(web, c);
    return job ? page(web, c, job) : c.notFound();
  });
  return app;
};
async function page(web, c, job) {
  const policy = policyFor(c);
  const grounds = await groundsFor(web, policy, job.id);
  const reckoned = reckonJob(await entriesOf(web.store, job.id), grounds);
  const things = await jobThings(web, job.id);
  const why = whyOf(reckoned, (id) => policy.balanceNames.get(id) ?? id);
  const { closed, cameIn } = reckoned;
  const shown = {
    job: job.id,
    bag: job.says.bag ?? '',
    metal: things.find(({ kind }) => kind === 'piece')?.says.metal ?? 'other',
    ...{ reckoned, why },
    customer: closed && cameIn ? customerLines(reckoned) : [],
    stones: stoneLines(reckoned, (id) => wordsFor(web, things.find((thing) => thing.id === id) ?? { id, kind: 'stone', says: {} })),
    insurer: closed ? insurerLines(reckoned, policy, grounds) : [],
  };
  const { sentence, state, size, slips, work, doubted, weights } = reckoned;
  return respond(c, {
    title: `${shown.bag} · reckoning`,
    current: '/',
    json: {
      job: shown.job,
      calcVersion: CALC_VERSION,
      size,
      state,
      sentence,
      closed,
      weights,
      slips,
      work,
      doubted,
      why,
      network: reckoned.network,
    },
    body: ReckoningView(shown),
  });
}
function customerLines({ closed, cameIn, added, removed, own }) {
  if (!closed || !cameIn) return [];
  const sum = (terms) => massNg(terms.reduce((total, { ng }) => total + ng, 0));
  const told = customerJob({ receivedNg: cameIn.ng, cutNg: sum(removed), addedNg: sum(added) }, closed);
  return own ? [told, customerMetal(own, massNg(closed.stepNg || 10_000_000))] : [told];
}
/** Count first; weights only where a stone was weighed twice. */
function stoneLines({ stones }, name) {
  return stones.map(({ thing, out, setAgain, before, after, compared }) => {
    const counted = `${name(thing)}: ${out} out, ${setAgain} set again${out > setAgain ? `, ${out - setAgain} still out` : ''}.`;
    if (!compared || !before || !after) return `${counted} Not weighed twice, so not compared by weight.`;
    return `${counted} ${customerStone(before.ng, after.ng, before.stepNg ?? massNg(200_000), compared, 'cannot tell')}`;
  });
}
function insurerLines({ closed, history, size, weights }, policy, { balances }) {
  if (!closed) return [];
  const day = (ms) => formatCivilDate(civilDateOf(instant(ms), policy.zone));
  const readings = history.streams.flatMap(({ seq, atMs, part, state, reading }) => {
    if (!reading) return [];
    const calibratedMs = balances.calibratedMs(reading, atMs);
    const calibrated = calibratedMs === null ? 'not calibrated since it came into service' : `calibrated ${day(calibratedMs)}`;
    const on = reading.balance === undefined ? 'no balance' : `${policy.balanceNames.get(reading.balance) ?? 'a balance'}, ${calibrated}`;
    return [{ what: `Entry ${seq}, ${day(atMs)}, ${state ?? part}`, text: readingWords(reading), on }];
  });
  return [...insurerJob(readings, closed, weights.notRead), `The ledger had ${size} entries.`];
}
