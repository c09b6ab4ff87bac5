/** An empty overlay on `below`; dropping it leaves no trace. */
export function overlayOn(below) {
  const things = new Map();
  const heads = new Map();
  const written = [];
  return {
    things,
    heads,
    written,
    thing: async (id) => things.get(id) ?? below.thing(id),
    head: async (stream) => heads.get(stream) ?? below.head(stream),
    entry: async (hash) => written.find((kept) => kept.hash === hash) ?? below.entry(hash),
    openPieces: () => below.openPieces(),
    leaves: async (stream) => [...(await below.leaves(stream)), ...written.filter(({ leaf }) => leaf.links.some(({ s }) => s === stream))],
  };
}
/** Lays an accepted fork's changes onto its parent. */
export function accept(parent, fork) {
  for (const [id, thing] of fork.things) parent.things.set(id, thing);
  for (const [stream, head] of fork.heads) parent.heads.set(stream, head);
  parent.written.push(...fork.written);
}
