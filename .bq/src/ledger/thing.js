import { massNg } from '../units/mass.js';
export const EMPTY = { ng: 0, open: {} };
/** A thing at the moment an entry begins it. */
export function newThing(id, kind, stream, begun) {
  const blank = { says: {}, title: {}, holds: [], posted: EMPTY, expected: EMPTY, rests: {}, stepNg: 0, gone: false };
  return { id, kind, stream, begun, ...blank, pieces: 0, stonesOut: 0, money: {} };
}
/** Kinds whose additions commute and may be without number: they keep how many flows were not measured and the first of them. */
const POOLS = ['lot', 'stock', 'skin'];
/** A tally with one unmeasured flow more. */
export function addOpen(kind, tally, key, sign) {
  const first = Object.keys(tally.open)[0];
  if (first && POOLS.includes(kind)) return { ng: tally.ng, open: { [first]: (tally.open[first] ?? 0) + 1 } };
  return mergeTallies(tally, { ng: 0, open: { [key]: sign } });
}
/** Sum of two tallies; an unmeasured flow out and in again cancels. */
export function mergeTallies(a, b) {
  const open = { ...a.open };
  for (const [key, sign] of Object.entries(b.open)) {
    const sum = (open[key] ?? 0) + sign;
    if (sum === 0) delete open[key];
    else open[key] = sum;
  }
  return { ng: a.ng + b.ng, open };
}
/** The readings that a thing of that kind rests on, with more of them; one that went out and came in again whole cancels. A pool keeps none. */
export function restsWith(kind, a, b) {
  if (POOLS.includes(kind)) return {};
  const cancelled = Object.keys(b).filter((key) => a[key] !== undefined && a[key].sign !== b[key]?.sign);
  return Object.fromEntries(Object.entries({ ...a, ...b }).filter(([key]) => !cancelled.includes(key)));
}
/** What a reading's worth rests on, its members always in one order: a thing folded anew is the same to the byte. */
export function keptReading({ text, unit, ng, basis, balance, stepNg, onPan }) {
  return {
    ...{ text, unit, ng, basis },
    ...(balance === undefined ? {} : { balance }),
    ...(stepNg === undefined ? {} : { stepNg }),
    ...(onPan === undefined ? {} : { onPan: onPan.map(({ thing, tareNg }) => (tareNg === undefined ? { thing } : { thing, tareNg })) }),
  };
}
/** The sum, or the entry since which it cannot be known. */
export function sumOf({ ng, open }) {
  const seqs = Object.keys(open).map((key) => Number.parseInt(key, 10));
  return seqs.length === 0 ? { ng: massNg(ng) } : { unknownSince: Math.min(...seqs) };
}
/** Who answers for a thing: the latest by seq of what was said of itself and of its job. */
export function holderOf(thing, job) {
  const said = [thing.custody, job?.custody].filter((one) => one !== undefined);
  return said.sort((a, b) => b.seq - a.seq)[0]?.says ?? null;
}
/** Where a thing is: the latest by seq of what was said of itself and of its job. */
export function placeOf(thing, job) {
  const said = [thing.place, job?.place].filter((one) => one !== undefined);
  return said.sort((a, b) => b.seq - a.seq)[0]?.says ?? null;
}
function offeredTo(thing, job) {
  const latest = [thing, job].map((one) => one?.offered).filter((one) => one !== undefined);
  const offer = latest.sort((a, b) => b.seq - a.seq)[0];
  const taken = Math.max(thing.custody?.seq ?? -1, job?.custody?.seq ?? -1);
  return offer && offer.seq > taken ? offer.says : null;
}
/** What an entry's `decide` may know of a thing; `job` is the job it belongs to, where it belongs to one. */
export function stateOf(thing, job) {
  const named = { id: thing.id, says: thing.says };
  const held = { holder: holderOf(thing, job), offeredTo: offeredTo(thing, job), holds: [...thing.holds, ...(job?.holds ?? [])] };
  const mass = { balance: sumOf(thing.posted), expected: sumOf(thing.expected), gone: thing.gone, ...held };
  const jobStatus = job?.status ?? 'open';
  const stones = { stonesIn: thing.stones ?? null, jobStatus, stonesOut: job?.stonesOut ?? 0 };
  const metal = thing.says.metal ?? 'other';
  switch (thing.kind) {
    case 'shop':
    case 'customer':
    case 'place':
    case 'bag':
      return { kind: thing.kind, ...named };
    case 'person':
      return { kind: 'person', ...named, role: thing.role ?? 'left' };
    case 'balance':
      return { kind: 'balance', ...named, unit: thing.balance?.unit ?? 'g', ranges: thing.balance?.ranges ?? [] };
    case 'job': {
      const owners = { cutMetal: thing.title['cut metal'] ?? null, dust: thing.title.dust ?? null };
      const counts = { piecesIn: thing.pieces, stonesOut: thing.stonesOut };
      return { kind: 'job', ...named, status: thing.status ?? 'open', ...owners, ...held, ...counts };
    }
    case 'piece':
      return { kind: 'piece', ...named, ...mass, ...stones, owner: thing.title.whole ?? job?.title.whole ?? null };
    case 'stone':
      return { kind: 'stone', ...named, ...mass, loose: (thing.stones ?? 0) > 0, jobStatus };
    case 'packet':
      return { kind: 'packet', ...named, ...mass, stonesIn: thing.stones ?? null, jobStatus };
    case 'lot':
      return { kind: 'lot', ...named, ...mass, status: thing.status ?? 'open', metal };
    case 'stock':
      return { kind: 'stock', ...named, ...mass, metal };
    case 'skin':
      return { kind: 'skin', ...named, ...mass, metal };
    case 'entry':
      throw new Error('an entry is not a thing: its state is made from its leaf');
  }
}
