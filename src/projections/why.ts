// Why a job agrees or does not, in words a jeweller reads at the bench: its steps, its suspects, what to weigh again, and what nothing would show.
import { OUTSIDE } from '../reckoning/network.ts';
import type { Slip } from '../reckoning/slip.ts';
import { isPlausible, type SuspectSet } from '../reckoning/suspects.ts';
import { explanationsIn, type Together } from '../reckoning/together.ts';
import { ownerSuspects, slipWords } from '../reckoning/words.ts';
import { gapOf, gapWords, upToStep } from '../units/rounded.ts';
import { readingWords } from '../weighing/reading.ts';
import type { Began, Step } from './history.ts';
import { type JobReckoning, USUAL } from './job-reckoning.ts';

export interface StepShown {
  readonly words: string;
  readonly seqs: readonly number[];
  /** What is missing (or too much) over the step, and what the balance can tell; null where something of it was not weighed. */
  readonly gap: { readonly words: string; readonly isOff: boolean } | null;
}
export interface Why {
  readonly steps: readonly StepShown[];
  /** One sentence for each explanation, likeliest first: causes that the figures cannot tell apart, or several faults at once where no single one explains it. */
  readonly suspects: readonly string[];
  readonly slips: readonly string[];
  readonly weighAgain: readonly string[];
  /** Weighings in which nothing else would show a mistake. */
  readonly unchecked: readonly string[];
}

/** The explanation of a reckoned job; `balanceName` gives a balance its word. */
export function whyOf(reckoned: JobReckoning, balanceName: (id: string) => string = (id) => id): Why {
  const { history, network, slips, weights } = reckoned;
  const { stepNg } = weights;
  const steps = new Map(history.streams.map((step) => [step.id, step]));
  const names = namesOf(reckoned, balanceName);
  const explanations = explanationsOf(reckoned);
  const sets = explanations.flat();
  // Weighings between the steps may clear a reading that would explain the whole by itself.
  const isSuspected = ({ weighing }: Slip) =>
    sets.length === 0 || sets.some(({ suspects }) => suspects.some((one) => one.fault === 'weighing wrong' && one.stream === weighing));
  const weighings = sets.flatMap(({ suspects }) =>
    suspects.flatMap((one) => (one.fault === 'weighing wrong' ? [steps.get(one.stream)] : [])),
  );
  const named = weighings.filter((step) => step !== undefined);
  const unchecked = network.streams.filter(({ id, checkable }) => !checkable && steps.has(id)).map(({ id }) => names(id));
  return {
    steps: stepsOf(reckoned),
    suspects: network.together === null ? [TOO_MANY] : explanations.map((one) => ownerSuspects(one, stepNg, names)),
    slips: [...new Set(slips.filter(isSuspected).map((slip) => `${capital(names(slip.weighing))}: ${slipWords(slip)}.`))],
    weighAgain: [...new Set(named.map((step) => adviceOn(step, reckoned)))],
    unchecked,
  };
}

/** Beyond three faults the steps point nowhere. */
const TOO_MANY = 'More is wrong here than three faults would explain: look at the balance itself, and weigh every step again that can be.';

/** The usual loss of a step is the loss at that step by another name. */
function explanationsOf({ network }: JobReckoning): readonly Together[] {
  const named = ({ suspects, ...set }: SuspectSet): SuspectSet => ({
    ...set,
    suspects: suspects.filter((one) => isPlausible(one) && !(one.fault === 'weighing wrong' && one.stream.startsWith(USUAL))),
  });
  return explanationsIn(network)
    .map((sets) => sets.map(named))
    .filter((sets) => sets.every(({ suspects }) => suspects.length > 0));
}

/** Words for streams, nodes and factors by their ids. */
function namesOf({ history }: JobReckoning, balanceName: (id: string) => string): (id: string) => string {
  const words = new Map(history.streams.map((step) => [step.id, streamWords(step)]));
  for (const { id } of history.nodes) words.set(id, `the work ${between(history.streams, id)}`);
  return (id) => words.get(id) ?? factorWords(id, balanceName);
}

const FIRST: Readonly<Record<Began, string>> = {
  'came in': 'as it came in',
  'once cleaned': 'once cleaned, before work',
  'first weighed': 'as it was first weighed',
};

function streamWords({ part, state, began, stones, outOf, into, seq, reading }: Step): string {
  const read = `(entry ${seq}${reading ? `: ${readingWords(reading)}` : ''})`;
  if (part === 'came in' && stones === undefined) return `the piece ${FIRST[began ?? 'came in']} ${read}`;
  if (part === 'weighing') return `the piece or stone${state ? `, ${state}` : ''} ${read}`;
  if (stones !== undefined) return `the stones ${into && !outOf ? 'that came in' : 'taken out or set'} ${read}`;
  return outOf === undefined ? `what was added ${read}` : `what was cut or moved ${read}`;
}

function factorWords(id: string, balanceName: (id: string) => string): string {
  const [kind, of = ''] = id.split(':');
  return kind === 'tare' ? `the tare of ${of}` : `the balance ${balanceName(of)}`;
}

/** "from cleaned and dry (entry 4) to cut (entry 9)", by the weighings at a node's ends. */
function between(streams: readonly Step[], node: string): string {
  const isEnd = ({ part }: Step) => part === 'weighing' || part === 'came in';
  const from = streams.find((step) => step.to === node && isEnd(step));
  const to = streams.find((step) => step.from === node && isEnd(step));
  const words = (step: Step) => `${step.state ?? 'as received'} (entry ${step.seq})`;
  return `${from ? `from ${words(from)}` : 'from the start'} ${to ? `to ${words(to)}` : 'to now'}`;
}

/** Each group of steps that a weighing closes, in order. */
function stepsOf({ history, network, weights }: JobReckoning): readonly StepShown[] {
  const isPiece = (id: string) => history.nodes.some((node) => node.id === id && node.things.some((thing) => history.pieces.has(thing)));
  const isAt = (nodes: readonly string[]) => (step: Step) =>
    step.from !== step.to && (nodes.includes(step.from) || nodes.includes(step.to)) && step.part !== 'still here';
  return network.groups
    .filter(({ nodes }) => nodes.some(isPiece) && history.streams.some((step) => step.part === 'weighing' && nodes.includes(step.from)))
    .map(({ nodes, testable, residualNg, uG, z }) => {
      const at = history.streams.filter(isAt(nodes));
      const words =
        nodes.length === 1 ? between(history.streams, nodes[0] ?? OUTSIDE) : `entries ${at.map(({ seq }) => seq).join(', ')} together`;
      return {
        words: capital(words),
        seqs: [...new Set(at.flatMap(({ seq }) => (seq >= 0 ? [seq] : [])))],
        gap: testable ? { words: leftOver(residualNg, uG, weights.stepNg), isOff: Math.abs(z) > 3 } : null,
      };
    });
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const leftOver = (ng: number, uG: number, stepNg: number): string =>
  `${gapWords(gapOf(-ng, stepNg), { more: 'more than reckoned', less: 'less than reckoned' })}, give or take ${upToStep(2e9 * uG, stepNg)}`;

/** What can still be done about a weighing under suspicion. */
function adviceOn({ part, began, seq, outOf, into, stones }: Step, { history }: JobReckoning): string {
  const isLast = part === 'weighing' && [...history.now.keys()].some((thing) => thing === into);
  if (isLast) return `Weigh the piece again now, clean and dry, on the balance of entry ${seq}.`;
  if (part === 'weighing') return `The step of entry ${seq} cannot be weighed again: look at what was written on the bag that day.`;
  if (part === 'came in')
    return `The weight ${FIRST[began ?? 'came in']} cannot be taken again: look at entry ${seq}, and at a photograph on the pan if there is one.`;
  if (stones !== undefined) return `Weigh the stones of entry ${seq} again if they are still out.`;
  return outOf === undefined
    ? `Weigh the stock that entry ${seq} was taken from, or a like length of it.`
    : `If what was cut in entry ${seq} still lies apart, weigh it again.`;
}
