// What the ledger expects on the pan, how far off a reading may be, and which plain mistake would explain one that is further off.
import { usualMostG } from '../book/usual-loss.js';
import { findSlips } from '../reckoning/slip.js';
import { slipWords } from '../reckoning/words.js';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../units/mass.js';
import { netNg } from '../weighing/reading.js';
import { uOfSum } from '../weighing/uncertainty.js';
import { worthOf } from '../weighing/worth.js';
import { sumOf } from './thing.js';
/** What the ledger expects of a thing when it is read next (`reading`, or another on the balance of its last weighing); null where it cannot know. */
export function expectedOf(thing, balances, reading) {
  const sum = sumOf(thing.expected);
  const rests = Object.values(thing.rests);
  const next = reading ?? lastReading(thing);
  if (!next || rests.length === 0 || !('ng' in sum)) return null;
  const uG = uOfSum([...rests, { sign: -1, reading: next }].map((one) => ({ sign: one.sign, worth: worth(one.reading, balances) })));
  const stepNg = massNg(Math.max(next.stepNg ?? 0, thing.stepNg) || 10_000_000);
  return { ng: sum.ng, marginNg: massNg(Math.ceil(Number(((2e9 * uG) / stepNg).toPrecision(9))) * stepNg), stepNg };
}
/** A reading that what is expected rests on, whose unit is the one it was weighed in. */
export const lastReading = ({ rests }) => Object.values(rests).find(({ sign }) => sign === 1)?.reading;
/** Readings of one job are taken close together: one calibration is assumed for all of them. */
const worth = (reading, balances) => worthOf(reading, balances.get(reading.balance ?? ''), { epoch: 'now' });
/** Dirt that the first cleaning may take off a piece: a fiftieth of what it weighed as received (common practice, no source). */
const DIRT_SHARE = 50;
/** What may usually have gone off a thing of this job since it was last weighed: dirt at its first cleaning, then the dust of the work agreed; off stones and stock nothing. */
export function usualOff(thing, job, state) {
  const sum = sumOf(thing.expected);
  if (thing.kind !== 'piece' || !('ng' in sum)) return { ng: 0, as: 'dust' };
  const isFirst = Object.keys(thing.rests).every((key) => Number.parseInt(key, 10) === thing.begun);
  if (isFirst && state === 'cleaned and dry') return { ng: Math.floor(sum.ng / DIRT_SHARE), as: 'dirt' };
  return { ng: Math.round(1e9 * usualMostG(job?.says.work ?? '', thing.says.metal, sum.ng / 1e9)), as: 'dust' };
}
/** Whether a reading lies further from what is expected than the balance and usual working loss explain: a gain is never usual. */
export const isOdd = ({ ng, marginNg }, usual, readNg) => readNg > ng + marginNg || readNg < ng - marginNg - usual.ng;
/** The question at the bench, in the unit that was read: weigh again, and the likeliest slips: the piece of another job first, since that one can be looked at. */
export function oddWords(thing, reading, expected, usual, known) {
  const words = (ng) => formatMassWithUnit(massNg(Math.round(ng)), reading.unit, decimalsOfStep(expected.stepNg, reading.unit));
  const written = [...Object.entries(thing.rests), ['now', { sign: -1, reading }]].map(([id, rest]) => writtenOf(id, rest, known.balances));
  const slips = findSlips(written, known.tares, known.others).filter(
    ({ weighing, kind }) => weighing === 'now' && kind !== 'counted twice',
  );
  const other = known.others.find(({ name }) => slips.some(({ kind, instead }) => kind === 'another piece' && instead === name));
  const question = other ? ` ${capital(other.name)} weighs ${words(other.ng)}. Is that the piece in your hand?` : '';
  const off = usual.ng >= expected.stepNg ? ` Up to ${words(usual.ng)} is usual as ${usual.as}.` : '';
  return `Weigh again: ${reading.text}\u00a0${reading.unit} was read and ${words(expected.ng)} is expected, give or take ${words(expected.marginNg)}.${off}${question}${otherwise(slips)} If it is right, type the second reading and say why.`;
}
function writtenOf(id, { sign, reading }, balances) {
  const { text, unit, stepNg } = reading;
  const term = { id, sign, ng: netNg(reading) ?? reading.ng, worth: worth(reading, balances), text, unit };
  return stepNg === undefined ? term : { ...term, stepNg };
}
function otherwise(slips) {
  const plain = slips.filter(({ kind }) => kind !== 'another piece' && kind !== 'wrong direction').slice(0, 3);
  return plain.length === 0 ? '' : ` It may be a slip of the pen: ${plain.map(slipWords).join(', or ')}.`;
}
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
