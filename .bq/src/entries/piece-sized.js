// A ring is made larger or smaller. Metal that went in or came out has its own entry.
import { defineEntry, observed, ref } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { pieceIsGone, workNotAgreed } from '../book/refusals.js';
import { choice, text } from '../book/values.js';

const METHODS = {
  stretched: 'stretched',
  compressed: 'compressed',
  insert: 'a piece let in',
  cut: 'a piece cut out',
  're-shank': 're-shanked',
  bridge: 'a bar under the head',
};
export const pieceSized = defineEntry({
  type: 'piece_sized',
  version: 1,
  fields: { piece: ref('piece'), method: observed(choice(METHODS)), from: observed(text(20)), to: observed(text(20)) },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Size a ring',
    labels: { piece: 'Ring', method: 'How', from: 'Size before', to: 'Size after' },
    cautions: ['hallmark-addition', 'mark-in-cut'],
  },
  decide: ({ piece }) => pieceIsGone(piece) ?? workNotAgreed(piece),
  facts: ({ piece, method, to }) => identities(piece, { ringSize: to, sizedBy: method }),
  say: ({ method, from, to }) => `Sized from ${from} to ${to}: ${METHODS[method]}`,
  tell: 'as said',
  next: atBench(10),
});
