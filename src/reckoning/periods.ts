// Many jobs at once: how many flags chance alone would raise, and which of them stand up together.
import { ACTION_ALPHA } from './loss-law.ts';

/** Level for each of `n` independent tests that keeps the chance of any false one at `alpha`: 1 − (1 − α)^(1/n) (Šidák 1967). */
export const sidak = (alpha: number, n: number): number => -Math.expm1(Math.log1p(-alpha) / n);

/** Indices of the tests that stand up when a share `q` of those named may be false (Benjamini & Hochberg 1995). */
export function benjaminiHochberg(ps: readonly number[], q: number): readonly number[] {
  const ranked = ps.map((p, index) => ({ p, index })).sort((a, b) => a.p - b.p);
  const last = ranked.findLastIndex(({ p }, i) => p <= ((i + 1) / ps.length) * q);
  return ranked
    .slice(0, last + 1)
    .map(({ index }) => index)
    .sort((a, b) => a - b);
}

export interface PeriodCount {
  readonly checked: number;
  /** At most this many would be said not to agree by chance: the level of the verdict on both sides. */
  readonly byChance: number;
  readonly flagged: number;
  readonly standing: readonly number[];
}

/** Of the jobs checked in a period: those that do not agree, what chance may bring to that by the level of the very verdict, and those that stand up at q = 0.05. */
export function periodCount(jobs: readonly { readonly pLoss: number; readonly pGain: number; readonly flagged: boolean }[]): PeriodCount {
  return {
    checked: jobs.length,
    byChance: 2 * ACTION_ALPHA * jobs.length,
    flagged: jobs.filter(({ flagged }) => flagged).length,
    standing: benjaminiHochberg(
      jobs.map(({ pLoss, pGain }) => Math.min(1, 2 * Math.min(pLoss, pGain))),
      0.05,
    ),
  };
}
