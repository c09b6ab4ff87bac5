// A balance was calibrated; readings from now on belong to this calibration.
import { defineEntry, observed, optional, ref, stated } from '../book/entry.ts';
import { identities } from '../book/given.ts';
import { choice, decimal, text } from '../book/values.ts';
import { after } from '../book/words.ts';

const BY = { own: 'with our own weights', maker: 'by the maker or dealer', laboratory: 'by a calibration laboratory' } as const;
const ADJUSTED = { adjusted: 'adjusted', 'not adjusted': 'not adjusted' } as const;
const inUnit = decimal('the unit of the balance');

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
  },
  subject: 'balance',
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
    },
  },
  decide: () => null,
  facts: ({ balance, by, certificate, adjusted, linearity, eccentricity }) =>
    identities(balance, { calibratedBy: by, certificate, adjusted, linearity, eccentricity }),
  say: ({ balance, by, who, certificate, adjusted }, name) =>
    `Calibrated ${name(balance)} ${BY[by]}${after(', ', who)}${after(', paper ', certificate)}, ${ADJUSTED[adjusted]}`,
});
