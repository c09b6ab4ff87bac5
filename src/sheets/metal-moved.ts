// Metal let in or cut out of a ring at its finish: weighed by itself, or what the weight out says beyond what was expected. That second
// figure can never check the weighing it was taken from, so it is held against what the two sizes ask.
import type { Problem } from '../book/codec.ts';
import { sizingOfRingNg } from '../trade/sizing.ts';
import { decimalsOfStep, formatMass, type MassNg, massNg } from '../units/mass.ts';
import { sizeMm } from '../units/ring-size.ts';
import { gapOf, gapWords, toStep } from '../units/rounded.ts';
import { netNg, type Reading } from '../weighing/reading.ts';

/** Which way each method moves metal. */
export const METHOD_MOVES = {
  stretched: 'none',
  compressed: 'none',
  insert: 'in',
  cut: 'out',
  're-shank': 'both',
  bridge: 'in',
} as const;
type Method = keyof typeof METHOD_MOVES;

/** Methods that make a ring larger, and smaller; a new shank does either. */
const LARGER: readonly Method[] = ['stretched', 'insert'];
const SMALLER: readonly Method[] = ['compressed', 'cut', 'bridge'];

/** Whether the method cannot lead from one size to the other; false where a size cannot be read. */
export function wrongWay(method: Method, from = '', to = ''): boolean {
  const [was, is] = [sizeMm(from), sizeMm(to)];
  if (was === null || is === null) return false;
  return (LARGER.includes(method) && is <= was) || (SMALLER.includes(method) && is >= was);
}

/** Two labels of one size, or the very same words. */
export function isSameSize(one: string, other: string): boolean {
  const [a, b] = [sizeMm(one), sizeMm(other)];
  if (a !== null && b !== null) return Math.abs(a - b) < 0.01;
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}

interface Asked {
  readonly way: 'in' | 'out';
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly moved: Reading | undefined;
  readonly weight: Reading;
}
/** The piece as the ledger knows it, masses in ng. */
interface Before {
  readonly expectedNg: MassNg | null;
  readonly usualNg: number;
  readonly marginNg: number;
}
export interface MetalMoved {
  readonly way: 'in' | 'out';
  /** As it was weighed, or by difference; none where neither is known. */
  readonly weight: Reading | undefined;
  /** By difference alone: how much, and between which bounds it would be expected. */
  readonly difference: { readonly ng: number; readonly leastNg: number; readonly mostNg: number; readonly beforeNg: number } | null;
  readonly sizes: string;
}

/** A shank may be a tenth as heavy as the ring is all round, or half as heavy again while it is still to be filed (common practice, no source). */
const LEAST_SHARE = 0.1;
const MOST_SHARE = 1.5;
/** Where the sizes cannot be read, no sizing moves more than a tenth of the ring (common practice, no source). */
const UNREAD_SHARE = 0.1;

/** What was let in or cut out. Dust makes an insert look smaller and a cut larger. */
export function metalMoved({ way, from = '', to = '', moved, weight }: Asked, { expectedNg, usualNg, marginNg }: Before): MetalMoved {
  const outNg = netNg(weight);
  const sizes = from === '' || to === '' ? '' : `from ${from} to ${to}`;
  if (moved || outNg === null || expectedNg === null) return { way, weight: moved, difference: null, sizes };
  const ng = way === 'in' ? outNg - expectedNg : expectedNg - outNg;
  const [was, is] = [sizeMm(from), sizeMm(to)];
  const dust = way === 'in' ? { least: usualNg, most: 0 } : { least: 0, most: usualNg };
  const impliedNg = was === null || is === null ? null : sizingOfRingNg(expectedNg, was, is);
  const [leastNg, mostNg] = impliedNg === null ? [0, UNREAD_SHARE * expectedNg] : [LEAST_SHARE * impliedNg, MOST_SHARE * impliedNg];
  const difference = { ng, leastNg: leastNg - dust.least - marginNg, mostNg: mostNg + dust.most + marginNg, beforeNg: expectedNg };
  return { way, weight: ng > 0 ? byDifference(weight, massNg(ng)) : undefined, difference, sizes };
}

function byDifference({ unit, stepNg }: Reading, ng: MassNg): Reading {
  const text = formatMass(ng, unit, decimalsOfStep(stepNg ?? ng, unit));
  return { text, unit, ng, basis: 'difference', ...(stepNg === undefined ? {} : { stepNg }) };
}

/** The question where a difference is out of proportion to the sizes; null where it is not, or where the weight was read again with a reason. */
export function oddDifference(part: MetalMoved | null, weight: Reading): Problem | null {
  if (!part?.difference) return null;
  const { ng, leastNg, mostNg, beforeNg } = part.difference;
  const isAnswered = (weight.repeats?.length ?? 0) > 0 && weight.because !== undefined;
  if (isAnswered || (ng > 0 && ng >= leastNg && ng <= mostNg)) return null;
  const stepNg = weight.stepNg ?? 0;
  const words = (mass: number) => toStep(Math.abs(mass), stepNg, weight.unit);
  const change = part.way === 'in' ? ng : -ng;
  const before = `${words(beforeNg)} before`;
  const sides = { more: `more than the ${before}`, less: `less than the ${before}` };
  const found = gapWords(gapOf(change, stepNg, weight.unit), sides, ` from the ${before}`);
  const done = part.way === 'in' ? 'let in' : 'cut out';
  const usual =
    part.sizes === ''
      ? `Hardly more than ${words(mostNg)} is ${done} of such a ring`
      : `${capital(part.sizes)} at most about ${words(mostNg)} is ${done}`;
  return {
    field: 'weight',
    say: `Weigh again: ${weight.text}\u00a0${weight.unit} is ${found}. ${usual}. Is anything else on the pan? If it is right, type the second reading and say why, or weigh what was ${done} by itself.`,
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
