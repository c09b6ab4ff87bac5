// Somebody no longer works here: from now on they open and write nothing.
import { defineEntry, ref, refuse } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { ownerByPassword } from '../book/may.ts';

export const personLeft = defineEntry({
  type: 'person_left',
  version: 1,
  fields: { person: ref('person') },
  subject: 'person',
  may: ownerByPassword,
  form: { title: 'Somebody leaves', labels: { person: 'Who' }, hints: { person: 'Their sessions end at once. What they wrote stays.' } },
  decide({ person }, data, { by }) {
    if (person.role === 'left') return refuse('has_left', 'They have left already. Choose somebody who works here.', 'person');
    if (data.person === by) return refuse('own_leaving', 'Let another owner write that you leave, so that the shop keeps one.', 'person');
    return null;
  },
  facts: ({ person }) => [fact('role', { of: person, role: 'left' })],
  say: ({ person }, name) => `${name(person)} left`,
  tell: null,
});
