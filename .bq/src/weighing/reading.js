// A reading: what a balance (or a difference, estimate or count) said. Kept as shown; never overwritten by a computed value.
import { z } from 'zod';
import { isRef } from '../units/ids.js';
import { decimalsOfStep, formatMass, massNg, parseMass } from '../units/mass.js';
export const BASES = ['weighed', 'difference', 'estimate', 'count'];
export const MASS_UNITS = ['g', 'ct', 'gr', 'dwt', 'ozt', 'momme'];
const mass = z.custom((value) => Number.isSafeInteger(value));
const shown = z.string().min(1).max(24);
/** A reading as it stands in a leaf: more than zero, `ng` equal to its text, a weighed one with its balance and step. */
export const readingSchema = z
  .strictObject({
    text: shown,
    unit: z.enum(MASS_UNITS),
    ng: mass,
    basis: z.enum(BASES),
    balance: z.custom((value) => typeof value === 'string' && isRef('balance', value)).exactOptional(),
    stepNg: mass.exactOptional(),
    onPan: z
      .array(z.strictObject({ thing: z.string().min(1).max(60), tareNg: mass.exactOptional() }))
      .max(8)
      .exactOptional(),
    dry: z.enum(['yes', 'no', 'unsure']).exactOptional(),
    repeats: z.array(shown).max(10).exactOptional(),
    because: z.string().min(1).max(500).exactOptional(),
    raw: z
      .string()
      .regex(/^[A-Za-z0-9_-]{1,400}$/)
      .exactOptional(),
    formula: z.string().min(1).max(60).exactOptional(),
  })
  .superRefine((reading, context) => {
    const parsed = parseMass(reading.text, reading.unit);
    if ('problem' in parsed) return context.addIssue({ code: 'custom', path: ['text'], message: MASS_WORDS[parsed.problem] });
    if (parsed.ng !== reading.ng) context.addIssue({ code: 'custom', path: ['ng'], message: 'ng does not follow from the text' });
    if (parsed.ng <= 0) context.addIssue({ code: 'custom', path: ['text'], message: 'A weight is more than zero.' });
    const named = reading.balance !== undefined && reading.stepNg !== undefined;
    if (reading.basis === 'weighed' && !named) {
      context.addIssue({ code: 'custom', path: ['balance'], message: 'Say which balance it was read on.' });
    }
  });
/** What to say of a text that is no mass; each says what to do. */
export const MASS_WORDS = {
  empty: 'Type what the balance shows.',
  'not a number': 'Type the weight in figures, for example 5.17 or 5,17.',
  'too large': 'That is heavier than anything in this trade. Check the figures.',
  'too fine': 'That has more decimals than a balance shows. Type it as shown.',
};
/** Net mass in ng, or null where something of unknown weight was on the pan. */
export function netNg(reading) {
  let tareNg = 0;
  for (const { tareNg: itsNg } of reading.onPan ?? []) {
    if (itsNg === undefined) return null;
    tareNg += itsNg;
  }
  return massNg(reading.ng - tareNg);
}
/** "5.17 g" as it was read, with a no-break space and a point. */
export function readingWords(reading) {
  const parsed = parseMass(reading.text, reading.unit);
  const shownText = 'problem' in parsed ? reading.text : formatMass(reading.ng, reading.unit, parsed.decimals);
  const gross = netNg(reading) === null ? ' gross' : '';
  const basis = { weighed: '', difference: ' by difference', estimate: ' estimated', count: ' by count' }[reading.basis];
  return `${shownText}\u00a0${reading.unit}${gross}${basis}`;
}
/** The weight of a stone, in carats to the step it was read in whatever the balance showed: "1.20 ct". */
export function caratWords(reading) {
  if (reading.unit === 'ct') return readingWords(reading);
  const gross = netNg(reading) === null ? ' gross' : '';
  return `${formatMass(reading.ng, 'ct', decimalsOfStep(reading.stepNg ?? CENTIGRAM_NG, 'ct'))}\u00a0ct${gross}`;
}
const CENTIGRAM_NG = massNg(10_000_000);
