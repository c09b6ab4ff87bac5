// One job as a chain: the nodes of its pieces with all that left them unweighed, what crossed into and out of them, and which of those nodes a weighing has closed.
import type { Weighing } from '../reckoning/closure.ts';
import { reckon } from '../reckoning/network.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { uOfSum } from '../weighing/uncertainty.ts';
import type { History, Step } from './history.ts';

/** A weighing of the chain, with the entry that says it. */
export interface Term extends Weighing {
  readonly seq: number;
}
export interface Chain {
  readonly cameIn: readonly Step[];
  /** The nodes of the pieces, and those that unweighed flows join to them: stones, packets and metal that left unweighed and were weighed later. */
  readonly own: ReadonlySet<string>;
  /** All that crossed into (+) or out of (−) these, but the arrival of the pieces. */
  readonly crossed: readonly Step[];
  /** The last weighing of each piece; empty while there is none after its arrival. */
  readonly last: readonly Step[];
  /** What closes the chain at its last weighings, over every node that an unweighed flow joins to it. */
  readonly closing: readonly Term[];
  /** Whether something of it was not weighed, and since which entry what is left cannot be known. */
  readonly isOpen: boolean;
  readonly unknownSince: number | null;
  /** The entries of all that was not weighed, where the chain is left unknown by it. */
  readonly unknown: readonly number[];
  /** Metal was had by difference from the very weighing that closes its step: the sum comes out whatever went or came. */
  readonly isCircular: boolean;
  /** What is in the pieces by reckoning from their last weighings. */
  readonly expected: { readonly ng: MassNg; readonly uG: number } | null;
  /** Something has happened since the last weighing. */
  readonly movedSince: boolean;
}
const ENDS = ['still here', 'left whole'];
type Measured = Step & { readonly ng: MassNg };

/** The chain of a job's pieces; `first` is its history as it was first written, before its corrections. */
export function chainOf(history: History, first: History = history): Chain {
  const pieceNodes = new Set(history.nodes.filter(({ things }) => things.some((id) => history.pieces.has(id))).map(({ id }) => id));
  const streams = history.streams.filter(({ from, to }) => from !== to);
  const ends = new Set(streams.filter(({ part, from }) => ENDS.includes(part) && pieceNodes.has(from)).map(({ from }) => from));
  const closedNodes = new Set([...pieceNodes].filter((id) => !ends.has(id)));
  const flowing = streams.filter(({ part }) => !ENDS.includes(part));
  const isArrival = ({ part, stones, to }: Step) => part === 'came in' && stones === undefined && pieceNodes.has(to);
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
    unknown: [...new Set(unweighed.map(({ seq }) => seq))],
    isCircular: flowing.some(isHadFromSum(flowing)) || isHadBefore(flowing, first),
    expected: ends.size === 0 || present.some(({ ng }) => ng === null) ? null : sumOver(ends, present),
    movedSince: present.some((step) => !last.includes(step) && !isArrival(step)),
  };
}

/** Whether a stream of metal is a difference had from the weighing written with it, so that the sum of its step is nothing; a coil weighed before and after is a difference of its own. */
const isHadFromSum =
  (streams: readonly Step[]) =>
  ({ part, reading, seq, atMs }: Step): boolean =>
    part === 'metal' &&
    reading?.basis === 'difference' &&
    streams.some((one) => one.part === 'weighing' && one.seq === seq + 1 && one.atMs === atMs && sumsToNothing(one.from, streams));

/** A difference had from a weighing that was corrected since still checks nothing, until it is itself weighed. */
function isHadBefore(flowing: readonly Step[], { streams }: History): boolean {
  const was = streams.filter(({ from, to, part }) => from !== to && !ENDS.includes(part));
  const had = new Set(was.filter(isHadFromSum(was)).map(({ id }) => id));
  return flowing.some(({ id, reading }) => reading?.basis === 'difference' && had.has(id));
}

function sumsToNothing(node: string, streams: readonly Step[]): boolean {
  const at = streams.filter((step) => signOver(new Set([node]), step) !== 0);
  return at.every(({ ng }) => ng !== null) && termsOver(new Set([node]), at).reduce((sum, { sign, ng }) => sum + sign * ng, 0) === 0;
}

/** All nodes and streams of a history, but those that have cancelled. */
export const networkOf = ({ nodes, streams }: History) => ({
  nodes: nodes.map(({ id }) => id),
  streams: streams.filter(({ from, to }) => from !== to),
});

/** +1 into a set of nodes, −1 out of it, 0 within or without. */
export const signOver = (nodes: ReadonlySet<string>, { from, to }: Pick<Step, 'from' | 'to'>): 1 | -1 | 0 =>
  nodes.has(to) === nodes.has(from) ? 0 : nodes.has(to) ? 1 : -1;

/** The measured streams across the edge of a set of nodes, as terms of its closure. */
export function termsOver(nodes: ReadonlySet<string>, streams: readonly Step[]): readonly Term[] {
  return streams.flatMap((step) => {
    const sign = signOver(nodes, step);
    return sign === 0 || step.ng === null ? [] : [termOf(step as Measured, sign)];
  });
}

export function termOf({ id, seq, ng, uRandomG, factors, sG, dof, sOf, reading }: Measured, sign: 1 | -1): Term {
  const worth = { uRandomG, factors, ...(sG === undefined || dof === undefined || sOf === undefined ? {} : { sG, dof, sOf }) };
  return { id, seq, sign, ng, worth, ...(reading?.stepNg === undefined ? {} : { stepNg: reading.stepNg }) };
}

function sumOver(nodes: ReadonlySet<string>, streams: readonly Step[]): NonNullable<Chain['expected']> {
  const terms = termsOver(nodes, streams);
  return { ng: massNg(terms.reduce((sum, { sign, ng }) => sum + sign * ng, 0)), uG: uOfSum(terms) };
}
