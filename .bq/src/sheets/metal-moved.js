import { sizingOfRingNg } from '../trade/sizing.js';
import { decimalsOfStep, formatMass, formatMassWithUnit, massNg } from '../units/mass.js';
import { sizeMm } from '../units/ring-size.js';
import { netNg } from '../weighing/reading.js';
/** Which way each method moves metal. */
export const METHOD_MOVES = {
  stretched: 'none',
  compressed: 'none',
  insert: 'in',
  cut: 'out',
  're-shank': 'both',
  bridge: 'in',
};
/** Methods that make a ring larger, and smaller; a new shank does either. */
const LARGER = ['stretched', 'insert'];
const SMALLER = ['compressed', 'cut', 'bridge'];
/** Whether the method cannot lead from one size to the other; false where a size cannot be read. */
export function wrongWay(method, from = '', to = '') {
  const [was, is] = [sizeMm(from), sizeMm(to)];
  if (was === null || is === null) return false;
  return (LARGER.includes(method) && is <= was) || (SMALLER.includes(method) && is >= was);
}
/** Two labels of one size, or the very same words. */
export function isSameSize(one, other) {
  const [a, b] = [sizeMm(one), sizeMm(other)];
  if (a !== null && b !== null) return Math.abs(a - b) < 0.01;
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
/** A shank may be a tenth as heavy as the ring is all round, or half as heavy again while it is still to be filed (common practice, no source). */
const LEAST_SHARE = 0.1;
const MOST_SHARE = 1.5;
/** Where the sizes cannot be read, no sizing moves more than a tenth of the ring (common practice, no source). */
const UNREAD_SHARE = 0.1;
/** What was let in or cut out. Dust makes an insert look smaller and a cut larger. */
export function metalMoved({ way, from = '', to = '', moved, weight }, { expectedNg, usualNg, marginNg }) {
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
function byDifference({ unit, stepNg }, ng) {
  const text = formatMass(ng, unit, decimalsOfStep(stepNg ?? ng, unit));
  return { text, unit, ng, basis: 'difference', ...(stepNg === undefined ? {} : { stepNg }) };
}
/** The question where a difference is out of proportion to the sizes; null where it is not, or where the weight was read again with a reason. */
export function oddDifference(part, weight) {
  if (!part?.difference) return null;
  const { ng, leastNg, mostNg, beforeNg } = part.difference;
  const isAnswered = (weight.repeats?.length ?? 0) > 0 && weight.because !== undefined;
  if (isAnswered || (ng > 0 && ng >= leastNg && ng <= mostNg)) return null;
  const decimals = decimalsOfStep(weight.stepNg ?? massNg(10_000_000), weight.unit);
  const words = (mass) => formatMassWithUnit(massNg(Math.round(Math.abs(mass))), weight.unit, decimals);
  const change = part.way === 'in' ? ng : -ng;
  const before = `${words(beforeNg)} before`;
  const found =
    change === 0 ? `no more and no less than the ${before}` : `${words(change)} ${change > 0 ? 'more' : 'less'} than the ${before}`;
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
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
