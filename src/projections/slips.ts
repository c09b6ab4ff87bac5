// Plain mistakes that would explain what is off in a job: its closing as a whole, or one weighing that the steps point to.
import type { Closure } from '../reckoning/closure.ts';
import type { NetworkReckoning } from '../reckoning/network.ts';
import { findSlips, type Known, type Slip, slipsOf, type WrittenWeighing } from '../reckoning/slip.ts';
import { explanationsIn } from '../reckoning/together.ts';
import { type Chain, type Term, termOf } from './chain.ts';
import type { History, Step } from './history.ts';

interface Reckoned {
  readonly chain: Chain;
  readonly history: History;
  readonly closed: Closure | null;
  readonly network: NetworkReckoning;
}

/** Single mistakes, each by the stream of its weighing; none where the job agrees, as a whole and step by step. */
export function slipsIn(
  { chain, history, closed, network }: Reckoned,
  tares: readonly Known[] = [],
  others: readonly Known[] = [],
): readonly Slip[] {
  const steps = new Map(history.streams.map((step) => [step.id, step]));
  const isOff = closed?.verdict === 'weigh again' || closed?.verdict === 'does not agree';
  const closing = chain.closing.flatMap((term) => writtenOf(term, steps.get(term.id)));
  const overall = isOff ? findSlips(closing, tares, others, closed.dustMostG) : [];
  const suspects = explanationsIn(network)
    .flat()
    .filter(({ significant }) => significant)
    .flatMap((set) => set.suspects);
  const byStep = suspects.flatMap((one) => {
    const step = one.fault === 'weighing wrong' ? steps.get(one.stream) : undefined;
    if (!step || step.ng === null) return [];
    const range = { leastG: one.size - 2 * one.u, mostG: one.size + 2 * one.u };
    // Between two steps a weighing has no side of the book.
    return writtenOf(termOf({ ...step, ng: step.ng }, 1), step)
      .flatMap((weighing) => slipsOf(weighing, range, tares, others))
      .filter(({ kind }) => kind !== 'wrong direction' && kind !== 'counted twice');
  });
  return [...new Map([...overall, ...byStep].map((slip) => [Object.values(slip).join(), slip])).values()];
}

function writtenOf(term: Term, step: Step | undefined): readonly WrittenWeighing[] {
  if (!step?.reading) return [];
  const isPart = (step.part !== 'weighing' && step.part !== 'came in') || step.stones !== undefined;
  return [{ ...term, text: step.reading.text, unit: step.reading.unit, isPart }];
}
