import { thingsOfKind } from '../../queries/things.js';
import { parametersOf } from '../../weighing/worth.js';
/** All things of a kind of which a shop has few, newest last. */
export const thingsOf = ({ store }, kind) => thingsOfKind(store, kind);
/** How the shop works, from the ledger; null before it has begun. */
export async function policyOf(web) {
  const [shop] = await thingsOf(web, 'shop');
  if (!shop) return null;
  const balances = (await thingsOf(web, 'balance')).filter((one) => one.balance !== undefined);
  const tares = Object.entries(shop.says).filter(([name]) => name.startsWith('tare:'));
  return {
    shop: shop.id,
    name: shop.says.name ?? '',
    zone: shop.says.zone ?? 'UTC',
    country: shop.says.country ?? 'other',
    currency: shop.says.currency ?? 'GBP',
    alone: shop.says.staffing !== 'two',
    words: shop.says.words === 'us' ? 'us' : 'uk',
    balances: new Map(balances.flatMap(({ id, balance }) => (balance ? [[id, balance]] : []))),
    parameters: new Map(balances.flatMap(({ id, balance, says }) => (balance ? [[id, parametersOf(id, balance, says)]] : []))),
    balanceNames: new Map(balances.map(({ id, says }) => [id, says.name ?? id])),
    tares: new Map(tares.map(([name, ng]) => [name.slice(5), Number(ng)])),
  };
}
/** The person who asks; a route that reaches this without one is a bug of the route table. */
export function whoAsks(c) {
  const person = c.get('person');
  if (!person) throw new Error(`${c.req.path} is served without a person`);
  return person;
}
/** The shop's policy; a route that reaches this before the ledger has begun is a bug of the route table. */
export function policyFor(c) {
  const policy = c.get('policy');
  if (!policy) throw new Error(`${c.req.path} is served before the ledger has begun`);
  return policy;
}
/** Whoever works here writes; an auditor reads. */
export const mayWrite = ({ role }) => role !== 'auditor';
