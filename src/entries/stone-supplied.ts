// A stone that was not in the piece when it came: whose it is, what it is, and when the customer was told.
import { begins, defineEntry, observed, optional, ref, refuse, stated, weight } from '../book/entry.ts';
import { fact, flow } from '../book/facts.ts';
import { identities } from '../book/given.ts';
import { anyStaff } from '../book/may.ts';
import { atBench } from '../book/next.ts';
import { pieceIsGone, workNotAgreed } from '../book/refusals.ts';
import { SPECIES } from '../book/stone-words.ts';
import { choice, day, text } from '../book/values.ts';
import { after, weightWords } from '../book/words.ts';
import { formatCivilDate } from '../units/dates.ts';

const WHOSE = { customer: 'the customer’s own', shop: 'the shop’s', supplier: 'a supplier’s, on approval' } as const;
const ORIGINS = {
  natural: 'natural',
  lab: 'synthetic (lab-grown)',
  treated: 'natural, treated',
  imitation: 'imitation',
  unknown: 'origin not known',
} as const;

export const stoneSupplied = defineEntry({
  type: 'stone_supplied',
  version: 1,
  fields: {
    piece: ref('piece'),
    stone: begins('stone'),
    species: observed(choice(SPECIES)),
    origin: observed(choice(ORIGINS)),
    treatment: optional(observed(text(120))),
    whose: stated(choice(WHOSE)),
    told: optional(stated(day())),
    weight: optional(weight()),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Supply a stone',
    labels: {
      piece: 'For which piece',
      stone: 'Stone',
      species: 'What is it?',
      origin: 'Natural or not',
      treatment: 'Treatment',
      whose: 'Whose is it?',
      told: 'Customer told on',
      weight: 'Weight, loose',
    },
    cautions: ['lab-grown-told', 'us-claims'],
  },
  decide({ piece }, { whose, told }, { today }) {
    const refused = pieceIsGone(piece) ?? workNotAgreed(piece);
    if (refused) return refused;
    if (told === undefined) {
      const say = 'Tell the customer what the stone is, then give the day they were told.';
      return whose === 'customer' ? null : refuse('customer_not_told', say, 'told');
    }
    return told > today ? refuse('told_to_come', 'That day is still to come. Give the day they were told.', 'told') : null;
  },
  facts: ({ stone, species, origin, treatment, whose, weight: reading }) => [
    flow('outside', stone, { kind: 'stones', count: 1 }, reading),
    fact('title', { of: stone, part: 'whole', owner: whose }),
    ...identities(stone, { species, origin, treatment }),
  ],
  say: ({ species, origin, treatment, whose, told, weight: reading }) =>
    `Stone supplied: ${SPECIES[species]}, ${ORIGINS[origin]}${after(', ', treatment)}, ${WHOSE[whose]}${weightWords(reading)}${
      told ? `; customer told ${formatCivilDate(told)}` : ''
    }`,
  tell: 'as said',
  next: atBench(11),
});
