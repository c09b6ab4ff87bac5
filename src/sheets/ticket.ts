// The short ticket: everything a small job needs, on one page and in one command; both agree on what is read back.
import { BANDS } from '../book/bands.ts';
import { valueStated } from '../entries/value-stated.ts';
import { workAgreed } from '../entries/work-agreed.ts';
import { formatCivilDate } from '../units/dates.ts';
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
  promise: workAgreed.fields.promise,
  band: valueStated.fields.band,
  heatConsent: workAgreed.fields.heatConsent,
} as const;

export const ticket = defineSheet<'ticket', typeof fields, InForce & { readonly customer: string }>({
  name: 'ticket',
  fields,
  form: {
    title: 'Short ticket',
    labels: {
      ...TAKING_LABELS,
      promise: 'Ready by',
      band: 'Stated value, for custody only',
      heatConsent: 'The risk of heat was explained and accepted',
    },
    sections: [
      ...TAKING_SECTIONS,
      ['The work', ['steps', 'sizeFrom', 'sizeTo', 'details', 'priceKind', 'price', 'promise', 'band', 'heatConsent']],
    ],
    often: OFTEN,
    button: 'We agree: bag it and print the slip',
  },
  check: takingProblems,
  readBack: (data, { customer }) => [
    ...takingSentences(data, customer),
    `Ready by ${formatCivilDate(data.promise)}.`,
    data.band === undefined ? 'No value stated.' : `Stated value ${BANDS[data.band]}, for custody only.`,
    ...(data.heatConsent ? ['The risk of heat was explained and accepted.'] : []),
    SMALL_TERMS_WORDS,
  ],
  lines: (data, known) => [
    ...takingLines(data),
    ...(data.band === undefined
      ? []
      : [line('value_stated', { piece: data.piece, band: data.band, value: undefined, statedBy: 'customer' })]),
    line('work_agreed', { ...workOf(data, known), promise: data.promise, heatConsent: data.heatConsent }),
  ],
});
