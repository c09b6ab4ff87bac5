// What lay on the pan each time the stones of a job were weighed: how many of them, whether the same ones, and whether they alone.
import type { Fact } from '../book/facts.ts';
import { isRef } from '../units/ids.ts';
import type { Reading } from '../weighing/reading.ts';
import { isNoWeight } from './history.ts';
import type { Told } from './told.ts';

export interface Pan {
  /** The stream of the history that carries its weight. */
  readonly id: string;
  readonly stones: number;
  /** Weighings of one lot are of the same stones: of a packet that was opened between two of them nobody knows that. */
  readonly lot: number;
  /** False where something perhaps wet, glue, dirt or a thing of unknown weight was weighed with them. */
  readonly isAlone: boolean;
}
/** What became of one stone or packet; counts of stones. */
export interface Passage {
  /** It was not in a piece when that came. */
  supplied: boolean;
  came: number;
  set: number;
  loose: number;
  lot: number;
  readonly pans: Pan[];
}
type Flow = Extract<Fact, { fact: 'flow' }>;

/** The passage of everything that stones came to and that is no piece, by its id. */
export function passagesOf(entries: readonly Told[], pieces: ReadonlySet<string>): ReadonlyMap<string, Passage> {
  const all = new Map<string, Passage>();
  for (const { seq, facts } of entries) {
    for (const [index, one] of facts.entries()) {
      const id = `${seq}.${index}`;
      if (one.fact === 'flow') moves(all, pieces, id, one);
      const of = one.fact === 'reading' && !isSaidByFlow(facts, one.reading) ? all.get(one.of) : undefined;
      if (of && of.loose > 0 && one.fact === 'reading')
        of.pans.push({ id, stones: of.loose, lot: of.lot, isAlone: !isNoWeight(one.reading, one.state) });
    }
  }
  return all;
}

const isSaidByFlow = (facts: readonly Fact[], reading: Reading): boolean =>
  facts.some((one) => one.fact === 'flow' && one.reading === reading);

function moves(all: Map<string, Passage>, pieces: ReadonlySet<string>, id: string, flow: Flow): void {
  const { from, to, matter, reading } = flow;
  const left = all.get(from);
  if (left) goes(left, from, flow.whole || matter.kind !== 'stones' ? left.loose : matter.count, pieces.has(to));
  if (matter.kind !== 'stones' || to === 'outside' || to === 'between jobs' || pieces.has(to)) return;
  const into = all.get(to) ?? { supplied: true, came: 0, set: 0, loose: 0, lot: 0, pans: [] };
  all.set(to, into);
  if (into.came > 0 && !isRef('stone', to)) into.lot += 1;
  into.supplied &&= from === 'outside';
  into.came += matter.count;
  into.loose += matter.count;
  // What was weighed before it joined others is no weight of all of them.
  const isAll = into.loose === matter.count;
  if (reading) into.pans.push({ id, stones: matter.count, lot: isAll ? into.lot : -1, isAlone: !isNoWeight(reading) });
}

function goes(of: Passage, thing: string, stones: number, isIntoPiece: boolean): void {
  of.loose -= stones;
  if (isIntoPiece) of.set += stones;
  if (of.loose > 0 && !isRef('stone', thing)) of.lot += 1;
}
