// Entries read as corrected: what was said later of a field stands in for what it said first; the leaf itself is never touched.
import type { Stamp } from '../book/entry.ts';
import type { Fact } from '../book/facts.ts';
import type { Instant } from '../units/dates.ts';
import type { Kept, Leaf } from './leaf.ts';
import { entryType, openData, type Values } from './registry.ts';

/** What was said later of an entry's fields, by field; an absent value takes the field away. */
type Patches = ReadonlyMap<string, unknown>;
export type Correction = Extract<Fact, { fact: 'correction' }>;

/** An entry as it reads by now. */
export interface Corrected extends Kept {
  /** The open data, as corrected. */
  readonly data: Values;
  readonly occurredAt: Instant;
  readonly facts: readonly Fact[];
  /** Another entry says otherwise of something that it says openly. */
  readonly isCorrected: boolean;
  /** The correction that this entry is; null for every other. */
  readonly corrects: Correction | null;
}

/**
 * These entries in their order, each read as the corrections among them have it: the last one of a field holds. `also` stands in as one more,
 * the last. Corrections of sealed fields are left out: their values are not in the leaf.
 */
export function readCorrected(kept: readonly Kept[], also?: Correction): readonly Corrected[] {
  const first = kept.map((one) => ({ one, facts: factsOf(one.leaf) }));
  const byTarget = new Map<string, Map<string, unknown>>();
  const note = ({ of, field, is }: Correction) => byTarget.set(of, (byTarget.get(of) ?? new Map<string, unknown>()).set(field, is));
  for (const { one, facts } of first) if (!one.leaf.sealed) for (const fact of facts) if (fact.fact === 'correction') note(fact);
  if (also) note(also);
  return first.map(({ one, facts }) => {
    const patches = byTarget.get(one.hash);
    const corrects = facts.find((fact) => fact.fact === 'correction') ?? null;
    if (!patches) return { ...one, data: openData(one.leaf), occurredAt: one.leaf.occurredAt, facts, isCorrected: false, corrects };
    const data = patchedData(one.leaf, patches);
    const occurredAt = (patches.get('occurredAt') ?? one.leaf.occurredAt) as Instant;
    return { ...one, data, occurredAt, facts: factsSaid(one.leaf, data, { ...one.leaf, occurredAt }), isCorrected: true, corrects };
  });
}

/** The facts of a leaf as it was written. */
export const factsOf = (leaf: Leaf): readonly Fact[] => factsSaid(leaf, openData(leaf), leaf);

const factsSaid = ({ type, ver }: Leaf, data: Values, stamp: Stamp): readonly Fact[] => entryType(type, ver).facts(data, stamp);

function patchedData(leaf: Leaf, patches: Patches): Values {
  const data: Record<string, unknown> = { ...openData(leaf) };
  for (const [field, is] of patches) {
    if (is === undefined) delete data[field];
    else if (field !== 'occurredAt') data[field] = is;
  }
  return data;
}
