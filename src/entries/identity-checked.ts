// The customer sees that it is the same piece, or the same stone.
import { defineEntry, observed, optional, ref } from '../book/entry.ts';
import { identities } from '../book/given.ts';
import { anyStaff } from '../book/may.ts';
import { pieceIsGone, thingIsGone } from '../book/refusals.ts';
import { choice, choices } from '../book/values.ts';
import { wordsOf } from '../book/work.ts';

const HOW = {
  loupe: 'at the loupe with the customer',
  girdle: 'girdle number',
  plot: 'plot',
  photo: 'photograph',
  marks: 'marks',
} as const;
const AGREES = { agrees: 'agrees', differs: 'does not agree', unsure: 'cannot be told' } as const;

export const identityChecked = defineEntry({
  type: 'identity_checked',
  version: 1,
  fields: { piece: ref('piece'), stone: optional(ref('stone')), how: observed(choices(HOW)), agrees: observed(choice(AGREES)) },
  subject: 'piece',
  commutes: true,
  may: anyStaff,
  form: {
    title: 'Check identity',
    labels: { piece: 'Piece', stone: 'Which stone', how: 'How', agrees: 'What was seen' },
    cautions: ['tell-insurer-first'],
  },
  decide: ({ piece, stone }) => pieceIsGone(piece) ?? (stone ? thingIsGone(stone, 'stone') : null),
  facts: ({ piece, stone, agrees }) => identities(stone ?? piece, { identity: agrees }),
  say: ({ piece, stone, how, agrees }, name) =>
    `Identity of ${name(stone ?? piece)}${how.length > 0 ? `, ${wordsOf(HOW, how)}` : ''}: ${AGREES[agrees]}`,
  tell: 'as said',
  next: ({ status }) => (status === 'finished' ? 21 : null),
});
