// What lies in a bench skin, weighed where it is. A skin begins with its first lemel, for one bench and one metal.
import { defineEntry, optional, refOrBegins, refuse, stated, weight } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { METAL_WORDS } from '../book/metals.js';
import { choice, text } from '../book/values.js';
import { readingWords } from '../weighing/reading.js';
export const lemelGathered = defineEntry({
  type: 'lemel_gathered',
  version: 1,
  fields: {
    skin: refOrBegins('skin'),
    bench: optional(stated(text(60))),
    metal: optional(stated(choice(METAL_WORDS))),
    weight: weight(),
  },
  subject: 'skin',
  commutes: true,
  may: anyStaff,
  form: {
    title: 'Gather lemel',
    labels: { skin: 'Which skin', bench: 'Bench of a new skin', metal: 'Metal of a new skin', weight: 'Weight of what is in it' },
    cautions: ['metal-contamination', 'dust'],
  },
  decide({ skin }, { bench, metal }) {
    if (skin && (bench !== undefined || metal !== undefined)) {
      return refuse('skin_is_known', 'That skin has its bench and metal. Leave them out.', bench === undefined ? 'metal' : 'bench');
    }
    if (!skin && bench === undefined) return refuse('bench_missing', 'Say whose bench the new skin is under.', 'bench');
    if (!skin && metal === undefined) return refuse('metal_missing', 'Say which metal the new skin is for; mixed is a metal too.', 'metal');
    return null;
  },
  facts: ({ skin, bench, metal, weight: reading }) => [
    ...identities(skin, { name: bench, metal }),
    fact('reading', { of: skin, state: 'gathered', reading }),
  ],
  say: ({ skin, bench, weight: reading }, name) => `Lemel gathered: ${bench ?? name(skin)}, ${readingWords(reading)}`,
  tell: null,
});
