// Leaf → things, the one way: live, import, rebuild and mirror all go through here.
import { STREAM_KINDS } from '../units/ids.js';
import { correctionsIn, factsOf } from './corrections.js';
import { foldFacts } from './fold.js';
import { entryType } from './registry.js';
import { newThing } from './thing.js';
/** Folds a leaf's facts into the overlay's things and moves the heads of its streams. */
export async function applyLeaf(overlay, kept) {
  const { leaf, seq, hash } = kept;
  const before = new Map();
  const touched = await touchedBy(leaf, async (id) => {
    before.set(id, await overlay.thing(id));
    return before.get(id);
  });
  const facts = factsOf(leaf);
  foldFacts(touched, seq, facts);
  for (const [id, thing] of touched) if (thing !== before.get(id)) overlay.things.set(id, thing);
  for (const { s, n } of leaf.links) overlay.heads.set(s, { size: n + 1, hash });
  overlay.written.push(kept);
  // What is sealed never reaches facts, so its correction changes no thing.
  if (facts.some(({ fact }) => fact === 'correction') && !leaf.sealed) for (const { s } of leaf.links) await refold(overlay, s);
}
/**
 * Folds all things of a stream anew from its leaves, each read as corrected, so that
 * fold(log + correction) = fold(log with that entry patched). Things of other streams are left as they are.
 */
async function refold(overlay, stream) {
  const leaves = await overlay.leaves(stream);
  const corrections = correctionsIn(leaves);
  const blank = new Map();
  const touched = new Map();
  for (const { seq, hash, leaf } of leaves) {
    for (const [id, thing] of await touchedBy(leaf, async (id) => touched.get(id) ?? blanked(await overlay.thing(id), blank)))
      touched.set(id, thing);
    foldFacts(touched, seq, factsOf(leaf, corrections.get(hash)));
  }
  for (const thing of touched.values()) if (thing.stream === stream) overlay.things.set(thing.id, thing);
}
function blanked(thing, blank) {
  if (thing && !blank.has(thing.id)) blank.set(thing.id, newThing(thing.id, thing.kind, thing.stream, thing.begun));
  return thing && blank.get(thing.id);
}
/** The things a leaf names or begins, and the jobs they belong to. */
async function touchedBy(leaf, known) {
  const touched = new Map();
  const subject = leaf.links[0]?.s ?? '';
  for (const [name, { role, kinds }] of Object.entries(entryType(leaf.type, leaf.ver).fields)) {
    const id = leaf.data[name];
    const kind = kinds[0];
    if (role === 'tells' || typeof id !== 'string' || !kind || kind === 'entry') continue;
    touched.set(id, (await known(id)) ?? newThing(id, kind, streamBegun(kind, id, subject), leaf.seq));
  }
  for (const { stream } of [...touched.values()]) {
    const owner = touched.get(stream) ?? (await known(stream));
    if (owner) touched.set(stream, owner);
  }
  return touched;
}
/** The stream of a thing that begins: its own, or its subject's. */
export const streamBegun = (kind, id, subject) => (STREAM_KINDS.some((one) => one === kind) ? id : subject);
