import { isWet } from '../book/work.js';
import { OUTSIDE } from '../reckoning/network.js';
import { netNg } from '../weighing/reading.js';
/** Things that are streams of their own (lots, stocks, skins) and what is between jobs are outside a job. */
export function insideOf(entries) {
  const streams = new Set(entries.flatMap(({ streams: own }) => own));
  return (end) => end !== 'outside' && end !== 'between jobs' && !streams.has(end);
}
/** The network of a history; `inside` says which ends are holdings of it, the rest being the outside. */
export function historyOf(entries, worths, inside = insideOf(entries)) {
  const building = {
    ...{ inside, worths, streams: [], current: new Map(), begun: new Map(), merged: new Map(), things: new Map() },
  };
  const pieces = new Set();
  for (const entry of entries) {
    for (const [index, one] of entry.facts.entries()) {
      if (one.fact === 'count') pieces.add(one.of);
      if (one.fact === 'flow') flows(building, entry, index, one);
      if (one.fact === 'reading' && inside(one.of)) weighs(building, entry, index, one);
    }
  }
  for (const [thing, node] of building.current) stays(building, thing, node);
  return finished(building, pieces);
}
/** The node a thing is in now; one begins where it has none. */
function nodeOf(building, end) {
  if (!building.inside(end)) return OUTSIDE;
  return building.current.get(end) ?? nextNode(building, end);
}
function nextNode({ current, begun, things }, thing) {
  const n = begun.get(thing) ?? 0;
  const node = `${thing}#${n}`;
  begun.set(thing, n + 1);
  current.set(thing, node);
  things.set(node, [thing]);
  return node;
}
/** The node that this one was carried whole into. */
function rootOf({ merged }, node) {
  let root = node;
  for (let next = merged.get(root); next !== undefined; next = merged.get(root)) root = next;
  return root;
}
const UNMEASURED = { ng: null, uRandomG: 0, factors: [] };
function measured({ worths }, reading, atMs) {
  const ng = reading ? netNg(reading) : null;
  return reading && ng !== null ? { ...worths(reading, atMs), ng, reading } : UNMEASURED;
}
function flows(building, { seq, atMs }, index, flow) {
  const from = nodeOf(building, flow.from);
  const to = nodeOf(building, flow.to);
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
    ...measured(building, flow.reading, atMs),
  });
}
const isEmpty = ({ streams }, node) => !streams.some(({ from, to }) => from === node || to === node);
/** A thing carried whole keeps the very same measurement: its node and the other are one, so that out and in again cancels. */
function carryWhole(building, from, to) {
  const [one, other] = [rootOf(building, from), rootOf(building, to)];
  if (one === other) return;
  building.merged.set(one, other);
  building.things.set(other, [...(building.things.get(other) ?? []), ...(building.things.get(one) ?? [])]);
}
/** The weighing that replaces the one as received, so that soap is not lost gold. */
const BASE = 'cleaned and dry';
function weighs(building, { seq, atMs, facts }, index, { of, state, reading }) {
  const saidByFlow = facts.some((one) => one.fact === 'flow' && one.reading === reading && (one.to === of || one.from === of));
  if (saidByFlow || netNg(reading) === null || (state !== 'as received' && isWet(state, reading))) return;
  const node = nodeOf(building, of);
  const arrival = arrivalOf(building, rootOf(building, node));
  const amount = measured(building, reading, atMs);
  if (arrival && (arrival.ng === null || (state === BASE && arrival.state !== BASE))) {
    building.streams[building.streams.indexOf(arrival)] = { ...arrival, ...amount, id: `${seq}.${index}`, seq, atMs, state };
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
function arrivalOf(building, node) {
  const at = building.streams.filter(({ from, to }) => rootOf(building, from) === node || rootOf(building, to) === node);
  return at.length === 1 && at[0]?.part === 'came in' ? at[0] : undefined;
}
function stays(building, thing, node) {
  building.streams.push({ id: `here.${thing}`, seq: -1, atMs: 0, from: node, to: OUTSIDE, part: 'still here', ...UNMEASURED });
}
/** Every end at the node it was carried into; a stream from a node to itself has cancelled and is kept for its record alone. */
function finished(building, pieces) {
  const streams = building.streams.map((one) => ({ ...one, from: rootOf(building, one.from), to: rootOf(building, one.to) }));
  const used = new Set(streams.flatMap(({ from, to }) => [from, to]));
  const nodes = [...building.things].filter(([id]) => used.has(id)).map(([id, things]) => ({ id, things }));
  const now = new Map([...building.current].map(([thing, node]) => [thing, rootOf(building, node)]));
  return { nodes, streams, now, pieces };
}
