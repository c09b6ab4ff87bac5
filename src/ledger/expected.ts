// What the ledger expects on the pan, how far off a reading may be, and which plain mistake would explain one that is further off.
import type { WrittenWeighing } from '../reckoning/slip.ts';
import { findSlips, type Slip } from '../reckoning/slip.ts';
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

/** What the ledger expects of a thing when it is read next (`reading`, or another on the balance of its last weighing); null where it cannot know. */
export function expectedOf(thing: Thing, balances: Plates, reading?: Reading): Expected | null {
  const sum = sumOf(thing.expected);
  const rests = Object.values(thing.rests);
  const next = reading ?? rests.find(({ sign }) => sign === 1)?.reading;
  if (!next || rests.length === 0 || !('ng' in sum)) return null;
  const uG = uOfSum([...rests, { sign: -1, reading: next }].map((one) => ({ sign: one.sign, worth: worth(one.reading, balances) })));
  const stepNg = massNg(Math.max(next.stepNg ?? 0, thing.stepNg) || 10_000_000);
  return { ng: sum.ng, marginNg: massNg(Math.ceil(Number(((2e9 * uG) / stepNg).toPrecision(9))) * stepNg), stepNg };
}

/** Readings of one job are taken close together: one calibration is assumed for all of them. */
const worth = (reading: Reading, balances: Plates): Worth => worthOf(reading, balances.get(reading.balance ?? ''), { epoch: 'now' });

/** Usual working loss that no doubt is raised for: a twentieth (common practice, no source). */
const USUAL_SHARE = 20;

/** Whether a reading lies further from what is expected than the balance and usual working loss explain. */
export function isOdd({ ng, marginNg }: Expected, readNg: MassNg): boolean {
  return readNg > ng + marginNg || readNg < ng - marginNg - Math.floor(ng / USUAL_SHARE);
}

/** The question at the bench: weigh again, and the likeliest slips: the piece of another job first, since that one can be looked at. */
export function oddWords(
  thing: Thing,
  reading: Reading,
  expected: Expected,
  balances: Plates,
  known: { readonly tares: readonly { readonly name: string; readonly ng: number }[]; readonly others: readonly OpenPiece[] },
): string {
  const decimals = decimalsOfStep(expected.stepNg, 'g');
  const words = (mass: number) => formatMassWithUnit(massNg(mass), 'g', decimals);
  const written = [...Object.entries(thing.rests), ['now', { sign: -1, reading }] as const].map(([id, rest]) =>
    writtenOf(id, rest, balances),
  );
  const slips = findSlips(written, known.tares, known.others).filter(
    ({ weighing, kind }) => weighing === 'now' && kind !== 'counted twice',
  );
  const other = known.others.find(({ name }) => slips.some(({ kind, instead }) => kind === 'another piece' && instead === name));
  const question = other ? ` ${capital(other.name)} weighs ${words(other.ng)}. Is that the piece in your hand?` : '';
  return `Weigh again: ${reading.text} ${reading.unit} was read and ${words(expected.ng)} is expected, give or take ${words(expected.marginNg)}.${question}${otherwise(slips)} If it is right, type the second reading and say why.`;
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
