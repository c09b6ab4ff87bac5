// Many jobs at once: how many flags chance alone would raise, and which of them stand up together.
/** Level for each of `n` independent tests that keeps the chance of any false one at `alpha`: 1 − (1 − α)^(1/n) (Šidák 1967). */
export const sidak = (alpha, n) => -Math.expm1(Math.log1p(-alpha) / n);
/** Indices of the tests that stand up when a share `q` of those named may be false (Benjamini & Hochberg 1995). */
export function benjaminiHochberg(ps, q) {
  const ranked = ps.map((p, index) => ({ p, index })).sort((a, b) => a.p - b.p);
  const last = ranked.findLastIndex(({ p }, i) => p <= ((i + 1) / ps.length) * q);
  return ranked
    .slice(0, last + 1)
    .map(({ index }) => index)
    .sort((a, b) => a - b);
}
/** Of the jobs checked in a period: flags to be expected by chance (the sum of each job's own false-alarm rate), flags raised, and those that stand up at q = 0.05. */
export function periodCount(jobs, alpha) {
  return {
    checked: jobs.length,
    byChance: jobs.reduce((sum, { trueAlpha }) => sum + trueAlpha, 0),
    flagged: jobs.filter(({ p }) => p <= alpha).length,
    standing: benjaminiHochberg(
      jobs.map(({ p }) => p),
      0.05,
    ),
  };
}
