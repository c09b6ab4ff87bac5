// What was done to a customer's piece and when, in words for the customer: what each entry's own file tells of it, and nothing of the others.
import { markTyped } from '../book/us-words.ts';
import { readCorrected } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import { entryType, openData, readingsIn, type Values } from '../ledger/registry.ts';
import { readingWords } from '../weighing/reading.ts';

export interface Moment {
  readonly seq: number;
  readonly atMs: number;
  /** The writer's name in the ledger: shown by its role alone. */
  readonly by: string;
  readonly what: string;
  readonly weight: string;
  /** What was written first, where a correction now stands for it. */
  readonly first: { readonly what: string; readonly weight: string } | null;
  readonly correctedBy: readonly number[];
  readonly corrects: number | null;
}
/** The moments of a job in the order they happened; `nameOf` gives the words for its own pieces and stones, and must name nobody. */
export function timelineOf(kept: readonly Kept[], nameOf: (id: string) => string): readonly Moment[] {
  const all = readCorrected(kept);
  const targets = new Map(all.flatMap(({ seq, corrects }) => (corrects ? [[seq, String(corrects.of)] as const] : [])));
  const seqOf = new Map(kept.map(({ hash, seq }) => [hash, seq]));
  const hidden = new Set(kept.filter(({ leaf }) => entryType(leaf.type).tell === null).map(({ hash }) => hash));
  return all
    .flatMap(({ leaf, seq, hash, data, occurredAt, isCorrected }): Moment[] => {
      const entry = entryType(leaf.type, leaf.ver);
      const { tell } = entry;
      const target = targets.get(seq);
      if (tell === null || (target !== undefined && hidden.has(target))) return [];
      const told = (data: Values) => {
        const marked = markTyped(entry.fields, data);
        return wordsOfMoment(tell === 'as said' ? entry.say(marked, nameOf) : tell(marked), readingsIn(entry, data));
      };
      return [
        {
          ...{ seq, by: leaf.by, atMs: occurredAt },
          ...told(data),
          first: isCorrected ? told(openData(leaf)) : null,
          correctedBy: [...targets].filter(([, of]) => of === hash).map(([by]) => by),
          corrects: target === undefined ? null : (seqOf.get(target) ?? null),
        },
      ];
    })
    .sort((a, b) => a.atMs - b.atMs || a.seq - b.seq);
}

/** A weight that the words do not tell already stands beside them. */
function wordsOfMoment(what: string, readings: ReturnType<typeof readingsIn>): Pick<Moment, 'what' | 'weight'> {
  const weight = readings.map(({ reading }) => readingWords(reading)).join(', ');
  return { what, weight: what.includes(weight) ? '' : weight };
}
