// Figures of a job that were corrected after they were written: what stood first, beside what stands now, for whoever is shown the figure.
import { stonesWords } from '../book/words.ts';
import { readCorrected } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import { entryType, openData, readingsIn, type Values } from '../ledger/registry.ts';
import { readingWords } from '../weighing/reading.ts';

export interface CorrectedFigure {
  readonly seq: number;
  /** "6.28 g", "3 stones", or "nothing". */
  readonly first: string;
  readonly now: string;
}
/** Each weight and count of stones that says something else by now than it did first, in the order of its entries. */
export function correctedFigures(kept: readonly Kept[]): readonly CorrectedFigure[] {
  return readCorrected(kept).flatMap(({ leaf, seq, data, isCorrected }) => {
    if (!isCorrected) return [];
    const entry = entryType(leaf.type, leaf.ver);
    const [before, after] = [openData(leaf), data].map((said) => figuresIn(entry, said));
    const names = new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])]);
    return [...names].flatMap((name) => {
      const [first, now] = [before?.get(name) ?? 'nothing', after?.get(name) ?? 'nothing'];
      return first === now ? [] : [{ seq, first, now }];
    });
  });
}

function figuresIn(entry: ReturnType<typeof entryType>, data: Values): ReadonlyMap<string, string> {
  const readings = readingsIn(entry, data).map(({ path, reading }) => [path, readingWords(reading)] as const);
  const { stones } = data;
  return new Map([...readings, ...(typeof stones === 'number' ? [['stones', stonesWords(stones)] as const] : [])]);
}

/** "Corrected after it was written: entry 9, first 6.42 g and now 6.82 g."; nothing where nothing was. */
export const correctedWords = (figures: readonly CorrectedFigure[]): string =>
  figures.length === 0
    ? ''
    : `Corrected after it was written: ${figures.map(({ seq, first, now }) => `entry ${seq}, first ${first} and now ${now}`).join('; ')}.`;
