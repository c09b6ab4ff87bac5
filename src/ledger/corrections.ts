// Entries read as corrected: what was said later of a field stands in for what it said first; the leaf itself is never touched.
import type { Stamp } from '../book/entry.ts';
import type { Fact } from '../book/facts.ts';
import type { Instant } from '../units/dates.ts';
import type { Kept, Leaf } from './leaf.ts';
import { entryType, openData, type Values } from './registry.ts';

/** What was said later of an entry's fields, by field; an absent value takes the field away. */
export type Patches = ReadonlyMap<string, unknown>;

/** The facts of a leaf, read as corrected. */
export function factsOf(leaf: Leaf, patches?: Patches): readonly Fact[] {
  return entryType(leaf.type, leaf.ver).facts(patchedData(leaf, patches), patchedStamp(leaf, patches));
}

/** The leaf's open data, read as corrected. */
export function patchedData(leaf: Leaf, patches?: Patches): Values {
  const data: Record<string, unknown> = { ...openData(leaf) };
  for (const [field, is] of patches ?? []) {
    if (is === undefined) delete data[field];
    else if (field !== 'occurredAt') data[field] = is;
  }
  return data;
}

function patchedStamp(leaf: Leaf, patches?: Patches): Stamp {
  const occurredAt = patches?.get('occurredAt');
  return occurredAt === undefined ? leaf : { ...leaf, occurredAt: occurredAt as Instant };
}

/** Corrections among these leaves, by the leaf hash of their target; the last one of a field holds. Those of sealed fields are left out: their values are not in the leaf. */
export function correctionsIn(leaves: readonly Kept[]): ReadonlyMap<string, Patches> {
  const byTarget = new Map<string, Map<string, unknown>>();
  for (const { leaf } of leaves) {
    if (leaf.sealed) continue;
    for (const one of factsOf(leaf)) {
      if (one.fact !== 'correction') continue;
      const patches = byTarget.get(one.of) ?? new Map<string, unknown>();
      byTarget.set(one.of, patches.set(one.field, one.is));
    }
  }
  return byTarget;
}
