// What such work usually loses as dust that nobody weighs, by operation and metal: assumed until the shop has a history of its own.
import { type Prior, usualLoss } from '../reckoning/drift.ts';
import { dustUpper, Z95 } from '../reckoning/loss-law.ts';
import { type MetalFamily, metalOf } from './metals.ts';
import type { WORK_STEPS } from './work.ts';

/** Work by how much of the metal it turns to dust. */
export const OPERATIONS = {
  polish: 'cleaning and polishing',
  joint: 'soldering, claws and small joints',
  size: 'sizing and shanks',
  remake: 'remounting and remodelling',
} as const;
export type Operation = keyof typeof OPERATIONS;

const OPERATION_OF: Readonly<Record<keyof typeof WORK_STEPS, Operation | null>> = {
  ...{ check: null, 'take-out': null, set: null, 'supply-stone': null, restring: null, plate: null, other: null },
  ...{ clean: 'polish', polish: 'polish', millgrain: 'polish', engrave: 'polish', 'strip-plating': 'polish' },
  ...{ solder: 'joint', laser: 'joint', 're-tip': 'joint', 're-claw': 'joint', 're-head': 'joint', clasp: 'joint' },
  ...{ 'size-up': 'size', 'size-down': 'size', 'half-shank': 'size', 're-shank': 'size' },
  ...{ remount: 'remake', remodel: 'remake' },
};
const BY_LOSS: readonly Operation[] = ['remake', 'size', 'joint', 'polish'];

/** The operation among the steps of a job that loses most; null where none of them files or polishes. */
export function operationOf(steps: string): Operation | null {
  const own = steps.split(' ').map((step) => (Object.hasOwn(OPERATION_OF, step) ? OPERATION_OF[step as keyof typeof WORK_STEPS] : null));
  return BY_LOSS.find((operation) => own.includes(operation)) ?? null;
}

/** Loss as a share of the metal worked, its doubt, and its spread between jobs (2026; common practice, no source). */
const ASSUMED: Readonly<Record<Operation, Prior>> = {
  polish: { rate: 0.001, uRate: 0.001, tau: 0.001 },
  joint: { rate: 0.002, uRate: 0.0015, tau: 0.0015 },
  size: { rate: 0.004, uRate: 0.003, tau: 0.003 },
  remake: { rate: 0.01, uRate: 0.006, tau: 0.006 },
};
/** Silver is softer and is polished longer (2026; common practice, no source). */
const SILVER_TIMES = 1.3;

export const ASSUMED_FROM = 'assumed: common practice, no source (2026)';

/** The assumed loss of an operation on a metal. */
export function assumedLoss(operation: Operation, family: MetalFamily): Prior {
  const { rate, uRate, tau } = ASSUMED[operation];
  const times = family === 'silver' ? SILVER_TIMES : 1;
  return { rate: times * rate, uRate: times * uRate, tau: times * tau };
}

/** What such work may take off that many grams before it is asked about, in grams: what nineteen in twenty such jobs keep to; none where no step files or polishes. */
export function usualMostG(steps: string, metal: string | undefined, grams: number): number {
  const operation = operationOf(steps);
  if (operation === null) return 0;
  const prior = assumedLoss(operation, familyOf(metal));
  return dustUpper(usualLoss(prior, prior, grams), Z95);
}

export const familyOf = (metal: string | undefined): MetalFamily => metalOf(metal ?? 'other').family;
