// Bench skins closed over the jobs above them: what the jobs are short of by reckoning, against what lay in the skin when it was weighed.
import { closeSkin, type SkinClosure, type Weighed } from '../reckoning/skins.ts';
import { massNg } from '../units/mass.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import type { Worths } from './balances.ts';
import type { LossJob } from './loss.ts';
import type { Told } from './told.ts';

/** A skin between two weighings of it. */
export interface SkinPeriod {
  readonly from: { readonly seq: number; readonly atMs: number };
  readonly to: { readonly seq: number; readonly atMs: number };
  readonly jobs: readonly string[];
  readonly closed: SkinClosure;
}
type Seen = { readonly seq: number; readonly atMs: number; readonly weighed: Weighed };

/** Of the usual loss of its jobs this share is dust in the air, on the mop and down the drain, and never reaches the skin; anything from nothing to two thirds, the same for all jobs of a skin (common practice, no source). */
const LOST_FOR_GOOD = { share: 0.33, uShare: 0.2 };

/** The periods of one skin from its own entries and the jobs worked above it. A job that was not weighed in and out is not among them: what it gave shows as a gain. */
export function skinPeriods(skin: string, entries: readonly Told[], jobs: readonly LossJob[], worths: Worths): readonly SkinPeriod[] {
  const gathered: Seen[] = [];
  const emptied: Seen[] = [];
  for (const { seq, atMs, facts } of entries) {
    for (const one of facts) {
      const reading =
        one.fact === 'reading' && one.of === skin ? one.reading : one.fact === 'flow' && one.from === skin ? one.reading : undefined;
      const weighed = reading && weighedAs(reading, atMs, worths);
      if (weighed) (one.fact === 'reading' ? gathered : emptied).push({ seq, atMs, weighed });
    }
  }
  return gathered.slice(1).map((to, index) => {
    const from = gathered[index] ?? to;
    const isWithin = ({ atMs }: { readonly atMs: number }) => atMs > from.atMs && atMs <= to.atMs;
    const own = jobs.filter(isWithin);
    const removed = emptied.filter((one) => one.seq > from.seq && one.seq < to.seq).map(({ weighed }) => weighed);
    const given = own.map(({ job, closing, usual }) => ({ job, weighings: closing, usual }));
    const closed = closeSkin(given, { opening: from.weighed, closing: to.weighed, removed }, LOST_FOR_GOOD);
    return { from, to, jobs: own.map(({ job }) => job), closed };
  });
}

function weighedAs(reading: Reading, atMs: number, worths: Worths): Weighed | null {
  const ng = netNg(reading);
  return ng === null ? null : { ng, worth: worths(reading, atMs), stepNg: reading.stepNg ?? massNg(0) };
}
