import { correctionsIn, factsOf } from '../ledger/corrections.js';

/** How a piece's mark begins that tells of a seat without a stone. */
const EMPTY_SEAT = 'seat ';
/** Folds the entries of a job; `kindOf` tells a stone or packet from a piece. */
export function stonesOf(kept, kindOf) {
  const corrections = correctionsIn(kept);
  const seats = new Map();
  const empty = new Map();
  const inPiece = new Map();
  const counts = [];
  const seat = (id) => {
    const known = seats.get(id) ?? { says: {}, events: [], loose: 0, gone: false };
    seats.set(id, known);
    return known;
  };
  const isStone = (id) => ['stone', 'packet'].includes(kindOf(id) ?? '');
  for (const { seq, hash, leaf } of kept) {
    for (const one of factsOf(leaf, corrections.get(hash))) {
      if (one.fact === 'count') {
        counts.push({ seq, piece: one.of, counted: one.stones, reckoned: inPiece.get(one.of) ?? null });
        if (!inPiece.has(one.of)) inPiece.set(one.of, one.stones);
      } else if (one.fact === 'identity' && isStone(one.of)) note(seat(one.of), seq, one);
      else if (one.fact === 'identity' && one.mark.startsWith(EMPTY_SEAT))
        empty.set(one.mark.slice(EMPTY_SEAT.length), { seq, state: one.says });
      else if (one.fact === 'reading' && isStone(one.of))
        seat(one.of).events.push({ seq, what: 'weighed', stones: seat(one.of).loose, reading: one.reading });
      else if (one.fact === 'flow' && one.matter.kind === 'stones') {
        if (isStone(one.to)) receive(seat(one.to), seq, one, one.from === 'outside' ? 'supplied' : 'out');
        if (isStone(one.from)) giveUp(seat(one.from), seq, one);
        for (const [end, by] of [
          [one.from, -1],
          [one.to, 1],
        ])
          if (inPiece.has(end)) inPiece.set(end, (inPiece.get(end) ?? 0) + by * one.matter.count);
      } else if (one.fact === 'flow' && one.whole && isStone(one.from)) goHome(seat(one.from), seq);
    }
  }
  return {
    seats: [...seatsOf(seats), ...[...empty].map(([name, of]) => emptySeat(name, of))],
    counts,
    inPieces: inPiece.size === 0 ? null : [...inPiece.values()].reduce((sum, n) => sum + n, 0),
    out: [...seats.values()].reduce((sum, { loose }) => sum + loose, 0),
  };
}
const seatsOf = (seats) =>
  [...seats]
    .filter(([, { says, events }]) => says.seat !== undefined || events.length > 0)
    .map(([id, of], n) => seatOf(id, letterOf(n), of));
/** Where the last count of a piece is not what the entries before it say. */
export const countsThatDiffer = ({ counts }) => {
  const latest = new Map(counts.map((count) => [count.piece, count]));
  return [...latest.values()].filter(({ counted, reckoned }) => reckoned !== null && counted !== reckoned);
};
const stonesIn = ({ matter }) => (matter.kind === 'stones' ? matter.count : 0);
function note(of, seq, { mark, says }) {
  of.says[mark] = says;
  if (mark === 'seat') of.events.push({ seq, what: 'noted', stones: 0, reading: null });
}
function receive(of, seq, flow, what) {
  of.loose += stonesIn(flow);
  of.events.push({ seq, what, stones: stonesIn(flow), reading: flow.reading ?? null });
}
function giveUp(of, seq, flow) {
  of.loose -= stonesIn(flow);
  of.events.push({ seq, what: 'set', stones: stonesIn(flow), reading: flow.reading ?? null });
}
function goHome(of, seq) {
  of.events.push({ seq, what: 'home', stones: of.loose, reading: null });
  of.loose = 0;
  of.gone = true;
}
const letterOf = (n) => (n < 26 ? String.fromCharCode(65 + n) : `${letterOf(Math.floor(n / 26) - 1)}${letterOf(n % 26)}`);
function seatOf(id, letter, { says, events, loose, gone }) {
  const wasSet = events.some(({ what }) => what === 'set');
  const where = loose > 0 ? 'out' : gone ? 'gone home' : wasSet ? 'set' : 'in the piece';
  const noted = Number(says.noted ?? 1);
  const most = Math.max(noted, ...events.map(({ stones }) => stones));
  return { id, letter, says, stones: most, where, events };
}
const emptySeat = (name, { seq, state }) => ({
  id: null,
  letter: '',
  says: { seat: name, state },
  stones: 0,
  where: 'empty',
  events: [{ seq, what: 'noted', stones: 0, reading: null }],
});
