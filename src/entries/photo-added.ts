// A photograph, by the hash of its file; the file itself can be deleted, the hash stays.
import { defineEntry, observed, ref, stated } from '../book/entry.ts';
import { identities } from '../book/given.ts';
import { choice, file } from '../book/values.ts';

export const PHOTO_SHOWS = {
  pan: 'on the pan, with the reading',
  whole: 'the whole',
  marks: 'marks',
  damage: 'damage or wear',
  stones: 'stones',
  work: 'work being done',
  packing: 'packing',
  paper: 'a signed paper',
} as const;

export const photoAdded = defineEntry({
  type: 'photo_added',
  version: 1,
  fields: { about: ref('piece', 'stone', 'lot', 'job'), photo: stated(file()), shows: observed(choice(PHOTO_SHOWS)) },
  subject: 'about',
  commutes: true,
  form: { title: 'Add a photograph', labels: { about: 'Of what', photo: 'Photograph', shows: 'What it shows' }, cautions: ['photos'] },
  decide: () => null,
  facts: ({ about, photo }) => identities(about, { photo }),
  say: ({ about, shows }, name) => `Photograph of ${name(about)}: ${PHOTO_SHOWS[shows]}`,
});
