import { reckon } from '../reckoning/network.js';
import { massNg } from '../units/mass.js';
import { uOfSum } from '../weighing/uncertainty.js';

const ENDS = ['still here', 'left whole'];
/** The chain of a job's pieces. */
export function chainOf(history) {
  const pieceNodes = new Set(history.nodes.filter(({ things }) => things.some((id) => history.pieces.has(id))).map(({ id }) => id));
  const streams = history.streams.filter(({ from, to }) => from !== to);
  const ends = new Set(streams.filter(({ part, from }) => ENDS.includes(part) && pieceNodes.has(from)).map(({ from }) => from));
  const closedNodes = new Set([...pieceNodes].filter((id) => !ends.has(id)));
  const flowing = streams.filter(({ part }) => !ENDS.includes(part));
  const isArrival = ({ part, stones, to }) => part === 'came in' && stones === undefined && pieceNodes.has(to);
  const groups = reckon(networkOf(history)).groups.filter(({ testable: isTestable }) => isTestable);
  const testable = new Set(groups.flatMap(({ nodes }) => nodes));
  const closedOver = new Set([...closedNodes, ...groups.flatMap(({ nodes }) => (nodes.some((id) => closedNodes.has(id)) ? nodes : []))]);
  const own = new Set([...pieceNodes, ...closedOver]);
  const unweighed = flowing.filter(({ ng, from, to }) => ng === null && [from, to].some((id) => pieceNodes.has(id) && !testable.has(id)));
  const last = flowing.filter(({ part, from, to }) => part === 'weighing' && closedNodes.has(from) && ends.has(to));
  const present = flowing.filter((step) => signOver(ends, step) !== 0);
  return {
    cameIn: flowing.filter(isArrival),
    crossed: flowing.filter((step) => !isArrival(step) && signOver(own, step) !== 0),
    own,
    last,
    closing: termsOver(closedOver, flowing),
    isOpen: [...closedNodes].some((id) => !testable.has(id)),
    unknownSince: unweighed.length === 0 ? null : Math.min(...unweighed.map(({ seq }) => seq)),
    expected: ends.size === 0 || present.some(({ ng }) => ng === null) ? null : sumOver(ends, present),
    movedSince: present.some((step) => !last.includes(step) && !isArrival(step)),
  };
}
/** All nodes and streams of a history, but those that have cancelled. */
export const networkOf = ({ nodes, streams }) => ({
  nodes: nodes.map(({ id }) => id),
  streams: streams.filter(({ from, to }) => from !== to),
});
/** +1 into a set of nodes, −1 out of it, 0 within or without. */
export const signOver = (nodes, { from, to }) => (nodes.has(to) === nodes.has(from) ? 0 : nodes.has(to) ? 1 : -1);
/** The measured streams across the edge of a set of nodes, as terms of its closure. */
export function termsOver(nodes, streams) {
  return streams.flatMap((step) => {
    const sign = signOver(nodes, step);
    return sign === 0 || step.ng === null ? [] : [termOf(step, sign)];
  });
}
export function termOf({ id, seq, ng, uRandomG, factors, sG, dof, sOf, reading }, sign) {
  const worth = { uRandomG, factors, ...(sG === undefined || dof === undefined || sOf === undefined ? {} : { sG, dof, sOf }) };
  return { id, seq, sign, ng, worth, ...(reading?.stepNg === undefined ? {} : { stepNg: reading.stepNg }) };
}
function sumOver(nodes, streams) {
  const terms = termsOver(nodes, streams);
  return { ng: massNg(terms.reduce((sum, { sign, ng }) => sum + sign * ng, 0)), uG: uOfSum(terms) };
}
