// One object for a job's weights: what every page, paper and picture of the job shows of them. Nobody else rounds, words or draws a limit.
import type { Closure, Verdict } from '../reckoning/closure.ts';
import { type Figures, figuresOf, type NotRead, VERDICT_WORDS } from '../reckoning/words.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { toStep, upToStep } from '../units/rounded.ts';
import type { Chain, Term } from './chain.ts';
import type { Began, History, Step } from './history.ts';

/** A pan of the beam: one number, the readings it is made of, and what it is. */
export interface Pan {
  readonly words: string;
  /** "8.42 g", or null where it is not known. */
  readonly value: string | null;
  readonly terms: readonly Term[];
}
export interface JobWeights extends Figures {
  readonly verdict: Verdict;
  readonly says: string;
  /** Loss positive; the very number that was judged. */
  readonly lossNg: MassNg;
  readonly stepNg: number;
  /** Where the usual dust is known from. */
  readonly usualFrom: string | null;
  /** −1 (right pan up: a loss) to 1; within ±BAND while it agrees, ±1 when it does not; 0 while neither is known. */
  readonly tilt: number;
  readonly pans: readonly [left: Pan, right: Pan];
  /** What the weight is that the sum begins from. */
  readonly began: Began;
  /** The entries of what went in or out and was not weighed, since which the sum is open; none while it is closed over. */
  readonly unknown: readonly number[];
  /** Readings that nobody read on a balance, by their entries. */
  readonly notRead: NotRead;
}
/** Half of the beam's reach is within what the balances and usual dust explain. */
export const BAND = 1 / 2;

interface Reckoned {
  readonly closed: Closure | null;
  readonly chain: Chain;
  readonly history: History;
  readonly cameIn: Term | null;
  readonly crossed: readonly Term[];
  readonly usualFrom: string | null;
}

/** The weights of a reckoned job; while nothing is closed its verdict is "not checked". */
export function jobWeights({ closed, chain, history, cameIn, crossed, usualFrom }: Reckoned): JobWeights {
  const verdict = closed?.verdict ?? 'not checked';
  const stepNg = closed?.stepNg || (cameIn?.stepNg ?? 10_000_000);
  const figures = closed
    ? figuresOf(closed)
    : {
        gap: toStep(0, stepNg),
        side: 'none' as const,
        step: toStep(stepNg, stepNg),
        give: toStep(0, stepNg),
        shows: toStep(0, stepNg),
        dustMost: null,
      };
  const began = beganOf(chain);
  const isOpen = !closed || verdict === 'not checked' || (chain.movedSince && verdict !== 'does not agree');
  return {
    ...{ verdict, says: VERDICT_WORDS[verdict], lossNg: closed?.lossNg ?? massNg(0), stepNg, usualFrom, ...figures },
    tilt: closed && (verdict === 'does not agree' || (verdict === 'agrees' && !isOpen)) ? tiltOf(closed, figures.side) : 0,
    pans: isOpen ? openPans(chain, began, cameIn, crossed, stepNg) : closedPans(chain.closing, began, stepNg),
    began,
    unknown: cameIn ? chain.unknown : [],
    notRead: notReadIn(history),
  };
}

/** How far a closing tilts the beam, by its own levels: the band ends where a note begins, and what does not agree is at the end of its reach. */
function tiltOf({ lossNg, verdict, note, gainNote }: Closure, side: Figures['side']): number {
  const noted = lossNg >= 0 ? note.flagNg : gainNote.flagNg;
  const reach = verdict === 'does not agree' ? 1 : BAND * Math.min(1, Math.abs(lossNg) / noted);
  return side === 'none' ? 0 : side === 'less' ? -reach : reach;
}

const sum = (terms: readonly Term[]): number => terms.reduce((total, { ng }) => total + ng, 0);
const side = (terms: readonly Term[], sign: 1 | -1) => terms.filter((one) => one.sign === sign);

/** What the first weights of all pieces are; where they are not of one kind, they are weights first taken. */
export function beganOf({ cameIn }: Chain): Began {
  const kinds = new Set(cameIn.map(({ began }) => began ?? 'came in'));
  const [only = 'came in'] = kinds;
  return kinds.size > 1 ? 'first weighed' : only;
}

const withAdded = (began: Began): string => (began === 'came in' ? 'in: came and added' : `in: ${began}, and added`);

function closedPans(closing: readonly Term[], began: Began, stepNg: number): JobWeights['pans'] {
  const [came, went] = [side(closing, 1), side(closing, -1)];
  return [
    { words: came.length > 1 ? withAdded(began) : began, value: toStep(sum(came), stepNg), terms: came },
    { words: went.length > 1 ? 'out: weighed last and taken off' : 'weighed last', value: toStep(sum(went), stepNg), terms: went },
  ];
}

/** While the sum is open both sides are the same by reckoning; what went in or out unweighed is in no sum, so then each side is one weight alone. */
function openPans(
  { expected, unknownSince }: Chain,
  began: Began,
  cameIn: Term | null,
  moved: readonly Term[],
  stepNg: number,
): JobWeights['pans'] {
  const crossed = unknownSince === null ? moved : [];
  const [added, removed] = [side(crossed, 1), side(crossed, -1)];
  const came = cameIn ? [cameIn, ...added] : [];
  const give = expected ? `, ± ${upToStep(2e9 * expected.uG, stepNg)}` : '';
  const inPiece = `in the piece, by reckoning${give}`;
  return [
    { words: added.length > 0 ? withAdded(began) : began, value: cameIn && toStep(sum(came), stepNg), terms: came },
    {
      words: removed.length > 0 ? `taken off, and ${inPiece}` : inPiece,
      value: expected && toStep(expected.ng + sum(removed), stepNg),
      terms: removed,
    },
  ];
}

function notReadIn({ streams, setAside }: History): NotRead {
  const moved = streams.filter(({ part, from, to }) => part !== 'still here' && part !== 'left whole' && from !== to);
  const aside = new Set(setAside.map(({ seq }) => seq));
  const named = (which: (step: Step) => boolean) => entries(moved.filter(which).map(({ seq }) => seq));
  return {
    unweighed: named(({ ng, seq }) => ng === null && !aside.has(seq)),
    setAside: entries([...aside]),
    estimated: named(({ ng, reading }) => ng !== null && reading?.basis !== 'weighed' && reading?.basis !== 'difference'),
    byDifference: named(({ reading }) => reading?.basis === 'difference'),
  };
}

const entries = (seqs: readonly number[]): readonly string[] => [...new Set(seqs)].map((seq) => `entry ${seq}`);
