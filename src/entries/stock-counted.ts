// All that is left of a stock on the pan: what a count is to stones. Between two counts the metal of the shop is balanced.
import { defineEntry, ref, weight } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { anyStaff } from '../book/may.ts';
import { readingWords } from '../weighing/reading.ts';

export const stockCounted = defineEntry({
  type: 'stock_counted',
  version: 1,
  fields: { stock: ref('stock'), weight: weight() },
  subject: 'stock',
  may: anyStaff,
  form: {
    title: 'Weigh a stock',
    labels: { stock: 'Which stock', weight: 'Weight of all that is left of it' },
    weighs: { weight: 'stock' },
  },
  decide: () => null,
  facts: ({ stock, weight: reading }) => [fact('reading', { of: stock, state: 'counted', reading })],
  say: ({ stock, weight: reading }, name) => `Stock weighed: ${name(stock)}, ${readingWords(reading)}`,
  tell: null,
});
