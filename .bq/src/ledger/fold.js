import { isWet } from '../book/work.js';
import { netNg } from '../weighing/reading.js';
import { addOpen, EMPTY, keptReading, mergeTallies, restsWith } from './thing.js';
/** Folds the facts of the leaf at `seq` into the things it touches. A fact about a thing that is not there is a bug. */
export function foldFacts(touched, seq, facts) {
  facts.forEach((one, index) => {
    if (one.fact === 'flow') foldFlow(touched, seq, `${seq}.${index}`, one);
    else if (one.fact !== 'correction') amend(touched, one.of, (thing) => foldSaid(thing, seq, `${seq}.${index}`, one));
  });
}
function amend(touched, id, change) {
  const thing = touched.get(id);
  if (!thing) throw new Error(`a fact names ${id}, which the entry neither names nor begins`);
  touched.set(id, change(thing));
}
function foldSaid(thing, seq, key, said) {
  switch (said.fact) {
    case 'reading':
      return foldReading(thing, key, said);
    case 'count':
      return { ...thing, stones: thing.stones ?? said.stones, counted: { says: said.stones, seq } };
    case 'identity':
      return { ...thing, says: { ...thing.says, [said.mark]: said.says } };
    case 'custody':
      return said.is === 'with' ? { ...thing, custody: { says: said.holder, seq } } : { ...thing, offered: { says: said.holder, seq } };
    case 'place':
      return { ...thing, place: { says: said.at, seq } };
    case 'title':
      return { ...thing, title: { ...thing.title, [said.part]: said.owner } };
    case 'state':
      return { ...thing, status: said.is };
    case 'hold':
      return { ...thing, holds: said.on ? [...thing.holds, said.why] : thing.holds.filter((why) => why !== said.why) };
    case 'promise':
      return { ...thing, promise: said.by };
    case 'money':
      return { ...thing, money: { ...thing.money, [said.for]: { minor: said.minor, currency: said.currency } } };
    case 'role':
      return { ...thing, role: said.role };
    case 'balance': {
      const { unit, ranges, repeatabilityNg } = said;
      return { ...thing, balance: repeatabilityNg === undefined ? { unit, ranges } : { unit, ranges, repeatabilityNg } };
    }
    case 'policy':
      return { ...thing, says: { ...thing.says, [said.name]: said.says } };
  }
}
/** A net, dry weighing is what is expected from now on; a gross one of unknown tare, or a wet one, says nothing about the thing alone. */
function foldReading(thing, key, { reading, state }) {
  const ng = netNg(reading);
  if (ng === null || isWet(state, reading)) return thing;
  const rests = restsWith(thing.kind, {}, { [key]: { sign: 1, reading: keptReading(reading) } });
  return { ...thing, expected: { ng, open: {} }, rests, stepNg: reading.stepNg ?? 0 };
}
function foldFlow(touched, seq, key, flow) {
  const source = isThing(flow.from) ? touched.get(flow.from) : undefined;
  if (isThing(flow.from) && !source) throw new Error(`a flow leaves ${flow.from}, which the entry neither names nor begins`);
  const stones = flow.whole ? (source?.stones ?? 0) : flow.matter.kind === 'stones' ? flow.matter.count : 0;
  if (source) {
    moveStones(touched, source, -stones);
    amend(touched, source.id, (thing) => (flow.whole ? emptied(thing, flow.to) : moved(thing, key, -1, flow.reading)));
    if (flow.whole && flow.to === 'outside' && source.kind === 'piece')
      amendJob(touched, source, (job) => ({ ...job, pieces: job.pieces - 1 }));
  }
  if (isThing(flow.to)) receive(touched, seq, key, flow, flow.to, source, stones);
}
function receive(touched, seq, key, flow, to, source, stones) {
  const target = touched.get(to);
  if (!target) throw new Error(`a flow reaches ${to}, which the entry neither names nor begins`);
  const comesIn = target.kind === 'piece' && flow.from === 'outside' && (target.begun === seq || target.gone);
  if (comesIn) amendJob(touched, target, (job) => ({ ...job, pieces: job.pieces + 1 }));
  moveStones(touched, target, stones);
  amend(touched, to, (thing) => ({ ...(flow.whole && source ? joined(thing, source) : moved(thing, key, 1, flow.reading)), gone: false }));
}
const isThing = (end) => end !== 'outside' && end !== 'between jobs';
function moved(thing, key, sign, reading) {
  const ng = reading ? netNg(reading) : null;
  const add = (tally) => (ng === null ? addOpen(thing.kind, tally, key, sign) : { ...tally, ng: tally.ng + sign * ng });
  const step = Math.max(thing.stepNg, reading?.stepNg ?? 0);
  const more = reading && ng !== null ? { [key]: { sign, reading: keptReading(reading) } } : {};
  return {
    ...thing,
    posted: add(thing.posted),
    expected: add(thing.expected),
    rests: restsWith(thing.kind, thing.rests, more),
    stepNg: step,
  };
}
const emptied = (thing, to) => ({ ...thing, posted: EMPTY, expected: EMPTY, rests: {}, gone: to === 'outside' });
const joined = (thing, whole) => ({
  ...thing,
  posted: mergeTallies(thing.posted, whole.posted),
  expected: mergeTallies(thing.expected, whole.expected),
  rests: restsWith(thing.kind, thing.rests, whole.rests),
  stepNg: Math.max(thing.stepNg, whole.stepNg),
});
/** Stones are counted in the thing that holds them; a job counts those that are out of its pieces. */
function moveStones(touched, thing, by) {
  if (by === 0) return;
  amend(touched, thing.id, (now) => ({ ...now, stones: (now.stones ?? 0) + by }));
  if (thing.kind !== 'piece') amendJob(touched, thing, (job) => ({ ...job, stonesOut: job.stonesOut + by }));
}
/** The job of a thing is the thing of its stream; pools and shop things have none. */
function amendJob(touched, thing, change) {
  const job = touched.get(thing.stream);
  if (job?.kind === 'job') touched.set(job.id, change(job));
}
