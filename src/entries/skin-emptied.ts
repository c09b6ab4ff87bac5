// A bench skin is emptied into a lot, weighed. What was reckoned to be in it and was not stays in its sum.
import { defineEntry, observed, ref, weight } from '../book/entry.ts';
import { flow } from '../book/facts.ts';
import { anyStaff } from '../book/may.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { lotIsSealed } from '../book/refusals.ts';
import { choice } from '../book/values.ts';
import { readingWords } from '../weighing/reading.ts';

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
