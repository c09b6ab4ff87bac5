// Whose a piece is: looked for by the digits of a phone or a name before anything else is typed; somebody unknown is met on the same form.
import { Whose } from '../../../views/parts/whose.tsx';
import type { Posted } from '../../book/codec.ts';
import { typed } from '../../book/us-words.ts';
import { thingsAt } from '../../queries/things.ts';
import { newRef } from '../form/form.ts';
import type { FormOf } from '../form/form-page.ts';
import { first } from '../form/posted.ts';
import type { Ctx, Web } from '../session/context.ts';

const MATCHES_MAX = 8;

export interface WhoseForm extends Pick<FormOf, 'named' | 'extra' | 'above'> {
  /** What a fresh form begins with: the one match, or what was looked for as a new name or phone. */
  readonly typed: readonly (readonly [string, readonly string[]])[];
}

/** The customers a form offers, and what it begins with; `known` is a customer who is there already. */
export async function whoseForm(web: Web, c: Ctx, action: string, posted: Posted = new Map(), known?: string): Promise<WhoseForm> {
  const q = (posted.get('q')?.[0] ?? c.req.query('q') ?? '').normalize('NFC').trim().slice(0, 60);
  const wanted = known ?? c.req.query('customer') ?? first(posted, 'customer');
  const found = q.length < 2 ? [] : web.directory.search(q, MATCHES_MAX);
  const matches = (await thingsAt(web.store, wanted ? [wanted, ...found] : found)).slice(0, MATCHES_MAX);
  const fresh = first(posted, 'new.customer') || newRef(web, 'customer');
  const above = Whose({ action, q, matches: q === '' ? null : matches.length });
  const looked: WhoseForm['typed'] = q === '' || matches.length > 0 ? [] : [[/\d{3}/.test(q) ? 'phone' : 'name', [q]]];
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
export function settled(posted: Posted): Posted {
  const fresh = first(posted, 'new.customer');
  const isNew = first(posted, 'name').trim() !== '' && ['', fresh].includes(first(posted, 'customer'));
  const customer = isNew ? fresh : first(posted, 'customer') === fresh ? '' : first(posted, 'customer');
  const kept = [...posted].filter(([name]) => isNew || (name !== 'name' && name !== 'phone' && name !== 'email'));
  return new Map([...kept, ['customer', [customer]]]);
}

function knownName(web: Web, customer: string): string {
  const name = web.directory.nameOf(customer);
  return name === undefined ? 'somebody who waits' : typed(name);
}

/** "M. Adeyemi", as a read-back says it: marked as typed. */
export const customerWords = (web: Web, data: Readonly<Record<string, unknown>>): string =>
  data.name === undefined ? knownName(web, String(data.customer ?? '')) : String(data.name);
