// A reading: what a balance (or a difference, estimate or count) said. Kept as shown; never overwritten by a computed value.
import { z } from 'zod';
import { isRef, type Ref } from '../units/ids.ts';
import { decimalsOfStep, formatMass, type MassNg, type MassUnit, massNg, parseMass } from '../units/mass.ts';

export const BASES = ['weighed', 'difference', 'estimate', 'count'] as const;
export type Basis = (typeof BASES)[number];

/** What a balance said. `ng` = parse(text, unit), checked by the schema, so that no later reader need parse. */
export interface Reading {
  readonly text: string;
  readonly unit: MassUnit;
  readonly ng: MassNg;
  readonly basis: Basis;
  readonly balance?: Ref<'balance'>;
  /** Step of the range it was read on. */
  readonly stepNg?: MassNg;
  /** What was on the pan with it; where a tare is not known the reading is gross only. */
  readonly onPan?: readonly { readonly thing: string; readonly tareNg?: MassNg }[];
  readonly dry?: 'yes' | 'no' | 'unsure';
  readonly repeats?: readonly string[];
  readonly because?: string;
  /** The balance's own line, base64url. */
  readonly raw?: string;
  readonly formula?: string;
}

export const MASS_UNITS = ['g', 'ct', 'gr', 'dwt', 'ozt', 'momme'] as const satisfies readonly MassUnit[];

const mass = z.custom<MassNg>((value) => Number.isSafeInteger(value));
const shown = z.string().min(1).max(24, 'Type what the balance shows.');

/** A reading as it stands in a leaf: more than zero, `ng` equal to its text, a weighed one with its balance and step. */
export const readingSchema = z
  .strictObject({
    text: shown,
    unit: z.enum(MASS_UNITS),
    ng: mass,
    basis: z.enum(BASES),
    balance: z.custom<Ref<'balance'>>((value) => typeof value === 'string' && isRef('balance', value)).exactOptional(),
    stepNg: mass.exactOptional(),
    onPan: z
      .array(z.strictObject({ thing: z.string().min(1).max(60, 'Choose from the list.'), tareNg: mass.exactOptional() }))
      .max(8, 'Choose at most 8.')
      .exactOptional(),
    dry: z.enum(['yes', 'no', 'unsure'], 'Choose one of these.').exactOptional(),
    repeats: z.array(shown).max(10).exactOptional(),
    because: z.string().min(1).max(500, 'Write at most 500 characters; put the rest in a note.').exactOptional(),
    raw: z
      .string()
      .regex(/^[A-Za-z0-9_-]{1,400}$/)
      .exactOptional(),
    formula: z.string().min(1).max(60, 'Write at most 60 characters.').exactOptional(),
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
  }) satisfies z.ZodType<Reading>;

/** What to say of a text that is no mass; each says what to do. */
export const MASS_WORDS = {
  empty: 'Type what the balance shows.',
  'not a number': 'Type the weight in figures, for example 5.17 or 5,17.',
  'too large': 'That is heavier than anything in this trade. Check the figures.',
  'too fine': 'That has more decimals than a balance shows. Type it as shown.',
} as const;

/** Net mass in ng, or null where something of unknown weight was on the pan. */
export function netNg(reading: Reading): MassNg | null {
  let tareNg = 0;
  for (const { tareNg: itsNg } of reading.onPan ?? []) {
    if (itsNg === undefined) return null;
    tareNg += itsNg;
  }
  return massNg(reading.ng - tareNg);
}

/** "5.17 g" as it was read, with a no-break space and a point; where it was not known to be dry, it says so. */
export function readingWords(reading: Reading): string {
  const parsed = parseMass(reading.text, reading.unit);
  const shownText = 'problem' in parsed ? reading.text : formatMass(reading.ng, reading.unit, parsed.decimals);
  const gross = netNg(reading) === null ? ' gross' : '';
  const basis = { weighed: '', difference: ' by difference', estimate: ' estimated', count: ' by count' }[reading.basis];
  return `${shownText}\u00a0${reading.unit}${gross}${basis}${wetWords(reading)}`;
}

/** The weight of a stone, in carats to the step it was read in whatever the balance showed: "1.20 ct". */
export function caratWords(reading: Reading): string {
  if (reading.unit === 'ct') return readingWords(reading);
  const gross = netNg(reading) === null ? ' gross' : '';
  return `${formatMass(reading.ng, 'ct', decimalsOfStep(reading.stepNg ?? CENTIGRAM_NG, 'ct'))}\u00a0ct${gross}${wetWords(reading)}`;
}
const wetWords = ({ dry }: Reading): string => (dry === 'no' ? ' not dry' : dry === 'unsure' ? ' perhaps not dry' : '');
const CENTIGRAM_NG = massNg(10_000_000);
