// Any history of facts as a network of steps: a holding between two weighings is a node, what was weighed or not in and out of it a stream.
import type { End, Fact } from '../book/facts.ts';
import { isWet } from '../book/work.ts';
import { OUTSIDE, type Stream } from '../reckoning/network.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import type { Worths } from './balances.ts';
import type { Told } from './told.ts';

/** What a stream is: how a thing came, a weighing between two steps, something that moved, what left whole, and what is still there. */
export type Part = 'came in' | 'weighing' | 'metal' | 'stones' | 'mixed' | 'left whole' | 'still here';
export interface Step extends Stream {
  readonly seq: number;
  readonly atMs: number;
  readonly part: Part;
  readonly reading?: Reading;
  /** Of a weighing or an arrival: the state it was taken in. */
  readonly state?: string;
  /** What a piece's first weight is, where it is not one read as it came in. */
  readonly began?: Began;
  readonly stones?: number;
  /** The things themselves, whatever node they have since been carried into. */
  readonly outOf?: string;
  readonly into?: string;
}
/** A reading that was taken and is in no sum: something perhaps wet was on the pan, or something of unknown weight with it. */
export interface SetAside {
  readonly seq: number;
  readonly atMs: number;
  readonly of: string;
  readonly state: string;
  readonly reading: Reading;
}
export interface History {
  /** Nodes that carry something, in the order they began, each with the things in it. */
  readonly nodes: readonly { readonly id: string; readonly things: readonly string[] }[];
  readonly streams: readonly Step[];
  /** The node each thing that is still here is in. */
  readonly now: ReadonlyMap<string, string>;
  /** Things that have been counted or received as pieces. */
  readonly pieces: ReadonlySet<string>;
  readonly setAside: readonly SetAside[];
}
type Flow = Extract<Fact, { fact: 'flow' }>;
type Weighed = Extract<Fact, { fact: 'reading' }>;
interface Building {
  readonly inside: (end: End) => boolean;
  readonly worths: Worths;
  readonly streams: Step[];
  readonly current: Map<string, string>;
  readonly begun: Map<string, number>;
  readonly merged: Map<string, string>;
  readonly things: Map<string, string[]>;
  readonly pieces: Set<string>;
  readonly setAside: SetAside[];
}

/** Things that are streams of their own (lots, stocks, skins) and what is between jobs are outside a job. */
export function insideOf(entries: readonly Told[]): (end: End) => boolean {
  const streams = new Set(entries.flatMap(({ streams: own }) => own));
  return (end) => end !== 'outside' && end !== 'between jobs' && !streams.has(end);
}

/** The network of a history; `inside` says which ends are holdings of it, the rest being the outside. */
export function historyOf(entries: readonly Told[], worths: Worths, inside = insideOf(entries)): History {
  const building: Building = {
    ...{ inside, worths, streams: [], current: new Map(), begun: new Map(), merged: new Map(), things: new Map() },
    ...{ pieces: new Set(), setAside: [] },
  };
  for (const entry of entries) {
    for (const [index, one] of entry.facts.entries()) {
      if (one.fact === 'count') building.pieces.add(one.of);
      if (one.fact === 'flow') flows(building, entry, index, one);
      if (one.fact === 'reading' && inside(one.of)) weighs(building, entry, index, one);
    }
  }
  for (const [thing, node] of building.current) stays(building, thing, node);
  return finished(building);
}

/** The node a thing is in now; one begins where it has none. */
function nodeOf(building: Building, end: End): string {
  if (!building.inside(end)) return OUTSIDE;
  return building.current.get(end) ?? nextNode(building, end);
}

function nextNode({ current, begun, things }: Building, thing: string): string {
  const n = begun.get(thing) ?? 0;
  const node = `${thing}#${n}`;
  begun.set(thing, n + 1);
  current.set(thing, node);
  things.set(node, [thing]);
  return node;
}

/** The node that this one was carried whole into. */
function rootOf({ merged }: Pick<Building, 'merged'>, node: string): string {
  let root = node;
  for (let next = merged.get(root); next !== undefined; next = merged.get(root)) root = next;
  return root;
}

const UNMEASURED = { ng: null, uRandomG: 0, factors: [] } as const;

function measured({ worths }: Building, reading: Reading | undefined, atMs: number): Pick<Step, 'ng' | 'uRandomG' | 'factors' | 'reading'> {
  const ng = reading && !isNoWeight(reading) ? netNg(reading) : null;
  return reading && ng !== null ? { ...worths(reading, atMs), ng, reading } : UNMEASURED;
}

/** Whether a reading is no weight of the thing alone: perhaps wet in itself or by its state, or with something of unknown weight on the pan. */
export const isNoWeight = (reading: Reading, state = ''): boolean => netNg(reading) === null || isWet(state, reading);

function flows(building: Building, { seq, atMs }: Told, index: number, flow: Flow): void {
  const from = nodeOf(building, flow.from);
  const to = nodeOf(building, flow.to);
  const { reading } = flow;
  if (reading && isNoWeight(reading)) {
    const of = from === OUTSIDE || !building.pieces.has(flow.to) ? flow.to : flow.from;
    building.setAside.push({ seq, atMs, of, state: '', reading });
  }
  const isWhole = flow.whole === true && from !== OUTSIDE;
  if (isWhole) building.current.delete(flow.from);
  if (isWhole && to !== OUTSIDE) carryWhole(building, from, to);
  if (from === OUTSIDE ? to === OUTSIDE : isWhole && to !== OUTSIDE) return;
  const { kind } = flow.matter;
  const part = isWhole ? 'left whole' : from === OUTSIDE && building.begun.get(flow.to) === 1 && isEmpty(building, to) ? 'came in' : kind;
  const stones = flow.matter.kind === 'stones' ? { stones: flow.matter.count } : {};
  const things = { ...(from === OUTSIDE ? {} : { outOf: flow.from }), ...(to === OUTSIDE ? {} : { into: flow.to }) };
  building.streams.push({
    id: `${seq}.${index}`,
    seq,
    atMs,
    from,
    to,
    part,
    ...stones,
    ...things,
    ...measured(building, reading, atMs),
  });
}

const isEmpty = ({ streams }: Building, node: string) => !streams.some(({ from, to }) => from === node || to === node);

/** A thing carried whole keeps the very same measurement: its node and the other are one, so that out and in again cancels. */
function carryWhole(building: Building, from: string, to: string): void {
  const [one, other] = [rootOf(building, from), rootOf(building, to)];
  if (one === other) return;
  building.merged.set(one, other);
  building.things.set(other, [...(building.things.get(other) ?? []), ...(building.things.get(one) ?? [])]);
}

/** The weighing that replaces the one as received, so that soap is not lost gold. */
const BASE = 'cleaned and dry';

/** What the weight is that a job's sum begins from, as words after it: the first as read, the one that replaced it, or one that came late. */
export type Began = 'came in' | 'once cleaned' | 'first weighed';

/** States that a piece is in only once work was done on it: no weight in one of them is a weight it came in at. */
export const WORKED: readonly string[] = ['stones out', 'cut', 'joined', 'polished', 'plated', 'stones set', 'finished', 'returned'];

function weighs(building: Building, { seq, atMs, facts }: Told, index: number, { of, state, reading }: Weighed): void {
  const saidByFlow = facts.some((one) => one.fact === 'flow' && one.reading === reading && (one.to === of || one.from === of));
  if (saidByFlow) return;
  if (isNoWeight(reading, state)) {
    building.setAside.push({ seq, atMs, of, state, reading });
    return;
  }
  const node = nodeOf(building, of);
  const arrival = arrivalOf(building, rootOf(building, node));
  const amount = measured(building, reading, atMs);
  if (arrival && ((arrival.ng === null && !WORKED.includes(state)) || (state === BASE && arrival.state !== BASE))) {
    const began = arrival.ng === null ? 'first weighed' : 'once cleaned';
    building.streams[building.streams.indexOf(arrival)] = { ...arrival, ...amount, id: `${seq}.${index}`, seq, atMs, state, began };
    return;
  }
  building.streams.push({
    id: `${seq}.${index}`,
    seq,
    atMs,
    from: node,
    to: nextNode(building, of),
    part: 'weighing',
    into: of,
    state,
    ...amount,
  });
}

/** The arrival of a thing to which nothing has happened yet. */
function arrivalOf(building: Building, node: string): Step | undefined {
  const at = building.streams.filter(({ from, to }) => rootOf(building, from) === node || rootOf(building, to) === node);
  return at.length === 1 && at[0]?.part === 'came in' ? at[0] : undefined;
}

function stays(building: Building, thing: string, node: string): void {
  building.streams.push({ id: `here.${thing}`, seq: -1, atMs: 0, from: node, to: OUTSIDE, part: 'still here', ...UNMEASURED });
}

/** Every end at the node it was carried into; a stream from a node to itself has cancelled and is kept for its record alone. */
function finished(building: Building): History {
  const streams = building.streams.map((one) => ({ ...one, from: rootOf(building, one.from), to: rootOf(building, one.to) }));
  const used = new Set(streams.flatMap(({ from, to }) => [from, to]));
  const nodes = [...building.things].filter(([id]) => used.has(id)).map(([id, things]) => ({ id, things }));
  const now = new Map([...building.current].map(([thing, node]) => [thing, rootOf(building, node)] as const));
  return { nodes, streams, now, pieces: building.pieces, setAside: building.setAside };
}
