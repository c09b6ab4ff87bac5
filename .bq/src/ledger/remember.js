import { ownerByPassword } from '../book/may.js';
import { moment } from '../book/values.js';
import { jcs } from '../log/canonical.js';
import { factsOf, patchedData } from './corrections.js';
import { entryType } from './registry.js';
/** The state of an entry: its fields with what they say now, after the corrections so far. */
export async function rememberedFields(overlay, target) {
  const entry = entryType(target.leaf.type, target.leaf.ver);
  const now = await saysNow(overlay, target);
  const fields = Object.entries(entry.fields).map(([name, { correctable, sealed, schema, mayBeMissing }]) => ({
    name,
    correctable,
    sealed: audienceOf(sealed),
    says: (value) => same(now[name], value),
    takes: (value) => (value === undefined ? mayBeMissing : schema.safeParse(value).success),
  }));
  const { schema } = moment();
  fields.push({
    name: 'occurredAt',
    correctable: true,
    sealed: null,
    says: (value) => same(now.occurredAt, value),
    takes: (value) => schema.safeParse(value).success && Number(value) <= target.leaf.at,
  });
  return {
    kind: 'entry',
    seq: target.seq,
    at: target.leaf.at,
    type: target.leaf.type,
    by: target.leaf.by,
    may: typeof entry.may === 'function' ? ownerByPassword : entry.may,
    afterHandBack: await isHandedBack(overlay, target),
    fields,
  };
}
const audienceOf = (seal) => (seal === 'as its target' ? null : seal);
const same = (a, b) => (a === undefined || b === undefined ? a === b : jcs(a) === jcs(b));
/** What an entry's fields say now, sealed ones where they could be opened: the last correction of each holds. */
export async function saysNow(overlay, target) {
  const now = { occurredAt: target.leaf.occurredAt, ...target.opened, ...patchedData(target.leaf) };
  const stream = target.leaf.links[0]?.s ?? '';
  for (const later of await overlay.leaves(stream)) {
    for (const one of factsOf(later.leaf)) {
      if (one.fact !== 'correction' || one.of !== target.hash) continue;
      now[one.field] = target.leaf.sealed?.[one.field] === undefined ? one.is : later.opened.is;
    }
  }
  return now;
}
async function isHandedBack(overlay, target) {
  const job = await overlay.thing(target.leaf.links[0]?.s ?? '');
  return job?.kind === 'job' && job.pieces === 0 && (job.status === 'finished' || job.status === 'closed');
}
