// A history as the reckoning reads it: each entry's facts as corrected, by when it happened and then by when it was written.
import type { Fact } from '../book/facts.ts';
import { readCorrected } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';

export interface Told {
  readonly seq: number;
  readonly atMs: number;
  readonly facts: readonly Fact[];
  /** The streams the entry belongs to: lots, stocks and skins are streams of their own. */
  readonly streams: readonly string[];
}

/**
 * The entries of a history in seq order, read as corrected, in the order (occurredAt, seq). Where nobody stated when it happened the entry
 * follows those written before it: a clock that was set back puts no weighing before the work it came after.
 */
export const told = (kept: readonly Kept[]): readonly Told[] => toldOn(NOTHING_TOLD, kept).entries;

/** The same as it was first written, without its corrections. */
export const toldFirst = (kept: readonly Kept[]): readonly Told[] => told(kept.filter(({ leaf }) => leaf.type !== 'corrected'));

/** A history told so far: its entries in order, where each stands, and the latest moment that nobody stated. */
export interface Telling {
  readonly entries: readonly Told[];
  readonly placed: readonly { readonly placeMs: number; readonly one: Told }[];
  readonly clockMs: number;
}
export const NOTHING_TOLD: Telling = { entries: [], placed: [], clockMs: 0 };

/** A history with the entries that were written after it; none of them corrects an entry before. */
export function toldOn(before: Telling, kept: readonly Kept[]): Telling {
  let { clockMs } = before;
  const fresh = readCorrected(kept).map(({ seq, leaf, occurredAt: atMs, facts }) => {
    const isStated = atMs !== leaf.at;
    if (!isStated) clockMs = Math.max(clockMs, atMs);
    const one: Told = { seq, atMs, facts, streams: leaf.links.map(({ s }) => s) };
    return { placeMs: isStated ? atMs : clockMs, one };
  });
  const placed = [...before.placed, ...fresh].sort((a, b) => a.placeMs - b.placeMs || a.one.seq - b.one.seq);
  return { entries: placed.map(({ one }) => one), placed, clockMs };
}
