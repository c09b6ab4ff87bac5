// Metal comes into the shop's stock, weighed, with its batch and certificate, and held until its day where a hold applies.
import { defineEntry, observed, optional, refOrBegins, refuse, stated, weight } from '../book/entry.js';
import { fact, flow } from '../book/facts.js';
import { given, identities } from '../book/given.js';
import { holdUntil } from '../book/holds.js';
import { anyStaff } from '../book/may.js';
import { METAL_WORDS } from '../book/metals.js';
import { choice, day, text } from '../book/values.js';
import { after, weightWords } from '../book/words.js';
import { formatCivilDate } from '../units/dates.js';
export const metalReceived = defineEntry({
  type: 'metal_received',
  version: 1,
  fields: {
    stock: refOrBegins('stock'),
    name: optional(stated(text(60))),
    metal: stated(choice(METAL_WORDS)),
    weight: weight(),
    supplier: optional(observed(text(120))),
    batch: optional(observed(text(60))),
    certificate: optional(observed(text(120))),
    holdUntil: optional(stated(day())),
  },
  subject: 'stock',
  may: anyStaff,
  form: {
    title: 'Receive metal',
    labels: {
      stock: 'Into which stock',
      name: 'Name of a new stock',
      metal: 'Metal',
      weight: 'Weight',
      supplier: 'Supplier',
      batch: 'Batch',
      certificate: 'Certificate',
      holdUntil: 'Hold until',
    },
    cautions: ['buyin', 'mark-is-not-an-assay'],
  },
  decide({ stock }, { name, metal }) {
    if (stock && stock.metal !== metal) {
      return refuse('other_metal', 'That stock is of another metal. Choose the stock of this metal, or begin one.', 'metal');
    }
    if (stock && name !== undefined) return refuse('stock_has_a_name', 'That stock has its name. Leave the name out.', 'name');
    if (!stock && name === undefined) return refuse('name_missing', 'Give the new stock a name.', 'name');
    return null;
  },
  facts: ({ stock, name, metal, weight: reading, supplier, batch, certificate, holdUntil: until }) => [
    flow('outside', stock, { kind: 'metal', metal }, reading),
    ...identities(stock, { name, metal, supplier, batch, certificate }),
    ...given(until, (on) => fact('hold', { of: stock, why: holdUntil(on), on: true })),
  ],
  say: ({ metal, weight: reading, supplier, batch, holdUntil: until }) =>
    `Metal received: ${METAL_WORDS[metal]}${weightWords(reading)}${after(' from ', supplier)}${after(', batch ', batch)}${until ? `, on hold until ${formatCivilDate(until)}` : ''}`,
  tell: null,
});
