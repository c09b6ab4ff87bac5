// Take-in, the full path: who, what and in what state, counted and weighed in front of the customer, and what was agreed.

import { observed, optional, refOrBegins, stated } from '../book/entry.ts';
import { BACKINGS, CUTS, SEAT_STATES, SPECIES } from '../book/stones.ts';
import { choice, decimal, fresh, group, list, text } from '../book/values.ts';
import { customerMet } from '../entries/customer-met.ts';
import { jobOpened } from '../entries/job-opened.ts';
import { pieceReceived } from '../entries/piece-received.ts';
import { workAgreed } from '../entries/work-agreed.ts';
import { defineSheet, line } from './sheet.ts';

const { customer: _met, name: _name, ...contact } = customerMet.fields;
const { job, bag, customer: _named, comebackOf: _comeback, theirWeight: _theirs, ...opened } = jobOpened.fields;
const { job: _receivedIn, ...received } = pieceReceived.fields;
const { job: _agreedIn, ...agreed } = workAgreed.fields;

const setting = group({
  stone: { label: 'Stone', of: fresh('stone') },
  seat: { label: 'Seat', of: text(80) },
  species: { label: 'Stone, as observed', of: choice(SPECIES) },
  cut: { label: 'Cut', of: choice(CUTS), optional: true },
  sizeMm: { label: 'Size', of: decimal('mm'), optional: true },
  backing: { label: 'Backing', of: choice(BACKINGS) },
  state: { label: 'State', of: choice(SEAT_STATES) },
});

export const takeIn = defineSheet({
  name: 'take-in',
  fields: {
    job,
    bag,
    customer: refOrBegins('customer'),
    name: optional(stated(text(120))),
    ...{ phone: contact.phone, email: contact.email },
    ...opened,
    ...received,
    settings: optional(observed(list(setting, 12))),
    ...agreed,
  },
  form: {
    title: 'Take a piece in',
    labels: {
      ...customerMet.form.labels,
      ...jobOpened.form.labels,
      ...pieceReceived.form.labels,
      ...workAgreed.form.labels,
      settings: 'Seats, one by one',
    },
    hints: {
      name: 'Only for a new customer.',
      settings: 'Stones in a group of seats can be noted afterwards.',
      ...pieceReceived.form.hints,
    },
    button: 'We agree: write it and bag it',
  },
  lines(data) {
    const { customer, piece, settings = [] } = data;
    return [
      ...(data.name === undefined
        ? []
        : [line('customer_met', { customer, name: data.name, phone: data.phone, email: data.email, contact: undefined })]),
      line('job_opened', pick(data, ['job', 'bag', 'customer', 'broughtBy', 'owner', 'channel', 'theirDocket'])),
      line('piece_received', pick(data, ['job', 'piece', 'kind', 'description', 'parts', 'stones', 'weight', 'ringSizeMm', 'condition'])),
      ...settings.map(({ stone, ...seat }) => line('setting_noted', { piece, stone: seat.state === 'empty' ? undefined : stone, ...seat })),
      line(
        'work_agreed',
        pick(data, [
          'job',
          'steps',
          'details',
          'priceKind',
          'price',
          'promise',
          'dust',
          'cutMetal',
          'oldParts',
          'heatConsent',
          'markConsent',
          'terms',
          'agreedBy',
        ]),
      ),
    ];
  },
});

function pick<T extends object, K extends keyof T>(data: T, names: readonly K[]): Pick<T, K> {
  return Object.fromEntries(names.map((one) => [one, data[one]])) as Pick<T, K>;
}
