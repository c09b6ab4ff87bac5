// The slip finder: would one plain mistake in one reading explain the whole gap? It names candidates and changes nothing.
import { decimalsOfStep, formatMassWithUnit, type MassUnit, massNg, NG_PER_UNIT, parseMass } from '../units/mass.ts';
import { closure, type Weighing } from './closure.ts';

/** A weighing with the text that was written for it. */
export interface WrittenWeighing extends Weighing {
  readonly text: string;
  readonly unit: MassUnit;
  /** A part, stones or stock: no piece of another job is taken for it. */
  readonly isPart?: boolean;
}
export type SlipKind =
  | 'digits swapped'
  | 'decimal place'
  | 'other unit'
  | 'coarser balance'
  | 'counted twice'
  | 'wrong direction'
  | 'tare left on'
  | 'another piece';
export interface Slip {
  readonly kind: SlipKind;
  readonly weighing: string;
  readonly text: string;
  /** What would have been right: a text, a unit, the step of the other balance, the container left on, or the job whose piece it was. */
  readonly instead: string;
}
/** A tare, or the piece of another job, by its name. */
export interface Known {
  readonly name: string;
  readonly ng: number;
}
/** What would have been right, and how far off that may be, either way. */
type Candidate = { readonly kind: SlipKind; readonly instead: string; readonly ng: number; readonly slackNg?: number };

/** Plain gaps are chance this often; above it nobody is asked to look for a slip. */
const SLIP_ALPHA = 0.01;

/** Every single mistake that brings the gap of one job within 2u, and up to `dustMostG` of usual dust, given the known tares and the pieces of other open jobs. */
export function findSlips(
  weighings: readonly WrittenWeighing[],
  tares: readonly Known[] = [],
  others: readonly Known[] = [],
  dustMostG = 0,
): readonly Slip[] {
  const { lossNg, uG, plainP } = closure(weighings);
  if (plainP >= SLIP_ALPHA) return [];
  const [leastG, mostG] = [lossNg / 1e9 - 2 * uG - dustMostG, lossNg / 1e9 + 2 * uG];
  return weighings.flatMap((weighing) =>
    slipsOf(weighing, weighing.sign === 1 ? { leastG, mostG } : { leastG: -mostG, mostG: -leastG }, tares, others),
  );
}

/** Every single mistake by which one reading would be too heavy by so many grams (too light below zero). */
export function slipsOf(
  weighing: WrittenWeighing,
  { leastG, mostG }: { readonly leastG: number; readonly mostG: number },
  tares: readonly Known[],
  others: readonly Known[],
): readonly Slip[] {
  const explains = ({ ng, slackNg = 0 }: Candidate) =>
    weighing.ng - ng >= 1e9 * leastG - slackNg && weighing.ng - ng <= 1e9 * mostG + slackNg;
  const mistakes = [...misread(weighing), ...coarser(weighing), ...misplaced(weighing, tares)].filter(explains);
  const found = [...mistakes, ...mistaken(weighing, others)];
  return found.map(({ kind, instead }) => ({ kind, weighing: weighing.id, text: weighing.text, instead }));
}

/** Read on a balance ten times coarser than the one that was named: then it is a round number here (one in ten is by chance), right to a step of that balance, half for its reading and half for its zero. */
function coarser({ text, unit, ng, stepNg = massNg(0) }: WrittenWeighing): readonly Candidate[] {
  const coarseNg = massNg(10 * stepNg);
  const parsed = parseMass(text, unit);
  if ('problem' in parsed || parsed.ng % coarseNg !== 0) return [];
  const instead = formatMassWithUnit(coarseNg, unit, decimalsOfStep(coarseNg, unit));
  return [{ kind: 'coarser balance', instead, ng, slackNg: coarseNg }];
}

/** Mistakes of the pen: the same digits in another order, place or unit; what was taken off as tare stays off. */
function misread({ text, unit, ng }: WrittenWeighing): readonly Candidate[] {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) return [];
  const read = parsed.ng;
  const meant = (kind: SlipKind, instead: string, meantNg: number): Candidate => ({ kind, instead, ng: ng - read + meantNg });
  const swaps = swapped(text).flatMap((instead) => {
    const other = parseMass(instead, unit);
    return 'problem' in other ? [] : [meant('digits swapped', instead, other.ng)];
  });
  const shifts = [10, 0.1].map((by) => meant('decimal place', `${Number(((by * read) / NG_PER_UNIT[unit]).toPrecision(12))}`, by * read));
  const other: MassUnit | null = unit === 'g' ? 'ct' : unit === 'ct' ? 'g' : null;
  const units = other === null ? [] : [meant('other unit', other, (read / NG_PER_UNIT[unit]) * NG_PER_UNIT[other])];
  return [...swaps, ...shifts, ...units];
}

/** The text with each pair of unequal neighbouring digits swapped; the decimal mark keeps its place. */
function swapped(text: string): readonly string[] {
  const places = [...text].flatMap((char, i) => (/\d/.test(char) ? [i] : []));
  return places.slice(1).flatMap((second, i) => {
    const first = places[i] ?? 0;
    const chars = [...text];
    [chars[first], chars[second]] = [text.charAt(second), text.charAt(first)];
    return text.charAt(first) === text.charAt(second) ? [] : [chars.join('')];
  });
}

/** Mistakes of the hand: the pan, the tray and the side of the book. */
function misplaced({ ng, sign }: WrittenWeighing, tares: readonly Known[]): readonly Candidate[] {
  const trays = tares
    .filter((tare) => ng > tare.ng)
    .map((tare): Candidate => ({ kind: 'tare left on', instead: tare.name, ng: ng - tare.ng }));
  return [
    { kind: 'counted twice', instead: 'once', ng: 0 },
    { kind: 'wrong direction', instead: sign === 1 ? 'out' : 'in', ng: -ng },
    ...trays,
  ];
}

/** Pieces that would read as this within 2u of both. */
export const alikeTo = ({ ng, worth }: Weighing, others: readonly Known[], times = 1): readonly Known[] =>
  others.filter((other) => Math.abs(ng - other.ng) <= times * 2 * Math.SQRT2 * worth.uRandomG * 1e9);

/** Among many pieces some weigh as much by chance: one is named only where it stands alone, no other within so many times as far. */
const ALONE_TIMES = 10;

/** A whole piece's reading that agrees with that of another open job, which is the only one anywhere near it. */
function mistaken(weighing: WrittenWeighing, others: readonly Known[]): readonly Candidate[] {
  const [alike] = weighing.isPart ? [] : alikeTo(weighing, others);
  return alike && alikeTo(weighing, others, ALONE_TIMES).length === 1
    ? [{ kind: 'another piece', instead: alike.name, ng: weighing.ng }]
    : [];
}
