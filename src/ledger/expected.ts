// What the ledger expects on the pan, how far off a reading may be, and which plain mistake would explain one that is further off.
import { usualMostG } from '../book/usual-loss.ts';
import type { WrittenWeighing } from '../reckoning/slip.ts';
import { alikeTo, findSlips, type Slip } from '../reckoning/slip.ts';
import { slipWords } from '../reckoning/words.ts';
import { decimalsOfStep, formatMassWithUnit, type MassNg, massNg } from '../units/mass.ts';
import type { BalanceParameters } from '../weighing/balance.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import { uOfSum, type Worth } from '../weighing/uncertainty.ts';
import { worthOf } from '../weighing/worth.ts';
import { type Rest, sumOf, type Thing } from './thing.ts';

export type Plates = ReadonlyMap<string, BalanceParameters>;
export interface Expected {
  readonly ng: MassNg;
  /** Two standard uncertainties of the readings it rests on and of one more, up to the next step. */
  readonly marginNg: MassNg;
  readonly stepNg: MassNg;
}
/** A piece of another open job, as the ledger expects it. */
export interface OpenPiece {
  readonly stream: string;
  readonly name: string;
  readonly ng: number;
}
/** What may usually have gone unweighed since the last weighing, in ng, and what it goes as. */
export interface Usual {
  readonly ng: number;
  readonly as: 'dust' | 'dirt';
}

/** What the ledger expects of a thing when it is read next (`reading`, or another on the balance of its last weighing); null where it cannot know. */
export function expectedOf(thing: Thing, balances: Plates, reading?: Reading): Expected | null {
  const sum = sumOf(thing.expected);
  const rests = Object.values(thing.rests);
  const next = reading ?? lastReading(thing);
  if (!next || rests.length === 0 || !('ng' in sum)) return null;
  const uG = uOfSum([...rests, { sign: -1, reading: next }].map((one) => ({ sign: one.sign, worth: worth(one.reading, balances) })));
  const stepNg = massNg(Math.max(next.stepNg ?? 0, thing.stepNg) || 10_000_000);
  return { ng: sum.ng, marginNg: massNg(Math.ceil(Number(((2e9 * uG) / stepNg).toPrecision(9))) * stepNg), stepNg };
}

/** A reading that what is expected rests on, whose unit is the one it was weighed in. */
export const lastReading = ({ rests }: Thing): Reading | undefined => Object.values(rests).find(({ sign }) => sign === 1)?.reading;

/** Readings of one job are taken close together: one calibration is assumed for all of them. */
const worth = (reading: Reading, balances: Plates): Worth => worthOf(reading, balances.get(reading.balance ?? ''), { epoch: 'now' });

/** Dirt that the first cleaning may take off a piece: a fiftieth of what it weighed as received (common practice, no source). */
const DIRT_SHARE = 50;

/** What may usually have gone off a thing of this job since it was last weighed: dirt at its first cleaning, then the dust of the work agreed; off stones and stock nothing. */
export function usualOff(thing: Thing, job: Thing | undefined, state: string): Usual {
  const sum = sumOf(thing.expected);
  if (thing.kind !== 'piece' || !('ng' in sum)) return { ng: 0, as: 'dust' };
  const isFirst = Object.keys(thing.rests).every((key) => Number.parseInt(key, 10) === thing.begun);
  if (isFirst && state === 'cleaned and dry') return { ng: Math.floor(sum.ng / DIRT_SHARE), as: 'dirt' };
  return { ng: Math.round(1e9 * usualMostG(job?.says.work ?? '', thing.says.metal, sum.ng / 1e9)), as: 'dust' };
}

/** Whether a reading lies further from what is expected than the balance and usual working loss explain: a gain is never usual. */
export const isOdd = ({ ng, marginNg }: Expected, usual: Usual, readNg: MassNg): boolean =>
  readNg > ng + marginNg || readNg < ng - marginNg - usual.ng;

interface Knowing {
  readonly balances: Plates;
  readonly tares: readonly { readonly name: string; readonly ng: number }[];
  readonly others: readonly OpenPiece[];
}
/** The question at the bench, in the unit that was read: weigh again, and the likeliest slips: the piece of another job first, since that one can be looked at. */
export function oddWords(thing: Thing, reading: Reading, expected: Expected, usual: Usual, known: Knowing): string {
  const words = (ng: number) => formatMassWithUnit(massNg(Math.round(ng)), reading.unit, decimalsOfStep(expected.stepNg, reading.unit));
  const written = [...Object.entries(thing.rests), ['now', { sign: -1, reading }] as const].map(([id, rest]) =>
    writtenOf(id, rest, known.balances),
  );
  const slips = findSlips(written, known.tares, known.others).filter(
    ({ weighing, kind }) => weighing === 'now' && kind !== 'counted twice',
  );
  // Here it can be looked at, so that any that weighs as much is asked about.
  const now = written.find(({ id }) => id === 'now');
  const [other] = now ? alikeTo(now, known.others) : [];
  const question = other ? ` ${capital(other.name)} weighs ${words(other.ng)}. Is that the piece in your hand?` : '';
  const off = usual.ng >= expected.stepNg ? ` Up to ${words(usual.ng)} is usual as ${usual.as}.` : '';
  return `Weigh again: ${reading.text}\u00a0${reading.unit} was read and ${words(expected.ng)} is expected, give or take ${words(expected.marginNg)}.${off}${question}${otherwise(slips)} If it is right, type the second reading and say why.`;
}

function writtenOf(id: string, { sign, reading }: Rest, balances: Plates): WrittenWeighing {
  const { text, unit, stepNg } = reading;
  const term = { id, sign, ng: netNg(reading) ?? reading.ng, worth: worth(reading, balances), text, unit };
  return stepNg === undefined ? term : { ...term, stepNg };
}

function otherwise(slips: readonly Slip[]): string {
  const plain = slips.filter(({ kind }) => kind !== 'another piece' && kind !== 'wrong direction').slice(0, 3);
  return plain.length === 0 ? '' : ` It may be a slip of the pen: ${plain.map(slipWords).join(', or ')}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
