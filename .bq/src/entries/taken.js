// Somebody in the shop takes a thing and answers for it from now on; inside the premises the taker's word is enough.
import { defineEntry, optional, ref } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { thingIsGone } from '../book/refusals.js';
export const taken = defineEntry({
  type: 'taken',
  version: 1,
  fields: { of: ref('job', 'piece', 'stone', 'packet'), from: optional(ref('place')) },
  subject: 'of',
  may: anyStaff,
  form: { title: 'Take', labels: { of: 'What', from: 'Where it was' }, button: 'I have it' },
  decide: ({ of }) => thingIsGone(of),
  facts: ({ of }, { by }) => [fact('custody', { of, is: 'with', holder: by })],
  say: ({ of, from }, name) => `Taken: ${name(of)}${from ? ` from ${name(from)}` : ''}`,
  tell: () => 'Taken in hand',
  next: ({ status, pieces, isMine }) => (status === 'agreed' ? (isMine ? 20 : 1) : status === 'open' && pieces > 0 ? 25 : null),
});
