// A certified weight on the pan, and what the balance showed. Whether that is good enough is reckoned, never stored.
import { defineEntry, observed, optional, ref, refuse, stated, weight } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { decimal, text } from '../book/values.js';
import { readingWords } from '../weighing/reading.js';
export const balanceChecked = defineEntry({
  type: 'balance_checked',
  version: 1,
  fields: {
    balance: ref('balance'),
    nominal: stated(text(20)),
    certifiedG: stated(decimal('g')),
    certificate: optional(stated(text(60))),
    shown: weight(),
    position: optional(observed(text(40))),
  },
  subject: 'balance',
  may: anyStaff,
  form: {
    title: 'Check a balance',
    labels: {
      balance: 'Balance',
      nominal: 'Which weight, as marked',
      certifiedG: 'What its paper says, in grams',
      certificate: 'Number of the paper',
      shown: 'What the balance showed',
      position: 'Where on the pan, unless the middle',
    },
    cautions: ['weights-trade'],
  },
  decide: ({ balance }, { shown }) =>
    shown.balance === balance.id
      ? null
      : refuse('other_balance', 'That was read on another balance. Choose the balance that is being checked.', 'shown'),
  facts: ({ balance, certifiedG, shown, position }) =>
    identities(balance, { checkCertifiedG: certifiedG, checkShown: shown.text, checkShownUnit: shown.unit, checkPosition: position }),
  say: ({ balance, nominal, certifiedG, shown }, name) =>
    `Checked ${name(balance)}: weight ${nominal}, ${certifiedG}\u00a0g on its paper, showed ${readingWords(shown)}`,
  tell: null,
});
