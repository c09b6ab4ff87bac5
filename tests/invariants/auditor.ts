// An auditor who reads the raw leaves of a job with plain loops. It shares no code with the projections: it knows the entries by name
// and keeps what it has read in ordinary variables.
import type { Kept } from '../../src/ledger/leaf.ts';

/** What one thing holds since it was last weighed: a sum, and how often each unweighed amount is in it. */
interface Pot {
  ng: number;
  unweighed: Record<string, number>;
}
interface PieceBook {
  arrival: number | null;
  untouched: boolean;
  /** In less out since it arrived, and the same as it stood at the last weighing. */
  sum: Pot;
  atLast: (Pot & { weighed: number }) | null;
}
type Data = Readonly<Record<string, unknown>>;

/** A piece is so only after work: what it weighs then is not what it came in at. */
const WORKED = ['stones out', 'cut', 'joined', 'polished', 'plated', 'stones set', 'finished', 'returned'];

const empty = (): Pot => ({ ng: 0, unweighed: {} });
const copy = (pot: Pot): Pot => ({ ng: pot.ng, unweighed: { ...pot.unweighed } });
function put(pot: Pot, ng: number | null, name: string, sign: number) {
  if (ng === null) pot.unweighed[name] = (pot.unweighed[name] ?? 0) + sign;
  else pot.ng += sign * ng;
}
const isKnown = (pot: Pot) => Object.values(pot.unweighed).every((n) => n === 0);

/** Data as corrected, by number. */
function corrected(leaves: readonly Kept[]): Map<number, Data> {
  const data = new Map<number, Record<string, unknown>>(leaves.map(({ seq, leaf }) => [seq, { ...leaf.data }]));
  for (const { leaf } of leaves) {
    if (leaf.type !== 'corrected') continue;
    const target = data.get(Number(leaf.data.seq));
    if (!target) continue;
    if (leaf.data.is === undefined) delete target[String(leaf.data.field)];
    else target[String(leaf.data.field)] = leaf.data.is;
  }
  return data;
}

function audit(leaves: readonly Kept[]) {
  const pieces = new Map<string, PieceBook>();
  const others = new Map<string, Pot>();
  const now = new Map<string, Pot>();
  const data = corrected(leaves);
  const weigh = (id: string, ng: number, state: string) => {
    const book = pieces.get(id);
    if (!book) {
      others.set(id, { ng, unweighed: {} });
      return;
    }
    if (book.arrival === null && book.untouched && !WORKED.includes(state)) {
      book.arrival = ng;
      book.sum = { ng, unweighed: {} };
    } else {
      book.atLast = { ...copy(book.sum), weighed: ng };
      book.untouched = false;
    }
    now.set(id, { ng, unweighed: {} });
  };
  const move = (id: string, ng: number | null, name: string, sign: number) => {
    const book = pieces.get(id);
    if (!book) {
      const pot = others.get(id) ?? empty();
      others.set(id, pot);
      put(pot, ng, name, sign);
      return;
    }
    put(book.sum, ng, name, sign);
    put(now.get(id) ?? empty(), ng, name, sign);
    book.untouched = false;
  };
  for (const { seq, leaf } of leaves) {
    const said = data.get(seq) ?? {};
    const ng = said.weight === undefined ? null : Number((said.weight as { ng: number }).ng);
    const id = String(said.piece);
    const name = String(seq);
    if (leaf.type === 'piece_received') {
      const sum = empty();
      put(sum, ng, name, 1);
      pieces.set(id, { arrival: ng, untouched: true, sum, atLast: null });
      now.set(id, copy(sum));
    }
    if (leaf.type === 'stone_unset' || (leaf.type === 'metal_cut' && said.packet !== undefined)) {
      move(id, ng, name, -1);
      move(String(said.stone ?? said.packet), ng, name, 1);
    }
    if (leaf.type === 'metal_cut' && said.lot !== undefined) move(id, ng, name, -1);
    if (leaf.type === 'stone_supplied') move(String(said.stone), ng, name, 1);
    if (leaf.type === 'metal_added') {
      if (said.packet !== undefined) move(String(said.packet), ng, name, -1);
      move(id, ng, name, 1);
    }
    if (leaf.type === 'stone_set') {
      const from = String(said.stone ?? said.packet);
      if (said.packet !== undefined && Number(said.left ?? 0) > 0) {
        move(from, ng, name, -1);
        move(id, ng, name, 1);
      } else {
        const pot = others.get(from) ?? empty();
        move(id, pot.ng, name, 1);
        for (const [open, n] of Object.entries(pot.unweighed)) if (n !== 0) move(id, null, open, n);
        others.delete(from);
      }
    }
    if (['piece_weighed', 'piece_returned', 'returned_with_exception'].includes(leaf.type) && ng !== null)
      weigh(id, ng, String(said.state ?? 'returned'));
  }
  return { pieces: [...pieces.values()], now: [...now.values()] };
}

/** What a job weighed as it came in, the loss at its last weighing, and what is in its pieces, in ng; null where it cannot be known. */
export function expectedFigures(leaves: readonly Kept[]) {
  const { pieces, now } = audit(leaves);
  const cameIn = pieces.length > 0 && pieces.every(({ arrival }) => arrival !== null);
  const closing = empty();
  for (const { atLast } of pieces) {
    if (!atLast) continue;
    closing.ng += atLast.ng - atLast.weighed;
    for (const [name, n] of Object.entries(atLast.unweighed)) closing.unweighed[name] = (closing.unweighed[name] ?? 0) + n;
  }
  const there = empty();
  for (const pot of now) {
    there.ng += pot.ng;
    for (const [name, n] of Object.entries(pot.unweighed)) there.unweighed[name] = (there.unweighed[name] ?? 0) + n;
  }
  const isClosed = cameIn && pieces.some(({ atLast }) => atLast !== null);
  return {
    cameIn: cameIn ? pieces.reduce((sum, { arrival }) => sum + (arrival ?? 0), 0) : null,
    loss: !isClosed ? null : isKnown(closing) ? closing.ng : 'not checked',
    there: isKnown(there) ? there.ng : null,
  };
}
