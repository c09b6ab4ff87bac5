// A loose stone, or the stones of a packet, on the pan.
import { defineEntry, observed, ref, refuse, weight } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { thingIsGone } from '../book/refusals.js';
import { choice } from '../book/values.js';
import { readingWords } from '../weighing/reading.js';

const STATES = {
  loose: 'loose and clean',
  'as taken out': 'as taken out',
  'with glue': 'with glue, wax or dirt',
  wet: 'not sure it is dry',
};
export const stoneWeighed = defineEntry({
  type: 'stone_weighed',
  version: 1,
  fields: { of: ref('stone', 'packet'), state: observed(choice(STATES)), weight: weight() },
  subject: 'of',
  may: anyStaff,
  form: {
    title: 'Weigh stones',
    labels: { of: 'Stone or packet', state: 'In what state', weight: 'Weight' },
    weighs: { weight: 'of' },
    cautions: ['stone-may-change', 'wet-or-hollow'],
  },
  decide({ of }) {
    const gone = thingIsGone(of);
    if (gone) return gone;
    if (of.kind === 'stone' && !of.loose) {
      return refuse('stone_not_loose', 'That stone is set. Take it out first, or weigh the whole piece.', 'of');
    }
    return null;
  },
  facts: ({ of, state, weight: reading }) => [fact('reading', { of, state, reading })],
  say: ({ of, state, weight: reading }, name) => `Weighed: ${name(of)}, ${STATES[state]}, ${readingWords(reading)}`,
  tell: 'as said',
  next: atBench(7),
});
