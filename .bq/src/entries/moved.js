// A thing is put somewhere else in the shop.
import { defineEntry, ref } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { whileOpen } from '../book/next.js';
import { thingIsGone } from '../book/refusals.js';
export const moved = defineEntry({
  type: 'moved',
  version: 1,
  fields: { of: ref('job', 'piece', 'packet', 'stone', 'lot'), to: ref('place') },
  subject: 'of',
  may: anyStaff,
  form: { title: 'Move', labels: { of: 'What', to: 'Where to' }, cautions: ['insurance-limits'] },
  decide: ({ of }) => thingIsGone(of),
  facts: ({ of, to }) => [fact('place', { of, at: to })],
  say: ({ of, to }, name) => `Moved: ${name(of)} to ${name(to)}`,
  tell: null,
  next: whileOpen(3),
});
