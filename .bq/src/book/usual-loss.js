// What such work usually loses as dust that nobody weighs, by operation and metal: assumed until the shop has a history of its own.
import { flooredTau } from '../reckoning/drift.js';
import { dustUpper, Z95 } from '../reckoning/loss-law.js';
import { metalOf } from './metals.js';
/** Work by how much of the metal it turns to dust. */
export const OPERATIONS = {
  polish: 'cleaning and polishing',
  joint: 'soldering, claws and small joints',
  size: 'sizing and shanks',
  remake: 'remounting and remodelling',
};
const OPERATION_OF = {
  ...{ check: null, 'take-out': null, set: null, 'supply-stone': null, restring: null, plate: null, other: null },
  ...{ clean: 'polish', polish: 'polish', millgrain: 'polish', engrave: 'polish', 'strip-plating': 'polish' },
  ...{ solder: 'joint', laser: 'joint', 're-tip': 'joint', 're-claw': 'joint', 're-head': 'joint', clasp: 'joint' },
  ...{ 'size-up': 'size', 'size-down': 'size', 'half-shank': 'size', 're-shank': 'size' },
  ...{ remount: 'remake', remodel: 'remake' },
};
const BY_LOSS = ['remake', 'size', 'joint', 'polish'];
/** The operation among the steps of a job that loses most; null where none of them files or polishes. */
export function operationOf(steps) {
  const own = steps.split(' ').map((step) => (Object.hasOwn(OPERATION_OF, step) ? OPERATION_OF[step] : null));
  return BY_LOSS.find((operation) => own.includes(operation)) ?? null;
}
/** Loss as a share of the metal worked, its doubt, and its spread between jobs (2026; common practice, no source). */
const ASSUMED = {
  polish: { rate: 0.001, uRate: 0.001, tau: 0.001 },
  joint: { rate: 0.002, uRate: 0.0015, tau: 0.0015 },
  size: { rate: 0.004, uRate: 0.003, tau: 0.003 },
  remake: { rate: 0.01, uRate: 0.006, tau: 0.006 },
};
/** Silver is softer and is polished longer (2026; common practice, no source). */
const SILVER_TIMES = 1.3;
export const ASSUMED_FROM = 'assumed: common practice, no source (2026)';
/** The assumed loss of an operation on a metal. */
export function assumedLoss(operation, family) {
  const { rate, uRate, tau } = ASSUMED[operation];
  const times = family === 'silver' ? SILVER_TIMES : 1;
  return { rate: times * rate, uRate: times * uRate, tau: times * tau };
}
/** A learned rate may come out at nothing or below it: dust is never less than this part of what is assumed. */
const LEAST_SHARE = 20;
/** The usual loss of a job in grams, from a rate and the grams worked. */
export function usualLoss(rate, prior, workedG) {
  const mean = Math.max(rate.rate, prior.rate / LEAST_SHARE);
  return { meanG: mean * workedG, tauG: Math.hypot(flooredTau(rate.tau, prior), rate.uRate) * workedG };
}
/** What such work may take off that many grams before it is asked about, in grams: what nineteen in twenty such jobs keep to; none where no step files or polishes. */
export function usualMostG(steps, metal, grams) {
  const operation = operationOf(steps);
  if (operation === null) return 0;
  const prior = assumedLoss(operation, familyOf(metal));
  return dustUpper(usualLoss(prior, prior, grams), Z95);
}
export const familyOf = (metal) => metalOf(metal ?? 'other').family;
