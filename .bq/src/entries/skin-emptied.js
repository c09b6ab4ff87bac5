// A bench skin is emptied into a lot, weighed. What was reckoned to be in it and was not stays in its sum.
import { defineEntry, observed, ref, weight } from '../book/entry.js';
import { flow } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { METAL_WORDS } from '../book/metals.js';
import { lotIsSealed } from '../book/refusals.js';
import { choice } from '../book/values.js';
import { readingWords } from '../weighing/reading.js';
export const skinEmptied = defineEntry({
  type: 'skin_emptied',
  version: 1,
  fields: { skin: ref('skin'), lot: ref('lot'), metal: observed(choice(METAL_WORDS)), weight: weight() },
  subject: 'skin',
  may: anyStaff,
  form: {
    title: 'Empty a skin',
    labels: { skin: 'Which skin', lot: 'Into the scrap lot', metal: 'Metal', weight: 'Weight of what was emptied' },
    cautions: ['metal-contamination', 'dust'],
  },
  decide: ({ lot }) => lotIsSealed(lot),
  facts: ({ skin, lot, metal, weight: reading }) => [flow(skin, lot, { kind: 'metal', metal }, reading)],
  say: ({ skin, lot, weight: reading }, name) => `Emptied ${name(skin)} into ${name(lot)}: ${readingWords(reading)}`,
  tell: null,
});
