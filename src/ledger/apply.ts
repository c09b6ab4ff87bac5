// Leaf → things, the one way: live, import, rebuild and mirror all go through here.
import { type RefKind, STREAM_KINDS } from '../units/ids.ts';
import { type Corrected, factsOf, readCorrected } from './corrections.ts';
import { foldFacts, type Touched } from './fold.ts';
import type { Kept, Leaf } from './leaf.ts';
import type { Overlay } from './overlay.ts';
import { entryType } from './registry.ts';
import { newThing, type Thing } from './thing.ts';

/** Folds a leaf's facts into the overlay's things and moves the heads of its streams. */
export async function applyLeaf(overlay: Overlay, kept: Kept): Promise<void> {
  const { leaf, seq, hash } = kept;
  const before = new Map<string, Thing | undefined>();
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
async function refold(overlay: Overlay, stream: string): Promise<void> {
  const leaves = await overlay.leaves(stream);
  for (const thing of (await foldStream(overlay, stream, readCorrected(leaves))).values()) overlay.things.set(thing.id, thing);
}

/** The things of a stream after these of its entries; `look` sees the things so far before each. */
export async function foldStream(
  overlay: Overlay,
  stream: string,
  entries: readonly Corrected[],
  look?: (entry: Corrected, things: ReadonlyMap<string, Thing>) => Promise<void>,
): Promise<ReadonlyMap<string, Thing>> {
  const blank = new Map<string, Thing>();
  const touched: Touched = new Map();
  for (const entry of entries) {
    const { seq, leaf, facts } = entry;
    await look?.(entry, touched);
    for (const [id, thing] of await touchedBy(leaf, async (id) => touched.get(id) ?? blanked(await overlay.thing(id), blank)))
      touched.set(id, thing);
    foldFacts(touched, seq, facts);
  }
  return new Map([...touched].filter(([, thing]) => thing.stream === stream));
}

function blanked(thing: Thing | undefined, blank: Map<string, Thing>): Thing | undefined {
  if (thing && !blank.has(thing.id)) blank.set(thing.id, newThing(thing.id, thing.kind, thing.stream, thing.begun));
  return thing && blank.get(thing.id);
}

/** The things a leaf names or begins, and the jobs they belong to. */
async function touchedBy(leaf: Leaf, known: (id: string) => Promise<Thing | undefined>): Promise<Touched> {
  const touched: Touched = new Map();
  const subject = leaf.links[0].s;
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
export const streamBegun = (kind: RefKind, id: string, subject: string): string =>
  STREAM_KINDS.some((one) => one === kind) ? id : subject;
