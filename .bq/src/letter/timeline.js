// What was done to a customer's piece and when, in words for the customer: what each entry's own file tells of it, and nothing of the others.
import { correctionsIn, factsOf, patchedData } from '../ledger/corrections.js';
import { entryType, readingsIn } from '../ledger/registry.js';
import { readingWords } from '../weighing/reading.js';
/** The moments of a job in the order they happened; `nameOf` gives the words for its own pieces and stones, and must name nobody. */
export function timelineOf(kept, nameOf) {
  const corrections = correctionsIn(kept);
  const targets = new Map(
    kept.flatMap(({ leaf, seq }) => factsOf(leaf).flatMap((one) => (one.fact === 'correction' ? [[seq, String(one.of)]] : []))),
  );
  const seqOf = new Map(kept.map(({ hash, seq }) => [hash, seq]));
  const hidden = new Set(kept.filter(({ leaf }) => entryType(leaf.type).tell === null).map(({ hash }) => hash));
  return kept
    .flatMap(({ leaf, seq, hash }) => {
      const entry = entryType(leaf.type, leaf.ver);
      const { tell } = entry;
      const target = targets.get(seq);
      if (tell === null || (target !== undefined && hidden.has(target))) return [];
      const patches = corrections.get(hash);
      const data = patchedData(leaf, patches);
      return [
        {
          ...{ seq, by: leaf.by, atMs: Number(patches?.get('occurredAt') ?? leaf.occurredAt) },
          ...wordsOfMoment(tell === 'as said' ? entry.say(data, nameOf) : tell(data), readingsIn(entry, data)),
          correctedBy: [...targets].filter(([, of]) => of === hash).map(([by]) => by),
          corrects: target === undefined ? null : (seqOf.get(target) ?? null),
        },
      ];
    })
    .sort((a, b) => a.atMs - b.atMs || a.seq - b.seq);
}
/** A weight that the words do not tell already stands beside them. */
function wordsOfMoment(what, readings) {
  const weight = readings.map(({ reading }) => readingWords(reading)).join(', ');
  return { what, weight: what.includes(weight) ? '' : weight };
}
