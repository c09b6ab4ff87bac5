// A tray, tin or box that holds many things: whoever moves it moves all that is in it.
import { begins, defineEntry, optional, ref, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { choice, text } from '../book/values.js';

const CONTAINER_KINDS = { tray: 'tray', box: 'box', tin: 'tin', bag: 'bag', drawer: 'drawer', other: 'other' };
export const containerNamed = defineEntry({
  type: 'container_named',
  version: 1,
  fields: {
    container: begins('place'),
    name: stated(text(60)),
    kind: stated(choice(CONTAINER_KINDS)),
    inside: optional(ref('place')),
  },
  subject: 'container',
  may: anyStaff,
  form: {
    title: 'Name a tray or box',
    labels: { container: 'Tray or box', name: 'Name', kind: 'What kind', inside: 'Where it is kept' },
  },
  decide: () => null,
  facts: ({ container, name, kind, inside }) => identities(container, { name, kind, inside }),
  say: ({ name: called, kind, inside }, name) => `Named: ${called} (${CONTAINER_KINDS[kind]})${inside ? `, kept in ${name(inside)}` : ''}`,
  tell: null,
});
