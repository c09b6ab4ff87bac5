// A scrap lot begins, for one metal.
import { begins, defineEntry, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { METAL_WORDS } from '../book/metals.js';
import { choice, text } from '../book/values.js';
export const lotOpened = defineEntry({
  type: 'lot_opened',
  version: 1,
  fields: { lot: begins('lot'), name: stated(text(60)), metal: stated(choice(METAL_WORDS)) },
  subject: 'lot',
  may: anyStaff,
  form: { title: 'Open a scrap lot', labels: { lot: 'Lot', name: 'Name', metal: 'Metal' }, cautions: ['metal-contamination'] },
  decide: () => null,
  facts: ({ lot, name, metal }) => [fact('state', { of: lot, is: 'open' }), ...identities(lot, { name, metal })],
  say: ({ name, metal }) => `Scrap lot opened: ${name}, ${METAL_WORDS[metal]}`,
  tell: null,
});
