// The stones of one job, folded from its own leaves: each seat or group with what was noted, taken out, weighed and set, and every count beside the reckoning.
import type { Fact } from '../book/facts.ts';
import { readCorrected } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import type { Reading } from '../weighing/reading.ts';

export interface StoneEvent {
  readonly seq: number;
  readonly what: 'noted' | 'out' | 'supplied' | 'weighed' | 'set' | 'home';
  readonly stones: number;
  readonly reading: Reading | null;
}
export interface Seat {
  /** The stone or packet; null for an empty or broken seat. */
  readonly id: string | null;
  /** Its paper, by the order in which the job's stones were first named: A, B, C … */
  readonly letter: string;
  /** What was noted: seat, species, cut, sizeMm, backing, state. */
  readonly says: Readonly<Record<string, string>>;
  readonly stones: number;
  /** How many of them are out: of a group some may be set and some not. */
  readonly loose: number;
  readonly where: 'in the piece' | 'out' | 'set' | 'empty' | 'gone home';
  readonly events: readonly StoneEvent[];
}
/** A count of a piece's stones, beside what the entries before it say must be there. */
export interface StoneCount {
  readonly seq: number;
  readonly piece: string;
  readonly counted: number;
  readonly reckoned: number | null;
}
export interface JobStones {
  readonly seats: readonly Seat[];
  readonly counts: readonly StoneCount[];
  /** In the pieces by reckoning; null where nobody counted. */
  readonly inPieces: number | null;
  readonly out: number;
}

/** How a piece's mark begins that tells of a seat without a stone. */
const EMPTY_SEAT = 'seat ';

interface Building {
  readonly says: Record<string, string>;
  readonly events: StoneEvent[];
  loose: number;
  gone: boolean;
}

/** Folds the entries of a job; `kindOf` tells a stone or packet from a piece. */
export function stonesOf(kept: readonly Kept[], kindOf: (id: string) => string | undefined): JobStones {
  const seats = new Map<string, Building>();
  const empty = new Map<string, { seq: number; state: string }>();
  const inPiece = new Map<string, number>();
  const counts: StoneCount[] = [];
  const seat = (id: string): Building => {
    const known = seats.get(id) ?? { says: {}, events: [], loose: 0, gone: false };
    seats.set(id, known);
    return known;
  };
  const isStone = (id: string) => ['stone', 'packet'].includes(kindOf(id) ?? '');
  for (const { seq, facts } of readCorrected(kept)) {
    for (const one of facts) {
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
        for (const [end, by] of [[one.from, -1] as const, [one.to, 1] as const])
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

const seatsOf = (seats: ReadonlyMap<string, Building>): readonly Seat[] =>
  [...seats]
    // A packet of worn metal or of gold that somebody brought holds no stone.
    .filter(([, { says, events }]) => says.seat !== undefined || says.species !== undefined || events.some(({ stones }) => stones > 0))
    .map(([id, of], n) => seatOf(id, letterOf(n), of));

/** Where the last count of a piece is not what the entries before it say. */
export const countsThatDiffer = ({ counts }: JobStones): readonly StoneCount[] => {
  const latest = new Map(counts.map((count) => [count.piece, count]));
  return [...latest.values()].filter(({ counted, reckoned }) => reckoned !== null && counted !== reckoned);
};

type Flow = Extract<Fact, { fact: 'flow' }>;
const stonesIn = ({ matter }: Flow): number => (matter.kind === 'stones' ? matter.count : 0);

function note(of: Building, seq: number, { mark, says }: Extract<Fact, { fact: 'identity' }>): void {
  of.says[mark] = says;
  if (mark === 'seat') of.events.push({ seq, what: 'noted', stones: 0, reading: null });
}

function receive(of: Building, seq: number, flow: Flow, what: 'supplied' | 'out'): void {
  of.loose += stonesIn(flow);
  of.events.push({ seq, what, stones: stonesIn(flow), reading: flow.reading ?? null });
}

function giveUp(of: Building, seq: number, flow: Flow): void {
  of.loose -= stonesIn(flow);
  of.events.push({ seq, what: 'set', stones: stonesIn(flow), reading: flow.reading ?? null });
}

function goHome(of: Building, seq: number): void {
  of.events.push({ seq, what: 'home', stones: of.loose, reading: null });
  of.loose = 0;
  of.gone = true;
}

const letterOf = (n: number): string => (n < 26 ? String.fromCharCode(65 + n) : `${letterOf(Math.floor(n / 26) - 1)}${letterOf(n % 26)}`);

function seatOf(id: string, letter: string, { says, events, loose, gone }: Building): Seat {
  const wasSet = events.some(({ what }) => what === 'set');
  const where = loose > 0 ? 'out' : gone ? 'gone home' : wasSet ? 'set' : 'in the piece';
  const noted = Number(says.noted ?? 1);
  const most = Math.max(noted, ...events.map(({ stones }) => stones));
  return { id, letter, says, stones: most, loose, where, events };
}

const emptySeat = (name: string, { seq, state }: { seq: number; state: string }): Seat => ({
  id: null,
  letter: '',
  says: { seat: name, state },
  stones: 0,
  loose: 0,
  where: 'empty',
  events: [{ seq, what: 'noted', stones: 0, reading: null }],
});
