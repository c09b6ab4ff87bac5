// What people do in the shop, one act at a time: what is written of it, and what truly happens.
import type { Line } from '../../src/ledger/leaf.ts';
import type { Ref } from '../../src/units/ids.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { line } from '../shop.ts';
import { lose, slipOf, sumG, type TrueJob, trueG, type World } from './world.ts';

/** How a weight is typed: by a careful hand or a tired one, and with a second reading and a reason once it was asked about. */
export interface Hand {
  readonly careful: boolean;
  readonly answered: boolean;
}
export interface Act {
  readonly name: string;
  readonly job: Ref<'job'>;
  lines(hand: Hand): readonly Line[];
  /** What truly happens once it is written; `careful` says whether a slip went in. */
  done(hand: Hand): void;
  /** The tired hand's weight is so far from the truth that it must be asked about before it is written. */
  readonly mustBeAsked?: boolean;
  /** The refusal that must stop it. */
  readonly mustBeRefused?: string;
}
/** What an act may use: names, readings, and what the ledger says of an entry that is to be corrected. */
export interface Stage {
  readonly world: World;
  readonly refs: { ref<K extends 'job' | 'piece' | 'packet' | 'stock' | 'lot'>(kind: K): Ref<K>; bag(): Ref<'bag'> };
  readonly lot: Ref<'lot'>;
  readonly stock: Ref<'stock'>;
  reading(unit: 'g' | 'ct', text: string, more: Partial<Reading>): Reading;
}
const GOLD = 'gold-750';
const again = ({ answered }: Hand, text: string): Partial<Reading> => (answered ? { repeats: [text], because: 'weighed again' } : {});

/** The reading of a true mass by that hand; each hand reads once, so that a slip is the same slip when the form is sent again. */
function weighing({ world, reading }: Stage, unit: 'g' | 'ct', massG: number) {
  const shown = (unit === 'g' ? world.bench : world.carats).shows(massG);
  const typed = unit === 'g' ? slipOf(shown, world.chance) : shown;
  const textOf = ({ careful }: Hand) => (careful ? shown : typed);
  const isFar = Math.abs(Number(typed) - Number(shown)) > 1 + 0.2 * Number(shown);
  return { slips: typed !== shown, isFar, of: (hand: Hand) => reading(unit, textOf(hand), again(hand, textOf(hand))) };
}

function takeIn(stage: Stage): Act {
  const { refs, world } = stage;
  const { chance } = world;
  const [job, piece] = [refs.ref('job'), refs.ref('piece')];
  const stonesG = Array.from({ length: chance.below(6) }, () => 0.01 + 0.1 * chance.unit());
  const metalG = 3 + 12 * chance.unit();
  const isWeighed = chance.hits(0.9);
  const read = weighing(stage, 'g', metalG + sumG(stonesG));
  const steps = [chance.hits(0.5) ? 'half-shank' : 're-tip'];
  return {
    name: 'take in',
    job,
    lines: () => [
      line('job_opened', { job, bag: refs.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      line('piece_received', {
        ...{ job, piece, kind: 'ring', description: 'Ring', stones: stonesG.length, parts: [{ part: 'shank', metal: GOLD }] },
        ...(isWeighed ? { weight: read.of({ careful: true, answered: false }) } : {}),
      }),
      line('work_agreed', {
        ...{ job, steps, details: 'as told', priceKind: 'free', promise: '2027-06-01', dust: 'shop', cutMetal: 'shop' },
        ...{ oldParts: 'customer', terms: '2026-1', agreedBy: 'signature' },
      }),
    ],
    done() {
      const blank = {
        packet: null,
        lostG: 0,
        lostSinceLastG: 0,
        lostAtLastG: null,
        wronged: false,
        stolenStones: 0,
        slipped: false,
        known: isWeighed,
      };
      const first = isWeighed ? { massG: metalG + sumG(stonesG), slipped: false } : null;
      world.jobs.push({ job, piece, stage: 'agreed', metalG, stonesG, first, ...blank });
    },
  };
}

function cut(stage: Stage, one: TrueJob): Act {
  const { lot, world } = stage;
  const cutG = 0.1 + world.chance.unit() * Math.min(1.5, one.metalG / 4);
  const read = weighing(stage, 'g', cutG);
  const isWeighed = world.chance.hits(0.93);
  const weight = isWeighed ? { weight: read.of({ careful: true, answered: true }) } : {};
  return {
    name: 'cut',
    job: one.job,
    lines: () => [line('metal_cut', { piece: one.piece, lot, metal: GOLD, part: 'worn shank', ...weight })],
    done() {
      one.metalG -= cutG;
      one.known &&= isWeighed;
    },
  };
}

function add(stage: Stage, one: TrueJob): Act {
  const addedG = 0.1 + 1.5 * stage.world.chance.unit();
  const read = weighing(stage, 'g', addedG);
  return {
    name: 'add',
    job: one.job,
    lines: () => [
      line('metal_added', {
        piece: one.piece,
        stock: stage.stock,
        metal: GOLD,
        what: 'shank',
        weight: read.of({ careful: true, answered: true }),
      }),
    ],
    done() {
      one.metalG += addedG;
    },
  };
}

function unset(stage: Stage, one: TrueJob): Act | null {
  const count = Math.min(one.stonesG.length, 1 + stage.world.chance.below(3));
  if (count === 0 || one.packet) return null;
  const packet = stage.refs.ref('packet');
  const out = one.stonesG.slice(0, count);
  const read = weighing(stage, 'ct', sumG(out));
  const weight = read.of({ careful: true, answered: true });
  return {
    name: 'unset',
    job: one.job,
    lines: () => [line('stone_unset', { piece: one.piece, packet, stones: count, weight, condition: 'sound' })],
    done() {
      one.stonesG = one.stonesG.slice(count);
      one.packet = { id: packet, cameOutG: sumG(out), stonesG: out };
    },
  };
}

/** All stones of the packet are set; now and then it is the packet of another job that lay beside it. */
function set(stage: Stage, one: TrueJob): Act | null {
  const { packet } = one;
  if (!packet) return null;
  const other = stage.world.jobs.find((job) => job !== one && job.packet?.stonesG.length === packet.stonesG.length);
  const isWrong = other?.packet && stage.world.chance.hits(0.3);
  return {
    name: isWrong ? 'set the wrong parcel' : 'set',
    job: one.job,
    lines: () => [line('stone_set', { piece: one.piece, packet: packet.id, stones: packet.stonesG.length })],
    done() {
      const taken = isWrong && other?.packet ? other.packet.stonesG : packet.stonesG;
      if (isWrong && other?.packet) other.packet.stonesG = packet.stonesG;
      lose(one, packet.cameOutG - sumG(taken));
      one.wronged ||= packet.cameOutG !== sumG(taken);
      one.stonesG = [...one.stonesG, ...taken];
      one.packet = null;
    },
  };
}

/** The first weight of a piece is what came in; a later one is what it is compared with. */
function weighed(one: TrueJob, slipped: boolean): void {
  if (one.first) one.lostAtLastG = one.lostG;
  else {
    one.first = { massG: trueG(one), slipped };
    one.lostG = 0;
  }
  one.lostSinceLastG = 0;
  one.slipped = slipped;
  one.known = true;
}

function weigh(stage: Stage, one: TrueJob): Act {
  const read = weighing(stage, 'g', trueG(one));
  return {
    name: 'weigh',
    job: one.job,
    mustBeAsked: one.known && !one.slipped && read.isFar,
    lines: (hand) => [line('piece_weighed', { piece: one.piece, state: 'polished', weight: read.of(hand) })],
    done: ({ careful }) => weighed(one, read.slips && !careful),
  };
}

function handBack(stage: Stage, one: TrueJob): Act | null {
  if (one.packet) return null;
  const read = weighing(stage, 'g', trueG(one));
  const counted = { piece: one.piece, stones: one.stonesG.length, to: 'customer', shown: 'the slip' };
  const isShort = one.stolenStones > 0;
  const tries = isShort && stage.world.chance.hits(0.5);
  const home = (hand: Hand) =>
    isShort && !tries
      ? line('returned_with_exception', { ...counted, exception: 'a stone is missing', signed: true, weight: read.of(hand) })
      : line('piece_returned', { ...counted, signed: 'signature', weight: read.of(hand) });
  return {
    name: isShort ? 'hand back short' : 'hand back',
    job: one.job,
    ...(tries ? { mustBeRefused: 'stone_count_differs' } : {}),
    mustBeAsked: one.known && !one.slipped && read.isFar && !tries,
    lines: (hand) => [line('work_finished', { job: one.job }), home(hand)],
    done({ careful }) {
      weighed(one, read.slips && !careful);
      one.stage = 'home';
    },
  };
}

/** What happens and is written nowhere: dust, dirt washed off, a thief. */
export function unwritten({ chance, jobs }: World): void {
  const one = chance.pick(jobs.filter(({ stage }) => stage === 'agreed'));
  if (!one) return;
  const off = (massG: number) => {
    one.metalG -= massG;
    lose(one, massG);
  };
  if (chance.hits(0.5)) off(one.metalG * Math.max(0, 0.002 + 0.001 * chance.normal()));
  else if (chance.hits(0.15) && one.stonesG.length > 0) {
    lose(one, one.stonesG.shift() ?? 0);
    one.stolenStones++;
    one.wronged = true;
  } else if (chance.hits(0.25)) {
    off(0.05 + 0.5 * chance.unit());
    one.wronged = true;
  }
}

/** The next act, or none where nothing fits. */
export function nextAct(stage: Stage): Act | null {
  const { chance, jobs } = stage.world;
  const open = jobs.filter(({ stage: at }) => at === 'agreed');
  const one = chance.pick(open);
  if (!one || (open.length < 3 && chance.hits(0.4))) return takeIn(stage);
  return [cut, add, unset, set, weigh, weigh, handBack][chance.below(7)]?.(stage, one) ?? null;
}
