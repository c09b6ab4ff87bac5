// A note for the shop's eyes: sealed, so that it can be erased with its subject.
import { defineEntry, ref, sealed, stated } from '../book/entry.js';
import { anyStaff } from '../book/may.js';
import { always } from '../book/next.js';
import { lines } from '../book/values.js';
export const noteAdded = defineEntry({
  type: 'note_added',
  version: 1,
  fields: { about: ref('job', 'lot', 'stock', 'piece', 'stone'), text: sealed('shop', stated(lines())) },
  subject: 'about',
  commutes: true,
  may: anyStaff,
  form: { title: 'Add a note', labels: { about: 'About', text: 'Note' } },
  decide: () => null,
  facts: () => [],
  say: ({ about }, name) => `Note about ${name(about)}`,
  tell: null,
  next: always(0),
});
