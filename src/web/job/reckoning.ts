// The reckoning of one job: its weights step by step, why it does not agree, and what a customer or an insurer may be told.
import { Hono } from 'hono';
import { type ReckoningPage, ReckoningView } from '../../../views/reckoning.tsx';
import type { Thing } from '../../ledger/thing.ts';
import { jobTold } from '../../letter/job-told.ts';
import { stoneTold } from '../../letter/stone-told.ts';
import { correctedWords } from '../../projections/corrected.ts';
import { type Grounds, type JobReckoning, reckonJob } from '../../projections/job-reckoning.ts';
import { whyOf } from '../../projections/why.ts';
import { entriesOf } from '../../queries/entries.ts';
import { CALC_VERSION } from '../../reckoning/closure.ts';
import { customerMetal, insurerJob, type ShownReading } from '../../reckoning/words.ts';
import { dayIn } from '../../units/dates.ts';
import { massNg } from '../../units/mass.ts';
import { readingWords } from '../../weighing/reading.ts';
import { jobThings } from '../form/form.ts';
import { respond } from '../form/negotiate.ts';
import { type Ctx, type Env, type Policy, policyFor, type Resource, type Web } from '../session/context.ts';
import { jobAt } from './job-at.ts';
import { groundsFor } from './reckoned.ts';
import { wordsFor } from './words.ts';

export const reckoning: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/jobs/:job/reckoning', async (c) => {
    const job = await jobAt(web, c);
    return job ? page(web, c, job) : c.notFound();
  });
  return app;
};

async function page(web: Web, c: Ctx, job: Thing): Promise<Response> {
  const policy = policyFor(c);
  const grounds = await groundsFor(web, policy, job.id);
  const kept = await entriesOf(web.store, job.id);
  const reckoned = reckonJob(kept, grounds);
  const things = await jobThings(web, job.id);
  const told = jobTold({ shop: policy, job, things, kept }, grounds, () => undefined, web.clock()).letter.beam.sentence;
  const why = whyOf(reckoned, (id) => policy.balanceNames.get(id) ?? id);
  const { closed } = reckoned;
  const shown: ReckoningPage = {
    job: job.id,
    bag: job.says.bag ?? '',
    metal: things.find(({ kind }) => kind === 'piece')?.says.metal ?? 'other',
    ...{ reckoned, why },
    customer: customerLines(reckoned, told, things),
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
      ...{ corrected: reckoned.corrected, network: reckoned.network },
    },
    body: ReckoningView(shown),
  });
}

/** The sentence of the letter; and how much of the metal is theirs, where no stone is in it, whose weight in the mount nobody knows. */
function customerLines({ closed, cameIn, own }: JobReckoning, told: string, things: readonly Thing[]): readonly string[] {
  if (!closed || !cameIn) return [];
  const isMetal = things.every(({ kind, stones }) => kind !== 'piece' || !stones);
  return own && isMetal ? [told, customerMetal(own, massNg(closed.stepNg || 10_000_000))] : [told];
}

/** Count first; weights only where a stone was weighed twice. */
function stoneLines({ stones }: JobReckoning, name: (id: string) => string): readonly string[] {
  return stones.map((check) => {
    const { thing, supplied, out, setAgain, loose } = check;
    const counted = `${name(thing)}: ${out} ${supplied ? 'supplied' : 'out'}, ${setAgain} set${supplied ? '' : ' again'}${loose > 0 ? `, ${loose} still out` : ''}.`;
    return `${counted} ${stoneTold(check) ?? 'Not weighed twice, so not compared by weight.'}`;
  });
}

function insurerLines(
  { closed, history, size, weights, corrected }: JobReckoning,
  policy: Policy,
  { balances }: Grounds,
): readonly string[] {
  if (!closed) return [];
  const day = dayIn(policy.zone);
  const inOrder = [...history.streams, ...history.setAside].sort((a, b) => a.atMs - b.atMs || a.seq - b.seq);
  const readings = inOrder.flatMap((one): ShownReading[] => {
    const { seq, atMs, reading } = one;
    if (!reading) return [];
    const calibratedMs = balances.calibratedMs(reading, atMs);
    const calibrated = calibratedMs === null ? 'not calibrated since it came into service' : `calibrated ${day(calibratedMs)}`;
    const on = reading.balance === undefined ? 'no balance' : `${policy.balanceNames.get(reading.balance) ?? 'a balance'}, ${calibrated}`;
    return [{ what: `Entry ${seq}, ${day(atMs)}, ${one.state || ('part' in one ? one.part : 'read')}`, text: readingWords(reading), on }];
  });
  const changed = correctedWords(corrected);
  return [...insurerJob(readings, closed, weights.notRead), ...(changed === '' ? [] : [changed]), `The ledger had ${size} entries.`];
}
