// The chart of a bench, figure by figure: what it counts, what it is judged by, and what moves its sums.
import { describe, expect, it } from 'vitest';
import {
  type ChartJob,
  FROM_USUAL_RATE,
  flooredTau,
  runningSums,
  selfStarting,
  usualLoss,
  usualRate,
  type Watch,
  watch,
} from '../../src/reckoning/drift.ts';
import { scoreOf } from '../../src/reckoning/loss-law.ts';

const prior = { rate: 0.015, uRate: 0.006, tau: 0.005 };
const H = 4.568;
/** A job of 4 g worked that lost that share of it. */
const job = (share: number, over: Partial<ChartJob> = {}): ChartJob => ({
  lossG: 4 * share,
  uG: 0.01,
  stepNg: 10_000_000,
  basis: 4,
  ...over,
});
const jobs = (count: number) => Array.from({ length: count }, (_, i) => job(0.015 + 0.004 * Math.sin(2.4 * i)));
const places = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => from + i);
const sharesOf = (of: readonly ChartJob[]) => of.map(({ lossG, uG, basis }) => ({ value: lossG / basis, u: uG / basis }));
/** The chart with all it says, or a failed test. */
function scored(found: Watch) {
  if (found.chart === 'single jobs') throw new Error('no chart yet');
  return found;
}

describe('a chart of single jobs', () => {
  it('counts the one or two that there are', () => {
    expect(watch(jobs(2), prior, H)).toEqual({ chart: 'single jobs', counted: [0, 1] });
    expect(watch([job(0.02, { leftOut: true }), ...jobs(2)], prior, H)).toEqual({ chart: 'single jobs', counted: [1, 2] });
  });
});

describe('a self-starting chart', () => {
  it('scores from the third job that is not left out, each against those before it', () => {
    const some = [job(0.02), job(0.9, { leftOut: true }), ...jobs(5)];
    const found = scored(watch(some, prior, H));
    const taught = sharesOf([some[0] ?? job(0), ...some.slice(2)]);
    expect(found.chart).toBe('self-starting');
    expect(found.counted).toEqual([3, 4, 5, 6]);
    expect(found.scores).toEqual(selfStarting(taught.map(({ value }) => value)).slice(2));
    expect(found.rate).toEqual(usualRate(taught, prior));
    expect(found.sums).toEqual(runningSums(found.scores, 0.5, H));
  });
  it('counts nothing while it has no score', () => {
    const found = scored(watch([job(0.02), job(0.02), job(0.02)], prior, H));
    expect([found.counted, found.scores]).toEqual([[], []]);
    const moved = scored(watch([job(0.02), job(0.02), job(0.02), job(0.03), job(0.02)], prior, H));
    expect(moved.counted).toEqual([4]);
  });
  it('lasts to the nineteenth job', () => {
    expect(watch(jobs(FROM_USUAL_RATE - 1), prior, H).chart).toBe('self-starting');
    expect(watch(jobs(FROM_USUAL_RATE), prior, H).chart).toBe('usual rate');
    expect(watch([...jobs(FROM_USUAL_RATE - 1), job(0.9, { leftOut: true })], prior, H).chart).toBe('self-starting');
  });
});

/** What a job scores on a chart by a rate, and how much of a shift it would show: as the law and the page on charts say it. */
function expected(some: readonly ChartJob[], rate: { readonly rate: number; readonly uRate: number; readonly tau: number }, k = 0.5) {
  const spread = flooredTau(rate.tau, prior);
  const scores = some.map(({ lossG, uG, stepNg = 0, basis }) => {
    const usual = { meanG: Math.max(rate.rate, prior.rate / 20) * basis, tauG: spread * basis };
    return Math.max(-4, Math.min(4, scoreOf(Math.round(lossG * 1e9), { uG, stepNg, usual })));
  });
  const weights = sharesOf(some).map(({ u }) => spread / Math.hypot(spread, u));
  // The limit grows with the skewness: doubled from 0.45 of the mean on, to 1.8 times at most.
  const limit = H * Math.min(1.8, 1 + 2 * Math.max(0, spread / Math.max(rate.rate, prior.rate / 20) - 0.45));
  return { scores, limit, sums: runningSums(scores, k + (0.35 * rate.uRate) / spread, limit, true, weights) };
}

describe('a chart by the usual rate', () => {
  it('scores all jobs by the rate learned from them, poorly weighed ones for less', () => {
    const some = [...jobs(21), job(0.02, { uG: 0.04 })];
    const found = scored(watch(some, prior, H));
    const { scores, sums } = expected(some, usualRate(sharesOf(some), prior));
    expect(found.counted).toEqual(places(0, 22));
    expect(found.scores).toEqual(scores);
    expect(found.sums).toEqual(sums);
    expect(scored(watch(some, prior, H, { k: 0.25 })).sums).toEqual(expected(some, found.rate, 0.25).sums);
  });
  it('lets no single job move a sum by more than four spreads', () => {
    const found = scored(watch([...jobs(22), job(0.5), job(-0.5)], prior, H, { baseline: 22 }));
    expect(found.scores).toEqual([4, -4]);
  });
  it('takes dust for no less than a twentieth of what is assumed', () => {
    const gained = Array.from({ length: 20 }, () => job(-0.02));
    const found = scored(watch(gained, prior, H));
    expect(found.rate.rate).toBeLessThan(0);
    expect(found.scores).toEqual(expected(gained, found.rate).scores);
  });
  it('knows few readings from many', () => {
    const some = jobs(20).map((one) => ({ ...one, dof: 2 }));
    expect(scored(watch(some, prior, H)).scores).not.toEqual(scored(watch(jobs(20), prior, H)).scores);
  });
});

describe('an accepted baseline', () => {
  it('judges what came after it by what was before it, which no later job changes', () => {
    const [before, after] = [jobs(20), [job(0.03), job(0.05, { leftOut: true })]];
    const found = scored(watch([...before, ...after], prior, H, { baseline: 20 }));
    const { scores, sums } = expected(after, usualRate(sharesOf(before), prior));
    expect(found.chart).toBe('accepted baseline');
    expect(found.counted).toEqual([20, 21]);
    expect(found.scores).toEqual(scores);
    expect(found.sums).toEqual(sums);
    expect(found.rate.jobs).toBe(20);
  });
  it('holds however few of its jobs are left, but not with fewer than three', () => {
    const left = (few: number) => jobs(20).map((one, i) => ({ ...one, leftOut: i >= few }));
    expect(watch([...left(3), job(0.03)], prior, H, { baseline: 20 })).toMatchObject({ chart: 'accepted baseline', counted: [20] });
    expect(watch([...left(2), job(0.03)], prior, H, { baseline: 20 })).toEqual({ chart: 'single jobs', counted: [0, 1] });
  });
});

describe('a running sum', () => {
  it('takes each score by its weight, and the allowance by its square', () => {
    // By hand, k = 0.5: 0.5·2 − 0.5·0.25 = 0.875; then + 1·2 − 0.5 = 2.375.
    expect(runningSums([2, 2], 0.5, 4, true, [0.5, 1]).high).toEqual([0.875, 2.375]);
    expect(runningSums([2, 2], 0.5, 4, true, [0.5]).high).toEqual([0.875, 2.375]);
    expect(runningSums([-2, -2], 0.5, 4, true, [0.5]).low).toEqual([0.875, 2.375]);
  });
  it('goes on where it is not set back, and begins anew where it fell to nothing', () => {
    const { high, alarms } = runningSums([3, 3, 3], 0.5, 4, false);
    expect(high).toEqual([2.5, 5, 7.5]);
    expect(alarms.map(({ at, since, size }) => [at, since, size])).toEqual([
      [1, 0, 3],
      [2, 0, 3],
    ]);
    expect(runningSums([3, -3, 3, 3], 0.5, 4).alarms).toEqual([{ at: 3, side: 'loss', since: 2, size: 3 }]);
    expect(runningSums([4.5], 0.5, 4).alarms).toEqual([]);
  });
  it('tells alarms of both sides in the order of the jobs', () => {
    const { alarms } = runningSums([-5, 5, -5, 5], 0.5, 4);
    expect(alarms.map(({ at, side }) => [at, side])).toEqual([
      [0, 'gain'],
      [1, 'loss'],
      [2, 'gain'],
      [3, 'loss'],
    ]);
  });
});

describe('the usual loss of some work', () => {
  it('is what is assumed, with the doubt of the mean in its spread, until jobs were seen', () => {
    // By hand: 0.015·10 g ± √(0.005² + 0.006²)·10 g.
    expect(usualLoss(prior, prior, 10).meanG).toBeCloseTo(0.15, 12);
    expect(usualLoss(prior, prior, 10).tauG).toBeCloseTo(10 * Math.hypot(0.005, 0.006), 12);
    expect(usualLoss({ ...prior, rate: -0.1 }, prior, 10).meanG).toBeCloseTo(0.0075, 12);
    expect(usualLoss({ ...prior, tau: 0 }, prior, 10).tauG).toBeCloseTo(10 * Math.hypot(0.0025, 0.006), 12);
  });
  it('weighs a learned spread as if twenty jobs had been seen before, whose spread is 1.25 means', () => {
    // By hand for a mean of 0.02: √((n·0.01² + 20·0.025²)/(n + 20)); below eight jobs n is none.
    const spread = (seen: number) => Math.sqrt((seen * 0.01 ** 2 + 20 * 0.025 ** 2) / (seen + 20));
    const learned = (count: number) => usualLoss({ rate: 0.02, uRate: 0, tau: 0.01, jobs: count }, prior, 1).tauG;
    expect([1, 7, 8, 60].map(learned)).toEqual([spread(0), spread(0), spread(8), spread(60)].map((one) => expect.closeTo(one, 12)));
  });
});
