// The two forms of a balance's own page: the daily check, and ten readings of one weight.
import { ENTRIES } from '../../entries/index.js';
import { formatMassWithUnit, massNg } from '../../units/mass.js';
import { repeatabilityOf } from '../../weighing/worth.js';
export const TEN = 10;
/** A mass with more places than a balance shows, as s and deviations are said. */
export const fine = (ng, unit) => formatMassWithUnit(massNg(Math.round(ng)), unit, unit === 'ct' ? 5 : 4);
/** The daily check of this balance. */
export function checkOf({ id, says }) {
  const { fields, form } = ENTRIES.balance_checked;
  const { balance: _, ...asked } = fields;
  return {
    ...shared(id),
    entry: 'balance_checked',
    fields: asked,
    form: { ...form, title: `Check ${says.name ?? 'the balance'}` },
    action: `/balances/${id}/check`,
    lines: (data) => [{ type: 'balance_checked', data: { balance: id, ...data } }],
  };
}
/** Ten readings of one weight, with s read back before they are written. */
export function tenReadingsOf({ id, says, balance }) {
  const { fields } = ENTRIES.balance_calibrated;
  const unit = balance?.unit ?? 'g';
  return {
    ...shared(id),
    entry: 'balance_calibrated',
    fields: { readings: { ...fields.readings, mayBeMissing: false } },
    form: {
      title: `Ten readings on ${says.name ?? 'the balance'}`,
      labels: { readings: `What it showed each time, in ${unit}` },
      hints: { readings: 'One weight or piece, put on and taken off ten times, zero in between.' },
      button: 'Write the readings',
    },
    action: `/balances/${id}/repeatability`,
    readBack: ({ readings }) => [spreadWords(readings, unit, balance?.ranges[0]?.stepNg)],
    lines: (data) => [{ type: 'balance_calibrated', data: { balance: id, by: 'own', adjusted: 'not adjusted', ...data } }],
  };
}
const shared = (id) => ({ current: '/setup', late: true, next: () => `/balances/${id}` });
function spreadWords(readings, unit, stepNg) {
  const spread = repeatabilityOf(readings.join(' '), unit);
  if (!spread) return `${readings.length} readings, which are too few.`;
  const coarse = stepNg !== undefined && spread.sNg === 0 ? ' It never showed two figures: its spread is below what its step shows.' : '';
  return `${readings.length} readings: ${readings.join(', ')} ${unit}. Repeatability s = ${fine(spread.sNg, unit)}.${coarse}`;
}
