// What every small job is taken in with, whether it stays or is waited for: its fields, and the entries they make.
import type { Problem } from '../book/codec.ts';
import { type Data, observed, optional, refOrBegins, stated } from '../book/entry.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { PIECE_KINDS } from '../book/pieces.ts';
import { workDetails } from '../book/ring-size-words.ts';
import { choice, count, lines as paragraph, text } from '../book/values.ts';
import { stonesWords } from '../book/words.ts';
import { PRICE_KINDS, WORK_STEPS, wordsOf } from '../book/work.ts';
import { customerMet } from '../entries/customer-met.ts';
import { jobOpened } from '../entries/job-opened.ts';
import { photoAdded } from '../entries/photo-added.ts';
import { pieceReceived } from '../entries/piece-received.ts';
import { weightNotTaken } from '../entries/weight-not-taken.ts';
import { workAgreed } from '../entries/work-agreed.ts';
import { formatMoney } from '../units/money.ts';
import { readingWords } from '../weighing/reading.ts';
import { line, type SheetLine } from './sheet.ts';

const STONES_SEEN = { none: 'None', tight: 'All there and tight', note: 'See the note' } as const;
const MARKS_SEEN = { clear: 'Clear', worn: 'Worn', none: 'None seen' } as const;
/** Metal that comes over a counter most days, in either country. */
const EVERYDAY_METAL = ['gold-375', 'gold-585', 'gold-750', 'silver-925', 'platinum-950', 'gold-unknown'];
const EVERYDAY_PIECES = ['ring', 'chain', 'bracelet', 'brooch', 'earrings', 'pendant'];
const EVERYDAY_WORK = ['size-up', 'size-down', 'solder', 're-tip', 'clasp', 'plate', 'polish', 'other'];

/** What every small job is taken in with, whether it stays or is waited for. */
export const taking = {
  job: jobOpened.fields.job,
  bag: jobOpened.fields.bag,
  customer: optional(refOrBegins('customer')),
  name: optional(customerMet.fields.name),
  phone: customerMet.fields.phone,
  piece: pieceReceived.fields.piece,
  kind: optional(observed(choice(PIECE_KINDS))),
  metal: observed(choice(METAL_WORDS)),
  stonesSeen: observed(choice(STONES_SEEN)),
  stones: optional(observed(count())),
  marks: optional(observed(choice(MARKS_SEEN))),
  note: optional(observed(paragraph(500))),
  weight: pieceReceived.fields.weight,
  notWeighed: optional(weightNotTaken.fields.reason),
  photo: optional(photoAdded.fields.photo),
  steps: workAgreed.fields.steps,
  sizeFrom: optional(stated(text(12))),
  sizeTo: optional(stated(text(12))),
  details: optional(stated(text(300))),
  priceKind: workAgreed.fields.priceKind,
  price: workAgreed.fields.price,
} as const;

export const TAKING_LABELS = {
  ...{ job: 'Job', bag: 'Bag', customer: 'Customer', name: 'Name of a new customer', phone: 'Phone', piece: 'Piece' },
  ...{ kind: 'What is it?', metal: 'Metal, as marked', marks: 'Marks', note: 'Note: wear, damage, loose stones, by position' },
  ...{ stonesSeen: 'Stones', stones: 'How many, counted together' },
  ...{ weight: 'Weight on the pan', notWeighed: 'Or why it is not weighed', photo: 'One photograph on the pan, the reading visible' },
  ...{ steps: 'Work', sizeFrom: 'Ring size now', sizeTo: 'Size wanted', details: 'More about the work' },
  ...{ priceKind: 'Kind of price', price: 'Price' },
} as const;
export const OFTEN = { kind: EVERYDAY_PIECES, metal: EVERYDAY_METAL, steps: EVERYDAY_WORK } as const;
export const TAKING_SECTIONS = [
  ['Who', ['customer', 'name', 'phone']],
  ['What is left', ['kind', 'metal', 'stonesSeen', 'stones', 'marks', 'note']],
  ['On the pan', ['weight', 'photo']],
  ['Not weighed', ['notWeighed'], 'folded'],
] as const;

export type Taken = Data<typeof taking>;
const isSizing = ({ steps }: Pick<Taken, 'steps'>): boolean => steps.includes('size-up') || steps.includes('size-down');

/** What is sized is a ring, unless somebody says what else it is. */
const kindOf = ({ kind, steps }: Pick<Taken, 'kind' | 'steps'>): keyof typeof PIECE_KINDS =>
  kind ?? (isSizing({ steps }) ? 'ring' : 'other');

const stonesOf = ({ stonesSeen, stones }: Taken): number => (stonesSeen === 'none' ? 0 : (stones ?? 0));

/** "all stones there and tight; marks worn; a nick at the shoulder"; nothing where nothing was said. */
function conditionOf({ stonesSeen, marks, note }: Taken): string | undefined {
  const said = [stonesSeen === 'tight' && 'all stones there and tight', marks && `marks: ${MARKS_SEEN[marks].toLowerCase()}`, note];
  return said.filter(Boolean).join('; ') || undefined;
}

/** What is missing between the fields of a small job. */
export function takingProblems(data: Taken): readonly Problem[] {
  const wrong = (field: string, isWrong: boolean, say: string) => (isWrong ? [{ field, say }] : []);
  return [
    ...wrong('kind', data.kind === undefined && !isSizing(data), 'Say what it is.'),
    ...wrong('stones', data.stonesSeen !== 'none' && !data.stones, 'Count the stones together and write how many, or choose None.'),
    ...wrong('stones', data.stonesSeen === 'none' && (data.stones ?? 0) > 0, 'You counted stones and chose None. Say which holds.'),
    ...wrong('note', data.stonesSeen === 'note' && !data.note, 'Write what is to be noted about the stones.'),
    ...wrong('weight', (data.weight === undefined) === (data.notWeighed === undefined), 'Weigh it, or say why it is not weighed.'),
  ];
}

/** Who, the job, the piece and how it is, its photograph, or why it was not weighed. */
export function takingLines(data: Taken): readonly SheetLine[] {
  const { customer, name, job, bag, piece, weight, notWeighed, photo } = data;
  const kind = kindOf(data);
  return [
    ...(name === undefined ? [] : [line('customer_met', { customer, name, phone: data.phone, email: undefined, contact: undefined })]),
    line('job_opened', {
      ...{ job, bag, customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' },
      ...{ theirDocket: undefined, theirWeight: undefined, comebackOf: undefined },
    }),
    line('piece_received', {
      ...{ job, piece, kind, weight, description: PIECE_KINDS[kind].toLowerCase(), stones: stonesOf(data), ringSizeMm: undefined },
      ...{ parts: [{ part: 'whole', metal: data.metal }], condition: conditionOf(data) },
    }),
    ...(notWeighed === undefined ? [] : [line('weight_not_taken', { piece, reason: notWeighed, more: undefined })]),
    ...(photo === undefined ? [] : [line('photo_added', { about: piece, photo, shows: 'pan' })]),
  ];
}

/** What small work is agreed on unless the full path says otherwise: dust stays here, worn metal and old parts go back. */
export const SMALL_TERMS = { dust: 'shop', cutMetal: 'customer', oldParts: 'customer', agreedBy: 'signature' } as const;
export const SMALL_TERMS_WORDS = 'Dust and filings stay with the shop. Worn metal that is taken out and old parts go back to the customer.';
/** The terms in force, as an agreement names them. */
export interface InForce {
  /** Their name, or that none were set. */
  readonly terms: string;
}

/** The work of a small job, for `work_agreed`. */
export const workOf = ({ job, steps, details, sizeFrom, sizeTo, priceKind, price }: Taken, { terms }: InForce) => ({
  ...SMALL_TERMS,
  terms,
  ...{ job, steps, priceKind, price, markConsent: undefined },
  details: workDetails(sizeFrom, sizeTo, details),
});

/** "One 18ct gold · 750 ring, 4.12 g, 3 stones; all stones there and tight." and "To do: size up, size L to N. £45.00, fixed price." */
export function takingSentences(data: Taken, customer: string): readonly string[] {
  const weighed = data.weight ? readingWords(data.weight) : 'not weighed';
  const counted = stonesOf(data) === 0 ? 'no stones' : stonesWords(stonesOf(data));
  const what = `One ${METAL_WORDS[data.metal]} ${PIECE_KINDS[kindOf(data)].toLowerCase()}, ${weighed}, ${counted}`;
  const work = [wordsOf(WORK_STEPS, data.steps), workDetails(data.sizeFrom, data.sizeTo, data.details)].filter(Boolean).join(', ');
  const price = data.price ? `${formatMoney(data.price)}, ${PRICE_KINDS[data.priceKind]}` : PRICE_KINDS[data.priceKind];
  return [`For ${customer}.`, `${[what, conditionOf(data)].filter(Boolean).join('; ')}.`, `To do: ${work}. ${price}.`];
}
