// Somebody joins the shop, with what they may do.
import { begins, defineEntry, sealed, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { ownerByPassword } from '../book/may.js';
import { choice, text } from '../book/values.js';

const ROLES = { owner: 'owner', bench: 'bench', counter: 'counter', auditor: 'auditor' };
export const personJoined = defineEntry({
  type: 'person_joined',
  version: 1,
  fields: {
    person: begins('person'),
    role: stated(choice(ROLES)),
    name: sealed('shop', stated(text(80))),
  },
  subject: 'person',
  may: ownerByPassword,
  form: { title: 'Somebody joins', labels: { person: 'Person', role: 'What they do here', name: 'Name' } },
  decide: () => null,
  facts: ({ person, role }) => [fact('role', { of: person, role })],
  say: ({ person, role }, name) => `${name(person)} joined: ${ROLES[role]}`,
  tell: null,
});
