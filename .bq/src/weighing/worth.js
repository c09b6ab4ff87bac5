// What a reading is worth: on a balance by its plate and its last calibration, and without one by a stated share of itself.
import { massNg, parseMass } from '../units/mass.js';
import { assumedParameters, rangeFor } from './balance.js';
import { netNg } from './reading.js';
import { repeatability } from './repeatability.js';
import { worthOfEstimate, worthOfReading } from './uncertainty.js';

const VERIFIED = ['I', 'II', 'III', 'IIII'];
/** Parameters of a balance from its plate and marks; what is silent is assumed. An error off the middle is taken at a third of the largest load (OIML R 76-1:2006, 3.6.2, memory). */
export function parametersOf(id, plate, marks) {
  const assumed = assumedParameters({ id, ...plate });
  const ng = (mark) => markedNg(marks[mark], plate.unit);
  const largestNg = plate.ranges.at(-1)?.maxNg ?? massNg(0);
  return {
    ...assumed,
    accuracyClass: VERIFIED.find((one) => one === marks.class) ?? assumed.accuracyClass,
    eNg: ng('verificationStep') ?? assumed.eNg,
    repeatability: repeatabilityOf(marks.repeatability, plate.unit) ?? assumed.repeatability,
    linearityNg: ng('linearity') ?? assumed.linearityNg,
    eccentricity: { ng: ng('eccentricity') ?? 0, atNg: massNg(Math.round(largestNg / 3)) },
  };
}
/** Of the mark "0.004" as a paper says it, or of the readings of one weight, "20.00 20.01 …"; null where nothing was said. */
export function repeatabilityOf(mark, unit) {
  const readings = (mark ?? '').split(' ').map((text) => markedNg(text, unit));
  const [only] = readings;
  if (readings.length === 1) return only == null ? null : { sNg: only, readings: Number.POSITIVE_INFINITY };
  const spread = repeatability(readings.filter((ng) => ng !== null));
  return spread && { sNg: Math.round(spread.sG * 1e9), readings: spread.readings };
}
function markedNg(text, unit) {
  const parsed = text === undefined ? null : parseMass(text, unit);
  return parsed && 'ng' in parsed ? parsed.ng : null;
}
/** Half-width of an amount that no balance showed, as a share of it (common practice, no source). */
const ESTIMATE_SHARE = 0.1;
/**
 * Worth of a reading on a balance, or of an amount without one. A difference is two readings. Repeats confirm the first
 * reading and are not averaged into it. A listed tare is as good as one reading of it on the same balance (common practice, no source).
 */
export function worthOf(reading, balance, taken) {
  if (balance === undefined || rangeFor(balance, reading.ng) === null || reading.basis === 'estimate' || reading.basis === 'count') {
    return worthOfEstimate((1 - ESTIMATE_SHARE) * reading.ng, (1 + ESTIMATE_SHARE) * reading.ng);
  }
  const tareNg = massNg(reading.ng - (netNg(reading) ?? reading.ng));
  const tare = tareNg > 0 ? { container: containerOf(reading), uG: worthOfReading(balance, tareNg, taken).uRandomG } : undefined;
  const worth = worthOfReading(balance, reading.ng, tare ? { ...taken, tare } : taken);
  return reading.basis === 'difference' ? { ...worth, uRandomG: Math.SQRT2 * worth.uRandomG, sG: Math.SQRT2 * (worth.sG ?? 0) } : worth;
}
const containerOf = ({ onPan = [] }) => onPan.map(({ thing }) => thing).join(' + ');
