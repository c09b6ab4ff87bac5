// A balance begins to be used: what it is, its ranges and steps, and until when it is verified for trade.
import { CLASSES, isStep, ngOf, UNITS } from '../book/balances.js';
import { begins, defineEntry, optional, refuse, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { ownerByPassword } from '../book/may.js';
import { choice, day, decimal, group, list, text } from '../book/values.js';
import { after } from '../book/words.js';
import { formatCivilDate } from '../units/dates.js';
import { massNg } from '../units/mass.js';

const inUnit = decimal('the unit of the balance');
export const balancePutInService = defineEntry({
  type: 'balance_put_in_service',
  version: 1,
  fields: {
    balance: begins('balance'),
    name: stated(text(60)),
    number: optional(stated(text(60))),
    class: stated(choice(CLASSES)),
    unit: stated(choice(UNITS)),
    ranges: stated(list(group({ max: { label: 'Largest load', of: inUnit }, step: { label: 'Step d', of: inUnit } }), 2)),
    verificationStep: optional(stated(inUnit)),
    repeatability: optional(stated(inUnit)),
    verifiedUntil: optional(stated(day())),
  },
  subject: 'balance',
  may: ownerByPassword,
  form: {
    title: 'Put a balance in service',
    labels: {
      balance: 'Balance',
      name: 'What you call it',
      number: 'Maker’s number',
      class: 'Class',
      unit: 'Unit it shows',
      ranges: 'Ranges, smallest first',
      verificationStep: 'Verification step e',
      repeatability: 'Repeatability s',
      verifiedUntil: 'Verified for trade until',
    },
    cautions: ['weights-trade'],
  },
  decide(_view, { unit, ranges, verificationStep, repeatability }) {
    const loads = ranges.flatMap(({ max, step }) => [max, step]);
    if ([...loads, verificationStep ?? '1', repeatability ?? '1'].some((text) => ngOf(text, unit) === null)) {
      return refuse('load_too_large', 'No balance in this trade weighs so much. Check the figures and the unit.', 'ranges');
    }
    if (ranges.some(({ step }) => !isStep(step))) {
      return refuse('step_not_1_2_5', 'A step is 1, 2 or 5 in some decimal place, as on the balance’s plate: 0.01, 0.002.', 'ranges');
    }
    if (ranges.some(({ max, step }) => Number(max) <= Number(step)))
      return refuse('load_not_above_step', 'The largest load must be more than one step. Check that they are not swapped.', 'ranges');
    const [low, high] = ranges;
    if (low && high && (Number(high.max) <= Number(low.max) || Number(high.step) <= Number(low.step))) {
      return refuse('ranges_do_not_rise', 'Give the fine range first: the second has a larger load and a larger step.', 'ranges');
    }
    return null;
  },
  facts: ({ balance, name, number, class: itsClass, unit, ranges, verificationStep, repeatability, verifiedUntil }) => {
    const ng = (text) => massNg(ngOf(text, unit) ?? Number.NaN);
    return [
      ...identities(balance, { name, number, class: itsClass, verificationStep, verifiedUntil }),
      fact('balance', {
        of: balance,
        unit,
        ranges: ranges.map(({ max, step }) => ({ maxNg: ng(max), stepNg: ng(step) })),
        ...(repeatability === undefined ? {} : { repeatabilityNg: ng(repeatability) }),
      }),
    ];
  },
  say({ name, class: itsClass, unit, ranges, verifiedUntil }) {
    const spans = ranges.map(({ max, step }) => `${max}\u00a0${unit} by ${step}\u00a0${unit}`).join(' and ');
    const until = after(', verified until ', verifiedUntil && formatCivilDate(verifiedUntil));
    return `Balance in service: ${name}, ${spans}, ${CLASSES[itsClass]}${until}`;
  },
  tell: null,
});
