// What a tag, bag, dish or wire weighs, so that it can be taken off a weight that was read with it on the pan.
import { defineEntry, observed, ref, refuse, stated, weight } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { text } from '../book/values.js';
import { netNg, readingWords } from '../weighing/reading.js';
export const tareListed = defineEntry({
  type: 'tare_listed',
  version: 1,
  fields: { shop: ref('shop'), thing: stated(text(60)), weight: weight(), from: observed(text(120)) },
  subject: 'shop',
  may: anyStaff,
  form: {
    title: 'List a tare',
    labels: { shop: 'Shop', thing: 'What is it?', weight: 'Weight', from: 'How it was found' },
    hints: { from: 'For example: ten weighed together, or this one weighed.' },
  },
  decide: (_view, { weight: reading }) =>
    netNg(reading) === null ? refuse('tare_is_gross', 'Weigh it alone: something of unknown weight was on the pan too.', 'weight') : null,
  facts: ({ shop, thing, weight: reading }) => [
    fact('policy', { of: shop, name: `tare:${thing}`, says: `${netNg(reading) ?? reading.ng}` }),
  ],
  say: ({ thing, weight: reading }) => `Tare listed: ${thing}, ${readingWords(reading)}`,
  tell: null,
});
