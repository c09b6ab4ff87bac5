import { thingsAt } from '../../queries/things.js';
/** Words for a thing; people and customers by name, "no longer known" once erased. */
export function wordsFor(web, thing) {
  const { says } = thing;
  switch (thing.kind) {
    case 'person':
    case 'customer':
      return web.directory.nameOf(thing.id) ?? 'no longer known';
    case 'job':
      return says.bag ?? 'job';
    case 'bag':
      return thing.id;
    case 'piece':
      return says.description ?? 'piece';
    case 'stone':
    case 'packet':
      return [says.seat, says.species].filter(Boolean).join(', ') || `${thing.kind} ${thing.id.slice(-3)}`;
    default:
      return says.name ?? thing.id.slice(-4);
  }
}
/** A `name` function for `say`, over all things of the streams given and the shop's. */
export async function namer(web, ids) {
  const known = new Map((await thingsAt(web.store, ids)).map((thing) => [thing.id, wordsFor(web, thing)]));
  return (id) => known.get(id) ?? id;
}
