// What was done to a customer's piece and when, in words for the customer: no names, no places, no sums of money, nothing of the shop's own.
import { METAL_WORDS, type MetalCode } from '../book/metals.ts';
import { WORK_STEPS, wordsOf } from '../book/work.ts';
import type { EntryName } from '../entries/index.ts';
import { correctionsIn, factsOf, patchedData } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import { entryType, readingsIn, type Values } from '../ledger/registry.ts';
import { readingWords } from '../weighing/reading.ts';

export interface Moment {
  readonly seq: number;
  readonly atMs: number;
  /** The writer's name in the ledger: shown by its role alone. */
  readonly by: string;
  readonly what: string;
  readonly weight: string;
  readonly correctedBy: readonly number[];
  readonly corrects: number | null;
}
type Say = (data: Values, itsOwn: string) => string;

const AWAY: Readonly<Record<string, string>> = {
  setting: 'setter',
  plating: 'plater',
  engraving: 'engraver',
  polishing: 'polisher',
  assay: 'assay office',
  refining: 'refiner',
};
/** What becomes of metal that leaves the piece, as its owner is told. */
export const TERMS: Readonly<Record<string, string>> = {
  customer: 'comes back to you',
  shop: 'stays with the shop',
  credit: 'stays with the shop, credited to you',
};
const asWritten: Say = (_, itsOwn) => itsOwn;
const metal = (data: Values): string => METAL_WORDS[data.metal as MetalCode];

/** Entries that a customer reads of, with their words; what is not named here is the shop's own affair and is left out. */
const TOLD: Readonly<Partial<Record<EntryName, Say>>> = {
  piece_received: asWritten,
  weight_not_taken: asWritten,
  mark_read: asWritten,
  setting_noted: asWritten,
  work_agreed: ({ steps, dust, cutMetal }) => {
    const terms = `worn metal removed: ${TERMS[String(cutMetal)]}; dust and filings: ${TERMS[String(dust)]}`;
    return `Agreed: ${wordsOf(WORK_STEPS, steps as readonly (keyof typeof WORK_STEPS)[])}; ${terms}`;
  },
  inspected_before_work: asWritten,
  customer_told: (_, itsOwn) => itsOwn.replace('Customer told', 'You were told'),
  promise_moved: () => 'The day it was promised for was moved',
  taken: () => 'Taken in hand',
  released: ({ purpose }) => `Handed over to leave the shop: ${AWAY[String(purpose)] ?? 'outside work'}`,
  accepted: () => 'Taken over',
  piece_cleaned: asWritten,
  piece_weighed: asWritten,
  stone_unset: asWritten,
  stone_weighed: asWritten,
  stone_supplied: asWritten,
  stone_set: asWritten,
  metal_cut: (data) => `Worn metal removed: ${metal(data)}`,
  metal_added: (data, itsOwn) =>
    itsOwn.startsWith('Added, own gold') ? `Metal added, your own: ${metal(data)}` : `Metal added: ${metal(data)}`,
  piece_sized: asWritten,
  piece_checked: asWritten,
  work_finished: asWritten,
  identity_checked: asWritten,
  piece_returned: asWritten,
  returned_with_exception: asWritten,
  old_parts_returned: asWritten,
  difference_explained: ({ what, reason }) => `Explained: ${what}: ${reason}`,
  corrected: ({ seq, reason }) => `Correction of entry ${seq}: ${reason}`,
};

/** The moments of a job in the order they happened; `nameOf` gives the words for its own pieces and stones, and must name nobody. */
export function timelineOf(kept: readonly Kept[], nameOf: (id: string) => string): readonly Moment[] {
  const corrections = correctionsIn(kept);
  const targets = new Map(
    kept.flatMap(({ leaf, seq }) => factsOf(leaf).flatMap((one) => (one.fact === 'correction' ? [[seq, String(one.of)] as const] : []))),
  );
  const seqOf = new Map(kept.map(({ hash, seq }) => [hash, seq]));
  const hidden = new Set(kept.filter(({ leaf }) => !Object.hasOwn(TOLD, leaf.type)).map(({ hash }) => hash));
  return kept
    .flatMap(({ leaf, seq, hash }): Moment[] => {
      const say = TOLD[leaf.type as EntryName];
      const target = targets.get(seq);
      if (!say || (target !== undefined && hidden.has(target))) return [];
      const entry = entryType(leaf.type, leaf.ver);
      const patches = corrections.get(hash);
      const data = patchedData(leaf, patches);
      return [
        {
          ...{ seq, by: leaf.by, atMs: Number(patches?.get('occurredAt') ?? leaf.occurredAt) },
          ...wordsOfMoment(say(data, entry.say(data, nameOf)), readingsIn(entry, data)),
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
