// Take-in, the full path: who; what, its parts, stones and seats; its marks; the value stated; its condition; photographs; what was
// agreed and what becomes of metal that leaves it. Both agree on the read-back, and it is written in one command.

import { BANDS } from '../book/bands.ts';
import { type Data, observed, optional, refOrBegins, stated } from '../book/entry.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { PHOTO_SHOWS } from '../book/photographs.ts';
import { BACKINGS, CUTS, SEAT_STATES, SPECIES } from '../book/stone-words.ts';
import { choice, count, decimal, file, fresh, group, list, lines as paragraph, text } from '../book/values.ts';
import { after, stonesWords } from '../book/words.ts';
import { PRICE_KINDS, WASTE_TERMS, WORK_STEPS, wordsOf } from '../book/work.ts';
import { customerMet } from '../entries/customer-met.ts';
import { jobOpened } from '../entries/job-opened.ts';
import { markRead } from '../entries/mark-read.ts';
import { pieceReceived } from '../entries/piece-received.ts';
import { valueStated } from '../entries/value-stated.ts';
import { workAgreed } from '../entries/work-agreed.ts';
import { formatCivilDate } from '../units/dates.ts';
import { formatMoney } from '../units/money.ts';
import { readingWords } from '../weighing/reading.ts';
import { defineSheet, line, pick, type SheetLine } from './sheet.ts';
import type { InForce } from './taking.ts';

const { customer: _met, name, ...contact } = customerMet.fields;
const { job, bag, customer: _named, comebackOf: _comeback, ...opened } = jobOpened.fields;
const { job: _receivedIn, ...received } = pieceReceived.fields;
const { job: _agreedIn, terms: _inForce, ...agreed } = workAgreed.fields;
const { piece: _valued, ...valued } = valueStated.fields;
const { kind: markKind, legible, where, struck } = markRead.fields;

const setting = group({
  stone: { label: 'Stone', of: fresh('stone') },
  packet: { label: 'Group', of: fresh('packet') },
  seat: { label: 'Seat, or group of seats', of: text(80) },
  species: { label: 'Stone, as observed', of: choice(SPECIES) },
  stones: { label: 'How many', of: count(999, 1), optional: true },
  cut: { label: 'Cut', of: choice(CUTS), optional: true },
  sizeMm: { label: 'Size', of: decimal('mm'), optional: true },
  backing: { label: 'Backing', of: choice(BACKINGS) },
  state: { label: 'State', of: choice(SEAT_STATES) },
});
const mark = group({
  kind: { label: 'Mark', of: markKind },
  where: { label: 'Where', of: where },
  struck: { label: 'As struck', of: struck, optional: true },
  legible: { label: 'Reads', of: legible },
});
const photo = group({ photo: { label: 'Photograph', of: file() }, shows: { label: 'What it shows', of: choice(PHOTO_SHOWS) } });

const fields = {
  ...{ job, bag, customer: optional(refOrBegins('customer')), name: optional(name), ...contact, ...opened, ...received },
  settings: optional(observed(list(setting, 40))),
  marks: optional(observed(list(mark, 12))),
  ...{ ...valued, statedBy: optional(valued.statedBy) },
  photos: optional(stated(list(photo, 8))),
  ...agreed,
  risks: optional(stated(paragraph(1000))),
} as const;
type TakeIn = Data<typeof fields>;

export const takeIn = defineSheet<'take-in', typeof fields, InForce & { readonly customer: string }>({
  name: 'take-in',
  fields,
  form: {
    title: 'Full take-in',
    labels: {
      ...customerMet.form.labels,
      ...jobOpened.form.labels,
      ...valueStated.form.labels,
      ...pieceReceived.form.labels,
      ...workAgreed.form.labels,
      ...{ settings: 'Seats, and groups of seats', marks: 'Marks, each as struck', photos: 'Photographs' },
      risks: 'Risks that were explained, and what was said',
    },
    hints: { name: 'Only for a new customer.', settings: 'A group of seats says how many are in it.', ...pieceReceived.form.hints },
    sections: [
      ['1 · Who', ['customer', 'name', 'phone', 'email', 'contact', 'broughtBy', 'owner', 'channel', 'theirDocket', 'theirWeight']],
      ['2 · What', ['kind', 'description', 'ringSizeMm', 'parts', 'stones', 'settings']],
      ['3 · Marks', ['marks']],
      ['4 · Value stated', ['value', 'band', 'statedBy']],
      ['5 · Condition, weight and photographs', ['condition', 'weight', 'photos']],
      ['6 · Work agreed', ['steps', 'details', 'priceKind', 'price', 'promise']],
      ['7 · Risks, and metal that leaves it', ['risks', 'heatConsent', 'markConsent', 'dust', 'cutMetal', 'oldParts', 'agreedBy']],
    ],
    often: { steps: ['check', 'size-up', 'size-down', 're-tip', 're-claw', 'take-out', 'set', 'polish'] },
    cautions: ['contents-unopened', 'bailee'],
    button: 'We agree: write it and bag it',
  },
  check: ({ value, band, settings = [] }) => [
    ...(value && band ? [{ field: 'band', say: 'Give the value or a band, and only one of them.' }] : []),
    ...settings.flatMap(({ state, stones }, row) =>
      state === 'empty' && stones !== undefined ? [{ field: `settings.${row}.stones`, say: 'An empty seat holds no stones.' }] : [],
    ),
  ],
  readBack: (data, { customer }) => [`For ${customer}.`, ...whatSentences(data), ...workSentences(data)],
  lines(data, { terms }) {
    const { customer, piece, value, band, statedBy = 'customer', settings = [], marks = [], photos = [], risks } = data;
    return [
      ...(data.name === undefined
        ? []
        : [line('customer_met', { ...pick(data, ['phone', 'email', 'contact']), customer, name: data.name })]),
      line('job_opened', {
        ...pick(data, ['job', 'bag', 'customer', 'broughtBy', 'owner', 'channel', 'theirDocket', 'theirWeight']),
        comebackOf: undefined,
      }),
      line('piece_received', pick(data, ['job', 'piece', 'kind', 'description', 'parts', 'stones', 'weight', 'ringSizeMm', 'condition'])),
      ...settings.map((seat) => settingLine(piece, seat)),
      ...marks.map((one) => line('mark_read', { ...pick(one, ['kind', 'where', 'struck', 'legible']), piece })),
      ...(value || band ? [line('value_stated', { piece, value, band, statedBy })] : []),
      ...photos.map((one) => line('photo_added', { about: piece, photo: one.photo, shows: one.shows })),
      line('work_agreed', { ...pick(data, AGREED), terms }),
      ...(risks === undefined ? [] : [line('note_added', { about: data.job, text: `Risks explained: ${risks}` })]),
    ];
  },
});

const AGREED = [
  ...(['job', 'steps', 'details', 'priceKind', 'price', 'promise', 'dust', 'cutMetal', 'oldParts', 'heatConsent'] as const),
  ...(['markConsent', 'agreedBy'] as const),
];

/** One stone in its seat, a group of them in theirs, or an empty seat. */
function settingLine(piece: TakeIn['piece'], { stone, packet, stones, ...seat }: NonNullable<TakeIn['settings']>[number]): SheetLine {
  const one = seat.state !== 'empty' && stones === undefined;
  return line('setting_noted', {
    ...{ piece, stones, ...pick(seat, ['seat', 'species', 'cut', 'sizeMm', 'backing', 'state']) },
    stone: one ? stone : undefined,
    packet: stones === undefined ? undefined : packet,
  });
}

function whatSentences({
  description,
  parts,
  stones,
  weight,
  settings = [],
  marks = [],
  condition,
  value,
  band,
}: TakeIn): readonly string[] {
  const metals = parts.map(({ part, metal }) => `${part} ${METAL_WORDS[metal]}`).join(', ');
  const seats = settings.map(
    ({ seat, species, stones: many, state }) => `${seat}: ${many ? `${many} ` : ''}${SPECIES[species]}, ${SEAT_STATES[state]}`,
  );
  const read = marks.map((one) => `${one.struck ?? 'cannot be read'}, ${one.where}`);
  const stated = value ? formatMoney(value) : band ? BANDS[band] : undefined;
  return [
    `${description}: ${metals}; ${stonesWords(stones)}; ${weight ? readingWords(weight) : 'not weighed'}.`,
    ...(seats.length > 0 ? [`Seats: ${seats.join('; ')}.`] : []),
    read.length > 0 ? `Marks: ${read.join('; ')}.` : 'No marks read.',
    ...(condition === undefined ? [] : [`Condition: ${condition}`]),
    stated === undefined ? 'No value stated.' : `Stated value ${stated}, for custody only.`,
  ];
}

function workSentences({
  steps,
  details,
  priceKind,
  price,
  promise,
  risks,
  heatConsent,
  markConsent,
  dust,
  cutMetal,
  oldParts,
}: TakeIn): readonly string[] {
  const cost = price ? `${formatMoney(price)}, ${PRICE_KINDS[priceKind]}` : PRICE_KINDS[priceKind];
  return [
    `To do: ${wordsOf(WORK_STEPS, steps)}${after(', ', details)}. ${cost}. Ready by ${formatCivilDate(promise)}.`,
    ...(risks === undefined ? [] : [`Risks explained: ${risks}`]),
    ...(heatConsent ? ['The risk of heat was explained and accepted.'] : []),
    ...(markConsent ? ['Marks or an inscription may go with the metal: accepted.'] : []),
    `Dust and filings: ${WASTE_TERMS[dust]}. Worn metal removed: ${WASTE_TERMS[cutMetal]}. Old parts: ${oldParts === 'customer' ? 'back to the customer' : 'not wanted back'}.`,
  ];
}
