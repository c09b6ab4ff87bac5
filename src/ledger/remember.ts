// An entry already written, as a correction sees it: what each field says now, and whether it takes a value.
import type { Seal } from '../book/entry.ts';
import type { Remembered, States } from '../book/holding.ts';
import { ownerByPassword } from '../book/may.ts';
import { moment } from '../book/values.ts';
import { jcs } from '../log/canonical.ts';
import { factsOf } from './corrections.ts';
import type { Kept } from './leaf.ts';
import type { Shelf } from './overlay.ts';
import { entryType, openData } from './registry.ts';

/** The state of an entry: its fields with what they say now, after the corrections so far. */
export async function rememberedFields(overlay: Shelf, target: Kept): Promise<States['entry']> {
  const entry = entryType(target.leaf.type, target.leaf.ver);
  const now = await saysNow(overlay, target);
  const fields: Remembered[] = Object.entries(entry.fields).map(([name, { correctable, sealed, schema, mayBeMissing }]) => ({
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

const audienceOf = (seal: Seal | null) => (seal === 'as its target' ? null : seal);
const same = (a: unknown, b: unknown) => (a === undefined || b === undefined ? a === b : jcs(a) === jcs(b));

/** What an entry's fields say now, sealed ones where they could be opened: the last correction of each holds. */
export async function saysNow(overlay: Pick<Shelf, 'leaves'>, target: Kept): Promise<Readonly<Record<string, unknown>>> {
  const now: Record<string, unknown> = { occurredAt: target.leaf.occurredAt, ...target.opened, ...openData(target.leaf) };
  const stream = target.leaf.links[0].s;
  for (const later of await overlay.leaves(stream)) {
    for (const one of factsOf(later.leaf)) {
      if (one.fact !== 'correction' || one.of !== target.hash) continue;
      now[one.field] = target.leaf.sealed?.[one.field] === undefined ? one.is : later.opened.is;
    }
  }
  return now;
}

async function isHandedBack(overlay: Shelf, target: Kept): Promise<boolean> {
  const job = await overlay.thing(target.leaf.links[0].s);
  return job?.kind === 'job' && job.pieces === 0 && (job.status === 'finished' || job.status === 'closed');
}
