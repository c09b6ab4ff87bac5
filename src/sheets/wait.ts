// Wait and take: a small job done while the customer waits; in and out in one command, without a bag.
import { optional } from '../book/entry.ts';
import { stonesWords } from '../book/words.ts';
import { pieceChecked } from '../entries/piece-checked.ts';
import { pieceReturned } from '../entries/piece-returned.ts';
import { pieceWeighed } from '../entries/piece-weighed.ts';
import type { CivilDate } from '../units/dates.ts';
import { readingWords } from '../weighing/reading.ts';
import { defineSheet, line } from './sheet.ts';
import {
  type InForce,
  OFTEN,
  SMALL_TERMS_WORDS,
  TAKING_LABELS,
  TAKING_SECTIONS,
  taking,
  takingLines,
  takingProblems,
  takingSentences,
  workOf,
} from './taking.ts';

const fields = {
  ...taking,
  weightOut: optional(pieceWeighed.fields.weight),
  stonesOut: pieceReturned.fields.stones,
  seatsNow: optional(pieceChecked.fields.seats),
  marksNow: pieceChecked.fields.marks,
} as const;

export const wait = defineSheet<'wait', typeof fields, InForce & { readonly customer: string; readonly today: CivilDate }>({
  name: 'wait',
  fields,
  form: {
    title: 'Wait and take',
    labels: {
      ...TAKING_LABELS,
      weightOut: 'Weight going out',
      stonesOut: 'Stones counted out with the customer',
      seatsNow: 'Seats now',
      marksNow: 'Marks now',
    },
    sections: [
      ...TAKING_SECTIONS,
      ['The work', ['steps', 'sizeFrom', 'sizeTo', 'details', 'priceKind', 'price']],
      ['Going out', ['weightOut', 'stonesOut', 'seatsNow', 'marksNow']],
    ],
    often: OFTEN,
    button: 'We agree: it goes home',
  },
  check: (data) => [
    ...takingProblems(data),
    ...(data.stonesOut > 0 && data.seatsNow === undefined ? [{ field: 'seatsNow', say: 'Look at the seats and say how they are.' }] : []),
  ],
  readBack: (data, known) => [
    ...takingSentences(data, known.customer),
    `Going out now: ${data.weightOut ? readingWords(data.weightOut) : 'not weighed again'}, ${stonesWords(data.stonesOut)} counted out.`,
    SMALL_TERMS_WORDS,
  ],
  lines(data, known) {
    const { job, piece, weightOut, stonesOut: stones } = data;
    return [
      ...takingLines(data),
      line('work_agreed', { ...workOf(data, known), promise: known.today, heatConsent: undefined }),
      ...(weightOut ? [line('piece_weighed', { piece, state: 'finished', weight: weightOut })] : []),
      line('piece_checked', {
        piece,
        stones,
        seats: data.seatsNow ?? 'none',
        marks: data.marksNow,
        ringSizeMm: undefined,
        note: undefined,
      }),
      line('work_finished', { job }),
      line('piece_returned', {
        piece,
        stones,
        to: 'customer',
        taker: undefined,
        shown: 'waited at the counter',
        weight: undefined,
        signed: 'signature',
      }),
      line('job_closed', { job }),
    ];
  },
});
