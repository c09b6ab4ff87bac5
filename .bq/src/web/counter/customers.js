// Whose a piece is: looked for by the digits of a phone or a name before anything else is typed; somebody unknown is met on the same form.
import { Whose } from '../../../views/parts/whose.js';
import { thingsAt } from '../../queries/things.js';
import { newRef } from '../form/form.js';
import { first } from '../form/posted.js';

const MATCHES_MAX = 8;
/** The customers a form offers, and what it begins with; `known` is a customer who is there already. */
export async function whoseForm(web, c, action, posted = new Map(), known) {
  const q = (posted.get('q')?.[0] ?? c.req.query('q') ?? '').normalize('NFC').trim().slice(0, 60);
  const wanted = known ?? c.req.query('customer') ?? first(posted, 'customer');
  const found = q.length < 2 ? [] : web.directory.search(q, MATCHES_MAX);
  const matches = (await thingsAt(web.store, wanted ? [wanted, ...found] : found)).slice(0, MATCHES_MAX);
  const fresh = first(posted, 'new.customer') || newRef(web, 'customer');
  const above = Whose({ action, q, matches: q === '' ? null : matches.length });
  const looked = q === '' || matches.length > 0 ? [] : [[/\d{3}/.test(q) ? 'phone' : 'name', [q]]];
  if (matches.length === 0) {
    return {
      named: { customer: [] },
      extra: [
        ['q', q],
        ['customer', fresh],
        ['new.customer', fresh],
      ],
      above,
      typed: looked,
    };
  }
  const chosen = known ?? (matches.length === 1 ? matches[0]?.id : undefined);
  return { named: { customer: matches }, extra: [['q', q]], above, typed: chosen === undefined ? [] : [['customer', [chosen]]] };
}
/** What was posted, with a new name only for a new customer, and no customer where nobody was named. */
export function settled(posted) {
  const fresh = first(posted, 'new.customer');
  const isNew = first(posted, 'name').trim() !== '' && ['', fresh].includes(first(posted, 'customer'));
  const customer = isNew ? fresh : first(posted, 'customer') === fresh ? '' : first(posted, 'customer');
  const kept = [...posted].filter(([name]) => isNew || (name !== 'name' && name !== 'phone' && name !== 'email'));
  return new Map([...kept, ['customer', [customer]]]);
}
/** "M. Adeyemi", as a read-back says it. */
export const customerWords = (web, data) => String(data.name ?? web.directory.nameOf(String(data.customer ?? '')) ?? 'somebody who waits');
