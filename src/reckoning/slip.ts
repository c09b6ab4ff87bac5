// The slip finder: would one plain mistake in one reading explain the whole gap? It names candidates and changes nothing.
import { type MassUnit, NG_PER_UNIT, parseMass } from '../units/mass.ts';
import { closure, type Weighing } from './closure.ts';

/** A weighing with the text that was written for it. */
export interface WrittenWeighing extends Weighing {
  readonly text: string;
  readonly unit: MassUnit;
}
export type SlipKind =
  | 'digits swapped'
  | 'decimal place'
  | 'other unit'
  | 'counted twice'
  | 'wrong direction'
  | 'tare left on'
  | 'another piece';
export interface Slip {
  readonly kind: SlipKind;
  readonly weighing: string;
  readonly text: string;
  /** What would have been right: a text, a unit, the container left on, or the job whose piece it was. */
  readonly instead: string;
}
interface Known {
  readonly name: string;
  readonly ng: number;
}
type Candidate = { readonly kind: SlipKind; readonly instead: string; readonly ng: number };

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
  return weighings.flatMap((weighing) => {
    const explains = ({ ng }: Candidate) => {
      const leftG = (lossNg - weighing.sign * (weighing.ng - ng)) / 1e9;
      return leftG >= -2 * uG && leftG <= 2 * uG + dustMostG;
    };
    const mistakes = [...misread(weighing), ...misplaced(weighing, tares)].filter(explains);
    return [...mistakes, ...mistaken(weighing, others)].map(({ kind, instead }) => ({
      kind,
      weighing: weighing.id,
      text: weighing.text,
      instead,
    }));
  });
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

/** Readings that agree with the piece of another open job within 2u. */
function mistaken({ ng, worth }: WrittenWeighing, others: readonly Known[]): readonly Candidate[] {
  const limitNg = 2 * Math.SQRT2 * worth.uRandomG * 1e9;
  return others.filter((other) => Math.abs(ng - other.ng) <= limitNg).map(({ name }) => ({ kind: 'another piece', instead: name, ng }));
}
