// A photograph, by the hash of its file; the file itself can be deleted, the hash stays.
import { defineEntry, observed, ref, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { whileOpen } from '../book/next.js';
import { PHOTO_SHOWS } from '../book/photographs.js';
import { choice, file } from '../book/values.js';
export const photoAdded = defineEntry({
  type: 'photo_added',
  version: 1,
  fields: { about: ref('piece', 'stone', 'lot', 'job'), photo: stated(file()), shows: observed(choice(PHOTO_SHOWS)) },
  subject: 'about',
  commutes: true,
  may: anyStaff,
  form: { title: 'Add a photograph', labels: { about: 'Of what', photo: 'Photograph', shows: 'What it shows' }, cautions: ['photos'] },
  decide: () => null,
  facts: ({ about, photo }) => identities(about, { photo }),
  say: ({ about, shows }, name) => `Photograph of ${name(about)}: ${PHOTO_SHOWS[shows]}`,
  tell: null,
  next: whileOpen(1),
});
