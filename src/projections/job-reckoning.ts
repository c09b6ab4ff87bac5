// The reckoning of one job from its own leaves: closure, network, stones, own metal and slips, in words for whoever asks.
import type { MetalFamily } from '../book/metals.ts';
import { ASSUMED_FROM, assumedLoss, familyOf, type Operation, operationOf } from '../book/usual-loss.ts';
import type { Kept } from '../ledger/leaf.ts';
import { type Closure, closure } from '../reckoning/closure.ts';
import { type Rate, usualLoss } from '../reckoning/drift.ts';
import type { UsualLoss } from '../reckoning/loss-law.ts';
import { type NetworkReckoning, OUTSIDE, reckon, type Stream } from '../reckoning/network.ts';
import { type OwnMetal, ownMetal } from '../reckoning/own-metal.ts';
import type { Known, Slip } from '../reckoning/slip.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { uOfSum } from '../weighing/uncertainty.ts';
import type { Balances } from './balances.ts';
import { type Chain, chainOf, networkOf, type Term, termOf } from './chain.ts';
import { type CorrectedFigure, correctedFigures } from './corrected.ts';
import { type History, historyOf, type Step } from './history.ts';
import { jobSentence } from './job-sentence.ts';
import { type JobWeights, jobWeights } from './job-weights.ts';
import { slipsIn } from './slips.ts';
import { apartByWeight, type StoneCheck, stoneChecks } from './stone-checks.ts';
import { type Told, told, toldFirst } from './told.ts';

export type { Term } from './chain.ts';

/** What a verdict rests on besides the job's own leaves. */
export interface Grounds {
  readonly balances: Balances;
  /** How many entries the ledger had: a late calibration moves verdicts. */
  readonly size: number;
  /** The shop's own rate of loss, where it has a history. */
  readonly rateOf?: (operation: Operation, family: MetalFamily) => LearnedRate | null;
  readonly tares?: readonly Known[];
  /** The pieces of other open jobs. */
  readonly others?: readonly Known[];
}
/** A rate of loss with the words for where it is known from. */
export interface LearnedRate extends Rate {
  readonly from: string;
}
export interface JobReckoning {
  readonly size: number;
  readonly cameIn: Term | null;
  readonly added: readonly Term[];
  readonly removed: readonly Term[];
  readonly last: Term | null;
  /** What is in the pieces by reckoning, with its standard uncertainty; null where something since their last weighing was not weighed. */
  readonly expected: { readonly ng: MassNg; readonly uG: number } | null;
  readonly unknownSince: number | null;
  /** The closing of the chain at its last weighing; null while there is none after it came in. */
  readonly closed: Closure | null;
  readonly state: 'open' | 'level' | 'off';
  readonly sentence: string;
  /** Weights and counts that were corrected after they were written. */
  readonly corrected: readonly CorrectedFigure[];
  readonly history: History;
  /** What the closing is made of: what is missing from it fell as filings and dust. */
  readonly closing: readonly Term[];
  readonly network: NetworkReckoning;
  readonly work: {
    readonly operation: Operation;
    readonly metal: string;
    readonly family: MetalFamily;
    readonly usual: UsualLoss;
    /** Where the usual loss is known from. */
    readonly usualFrom: string;
    readonly workedG: number;
  } | null;
  /** What every page, paper and picture shows of the weights. */
  readonly weights: JobWeights;
  readonly stones: readonly StoneCheck[];
  /** Single stones that are out, and whether weight would tell each from the others. */
  readonly papers: ReturnType<typeof apartByWeight>;
  readonly own: OwnMetal | null;
  /** Single plain mistakes that would explain the gap: one of these, never the one. */
  readonly slips: readonly Slip[];
  /** Entries read on a balance that failed a check before or after. */
  readonly doubted: readonly number[];
  /** Somebody has said why it did not agree. */
  readonly explained: boolean;
  /** Why the arithmetic could say nothing at all; null otherwise. */
  readonly problem: string | null;
}

/** Reckons a job from its entries. What cannot be reckoned says so in words: a job whose figures are beyond the arithmetic takes no other page with it. */
export function reckonJob(kept: readonly Kept[], grounds: Grounds): JobReckoning {
  try {
    return reckonKept(kept, grounds);
  } catch (error) {
    return unreckoned(grounds, error instanceof Error ? error.message : String(error));
  }
}

function reckonKept(kept: readonly Kept[], grounds: Grounds): JobReckoning {
  const entries = told(kept);
  const corrected = correctedFigures(kept);
  const history = historyOf(entries, grounds.balances.worths);
  const first = corrected.length === 0 ? history : historyOf(toldFirst(kept), grounds.balances.worths);
  const chain = chainOf(history, first);
  const cameIn = together(chain.cameIn, 1);
  const work = workOf(entries, chain, grounds);
  const isClosable = cameIn !== null && chain.last.length > 0;
  const options = { unweighed: chain.isOpen, fitnessG: fitnessOf(chain), ...(work ? { usual: work.usual } : {}) };
  const closed = isClosable ? unlessCircular(closure(chain.closing, options), chain) : null;
  const network = reckon(withUsualLoss(history, chain, work?.usual));
  const last = chain.movedSince ? null : together(chain.last, -1);
  const unknownSince = cameIn === null ? null : chain.unknownSince;
  const crossed = chain.crossed.flatMap((step) =>
    step.ng === null ? [] : [termOf({ ...step, ng: step.ng }, chain.own.has(step.to) ? 1 : -1)],
  );
  const [added, removed] = [1, -1].map((side) => crossed.filter(({ sign }) => sign === side)) as [Term[], Term[]];
  const { expected } = chain;
  return {
    ...{ size: grounds.size, cameIn, added, removed, last, expected, unknownSince, closed },
    state: stateOf(closed, chain.movedSince),
    corrected,
    sentence: jobSentence({ cameIn, history, expected, unknownSince, closed, last: together(chain.last, -1), chain }, corrected),
    ...{ history, network, work, closing: chain.closing, stones: stoneChecks(history, entries), papers: apartByWeight(history, entries) },
    weights: jobWeights({ closed, chain, history, cameIn, crossed, usualFrom: work?.usualFrom ?? null }),
    own: closed?.verdict === 'agrees' ? ownOf(chain, closed) : null,
    slips: slipsIn({ chain, history, closed, network }, grounds.tares, grounds.others),
    doubted: doubtedIn(history, grounds.balances),
    explained: entries.some(({ facts }) => facts.some((one) => one.fact === 'identity' && one.mark === 'differenceExplained')),
    problem: null,
  };
}

/** What makes its own sum come out can show that something is wrong elsewhere, but never that all agrees. */
const unlessCircular = (closed: Closure, { isCircular }: Chain): Closure =>
  isCircular && (closed.verdict === 'agrees' || closed.verdict === 'cannot tell') ? { ...closed, verdict: 'not checked' } : closed;

function unreckoned({ size }: Grounds, problem: string): JobReckoning {
  const history: History = { nodes: [], streams: [], now: new Map(), pieces: new Set(), setAside: [] };
  const chain = chainOf(history);
  return {
    ...{ size, cameIn: null, added: [], removed: [], last: null, expected: null, unknownSince: null, closed: null, state: 'open' },
    sentence: `The weights of this job cannot be reckoned (${problem}). Its entries stand as they were written: look for a figure that cannot be, and correct it.`,
    ...{
      corrected: [],
      history,
      network: reckon({ nodes: [], streams: [] }),
      work: null,
      closing: [],
      stones: [],
      papers: [],
      own: null,
      slips: [],
      doubted: [],
    },
    weights: jobWeights({ closed: null, chain, history, cameIn: null, crossed: [], usualFrom: null }),
    ...{ explained: false, problem },
  };
}

/** Readings of one kind as one: the pieces of a job came in together. Null where one was not weighed. */
function together(steps: readonly Step[], sign: 1 | -1): Term | null {
  const [first] = steps;
  if (!first || steps.some(({ ng }) => ng === null)) return null;
  const terms = steps.map((step) => termOf({ ...step, ng: step.ng ?? massNg(0) }, sign));
  const [only] = terms;
  if (only && terms.length === 1) return only;
  const ng = massNg(terms.reduce((sum, one) => sum + one.ng, 0));
  const stepNg = massNg(Math.max(...terms.map((one) => one.stepNg ?? 0)));
  const worth = { uRandomG: uOfSum(terms.map((one) => ({ sign: 1, worth: one.worth }))), factors: [] };
  return { id: terms.map(({ id }) => id).join(' + '), seq: first.seq, sign, ng, stepNg, worth };
}

const pieceNodesOf = ({ nodes, pieces }: History): ReadonlySet<string> =>
  new Set(nodes.filter(({ things }) => things.some((id) => pieces.has(id))).map(({ id }) => id));

/** Above this 2u weighings cannot say that they agree: a hundredth of what came in, but no less than ten of its steps, and a twentieth of it at most (common practice, no source). */
function fitnessOf({ cameIn }: Chain): number {
  const inG = cameIn.reduce((sum, { ng }) => sum + (ng ?? 0), 0) / 1e9;
  const stepG = Math.max(...cameIn.map(({ reading }) => reading?.stepNg ?? 0)) / 1e9;
  return Math.min(inG / 20, Math.max(inG / 100, 10 * stepG));
}

/** The work agreed, and what it usually loses of the metal worked. */
function workOf(entries: readonly Told[], { cameIn }: Chain, { rateOf }: Grounds): JobReckoning['work'] {
  const marks = new Map<string, string>();
  for (const { facts } of entries) for (const one of facts) if (one.fact === 'identity') marks.set(one.mark, one.says);
  const operation = operationOf(marks.get('work') ?? '');
  const workedG = cameIn.reduce((sum, { ng }) => sum + (ng ?? 0), 0) / 1e9;
  if (operation === null || workedG === 0) return null;
  const metal = marks.get('metal') ?? 'other';
  const family = familyOf(metal);
  const prior = assumedLoss(operation, family);
  const learned = rateOf?.(operation, family) ?? null;
  const usualFrom = learned?.from ?? ASSUMED_FROM;
  return { operation, metal, family, workedG, usual: usualLoss(learned ?? prior, prior, workedG), usualFrom };
}

/** The usual loss leaves each closed node as an amount with its own doubt, never as a free unknown: that would remove the only test there is. */
function withUsualLoss(history: History, { last, closing }: Chain, usual: UsualLoss | undefined) {
  const network = networkOf(history);
  if (!usual || last.length === 0 || closing.length === 0) return network;
  const ends = new Set(history.streams.filter(({ part }) => part === 'still here' || part === 'left whole').map(({ from }) => from));
  const nodes = [...pieceNodesOf(history)].filter((id) => !ends.has(id));
  const lost = nodes.map((from): Stream => {
    const worth = { uRandomG: usual.tauG / Math.sqrt(nodes.length), factors: [] };
    return { id: `${USUAL}${from}`, from, to: OUTSIDE, ng: massNg(Math.round((1e9 * usual.meanG) / nodes.length)), ...worth };
  });
  return { nodes: network.nodes, streams: [...network.streams, ...lost] };
}
/** Begins the name of the stream that carries a node's usual loss. */
export const USUAL = 'usual loss of ';

/** The customer's own metal: a packet of their own gold counts as theirs, and dust that nobody weighed as taken off after the joining. */
function ownOf({ cameIn, crossed, last, own: nodes }: Chain, { lossNg }: Closure): OwnMetal | null {
  const weighed = crossed.filter((step): step is Step & { ng: MassNg } => step.ng !== null);
  const into = weighed.filter(({ to }) => nodes.has(to));
  const out = weighed.filter(({ from }) => nodes.has(from));
  const isStones = ({ part, stones }: Step) => stones !== undefined || part === 'weighing';
  const joinedAt = weighed.findIndex((step) => into.includes(step) && !isStones(step) && step.from === OUTSIDE);
  const isBefore = (step: Step & { ng: MassNg }) => joinedAt === -1 || weighed.indexOf(step) < joinedAt;
  const parts = (steps: readonly Step[]) =>
    steps.flatMap(({ ng, uRandomG, factors }) => (ng === null ? [] : [{ ng, worth: { uRandomG, factors } }]));
  const off = out.filter((step) => !isStones(step));
  const dust = lossNg > 0 ? [{ ng: lossNg, worth: { uRandomG: 0, factors: [] } }] : [];
  return ownMetal({
    received: parts([...cameIn, ...into.filter((step) => !isStones(step) && step.from !== OUTSIDE)]),
    stonesOut: parts(out.filter(isStones)),
    offBefore: parts(off.filter(isBefore)),
    offAfter: [...parts(off.filter((step) => !isBefore(step))), ...dust],
    returned: parts(last),
    stonesSet: parts(into.filter(isStones)),
  });
}

const doubtedIn = ({ streams }: History, { isDoubted }: Balances): readonly number[] => [
  ...new Set(streams.flatMap(({ seq, atMs, reading }) => (reading && isDoubted(reading, atMs) ? [seq] : []))),
];

function stateOf(closed: Closure | null, movedSince: boolean): JobReckoning['state'] {
  if (closed?.verdict === 'does not agree') return 'off';
  return closed?.verdict === 'agrees' && !movedSince ? 'level' : 'open';
}
