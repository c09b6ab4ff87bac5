import { entryType, openData } from './registry.js';
/** The facts of a leaf, read as corrected. */
export function factsOf(leaf, patches) {
  return entryType(leaf.type, leaf.ver).facts(patchedData(leaf, patches), patchedStamp(leaf, patches));
}
/** The leaf's open data, read as corrected. */
export function patchedData(leaf, patches) {
  const data = { ...openData(leaf) };
  for (const [field, is] of patches ?? []) {
    if (is === undefined) delete data[field];
    else if (field !== 'occurredAt') data[field] = is;
  }
  return data;
}
function patchedStamp(leaf, patches) {
  const occurredAt = patches?.get('occurredAt');
  return occurredAt === undefined ? leaf : { ...leaf, occurredAt: occurredAt };
}
/** Corrections among these leaves, by the leaf hash of their target; the last one of a field holds. Those of sealed fields are left out: their values are not in the leaf. */
export function correctionsIn(leaves) {
  const byTarget = new Map();
  for (const { leaf } of leaves) {
    if (leaf.sealed) continue;
    for (const one of factsOf(leaf)) {
      if (one.fact !== 'correction') continue;
      const patches = byTarget.get(one.of) ?? new Map();
      byTarget.set(one.of, patches.set(one.field, one.is));
    }
  }
  return byTarget;
}
