// A balance was calibrated; readings from now on belong to this calibration.
import { defineEntry, observed, optional, ref, refuse, stated } from '../book/entry.ts';
import { identities } from '../book/given.ts';
import { anyStaffByPin } from '../book/may.ts';
import { choice, decimal, list, text } from '../book/values.ts';
import { after } from '../book/words.ts';

const BY = { own: 'with our own weights', maker: 'by the maker or dealer', laboratory: 'by a calibration laboratory' } as const;
const ADJUSTED = { adjusted: 'adjusted', 'not adjusted': 'not adjusted' } as const;
const inUnit = decimal('the unit of the balance');
/** Fewer tell too little of a spread (common practice, no source). */
const LEAST_READINGS = 5;

export const balanceCalibrated = defineEntry({
  type: 'balance_calibrated',
  version: 1,
  fields: {
    balance: ref('balance'),
    by: stated(choice(BY)),
    who: optional(stated(text(120))),
    certificate: optional(stated(text(60))),
    adjusted: stated(choice(ADJUSTED)),
    linearity: optional(observed(inUnit)),
    eccentricity: optional(observed(inUnit)),
    repeatability: optional(observed(inUnit)),
    readings: optional(observed(list(inUnit, 20))),
  },
  subject: 'balance',
  may: anyStaffByPin,
  form: {
    title: 'Calibrate a balance',
    labels: {
      balance: 'Balance',
      by: 'By whom',
      who: 'Which firm',
      certificate: 'Number of the paper',
      adjusted: 'Was it adjusted?',
      linearity: 'Largest error over the range',
      eccentricity: 'Largest error off the middle',
      repeatability: 'Repeatability s, as its paper says',
      readings: 'Or what it showed each time for one weight',
    },
  },
  decide(_view, { repeatability, readings }) {
    if (readings === undefined) return null;
    if (repeatability !== undefined)
      return refuse('one_repeatability', 'Give the repeatability or the readings it comes from, not both.', 'readings');
    if (readings.length < LEAST_READINGS)
      return refuse('too_few_readings', `Weigh it at least ${LEAST_READINGS} times; ten are usual.`, 'readings');
    return null;
  },
  facts: ({ balance, by, certificate, adjusted, linearity, eccentricity, repeatability, readings }) =>
    identities(balance, {
      ...{ calibratedBy: by, certificate, adjusted, linearity, eccentricity },
      repeatability: repeatability ?? readings?.join(' '),
    }),
  say: ({ balance, by, who, certificate, adjusted, readings }, name) =>
    `Calibrated ${name(balance)} ${BY[by]}${after(', ', who)}${after(', paper ', certificate)}, ${ADJUSTED[adjusted]}${readings ? `, one weight ${readings.length} times` : ''}`,
  tell: null,
});
