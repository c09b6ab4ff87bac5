// Promises of levels held against jobs whose true masses are known. `npm run soak` runs the same over more seeds.
import { describe, expect, it } from 'vitest';
import { closure } from '../../src/reckoning/closure.ts';
import { limitFor, type Rate, runLengthFor, usualLoss, usualRate, watch } from '../../src/reckoning/drift.ts';
import { ACTION_ALPHA, levelAt, lossTail } from '../../src/reckoning/loss-law.ts';
import { uniform } from '../reckoning/random.ts';
import { DUST_SHARE, judged, LAWS, type Law, lossShare, PRIOR, type SimJob, SPREADS, simJob } from './jobs.ts';

const SEEDS = process.env.LEMEL_SEEDS === undefined ? 1 : 20;
const JOBS = 10_000;
const laws = Object.keys(LAWS) as Law[];
const percent = (share: number) => `${(100 * share).toFixed(2)} %`;
/** The most that chance makes of `n` trials at `p`, four standard deviations out. */
const most = (n: number, p: number) => n * p + 4 * Math.sqrt(n * p * (1 - p));

/** Chances of one job's loss and gain, by the law it is judged by. */
function chances({ weighings, workedG }: SimJob, rate: Rate) {
  const { lossNg, uG, stepNg, dof } = closure(weighings);
  const error = { uG, stepNg, dof };
  return { pLoss: lossTail(lossNg, { ...error, usual: usualLoss(rate, PRIOR, workedG) }), pGain: lossTail(-lossNg, error) };
}

describe('a false “does not agree”', () => {
  it.each(laws)('comes no oftener than promised on either side in 10,000 honest jobs: %s dust', { timeout: 600_000 }, (law) => {
    const random = uniform(7);
    const jobs = Array.from({ length: SEEDS * JOBS }, () => simJob(law, random));
    const rate = usualRate(jobs.map(lossShare), PRIOR);
    const found = jobs.map((job) => chances(job, rate));
    const [losses, gains] = [
      found.filter(({ pLoss }) => pLoss <= ACTION_ALPHA).length,
      found.filter(({ pGain }) => pGain <= ACTION_ALPHA).length,
    ];
    console.info(`${law}: ${losses} losses, ${gains} gains of ${jobs.length}; promised ${ACTION_ALPHA * jobs.length} a side`);
    expect(losses).toBeLessThanOrEqual(most(jobs.length, ACTION_ALPHA));
    expect(gains).toBeLessThanOrEqual(most(jobs.length, ACTION_ALPHA));
  });

  it.each(laws)('comes no oftener while a shop learns from its first jobs: %s dust', { timeout: 600_000 }, (law) => {
    const random = uniform(11);
    const jobs = Array.from({ length: SEEDS * 6000 }, () => simJob(law, random));
    const shares = jobs.map(lossShare);
    let [losses, tried] = [0, 0];
    for (const n of [3, 8, 20, 50])
      for (let from = 0; from + n < jobs.length; from += n + 3) {
        const job = jobs[from + n];
        if (!job) continue;
        tried += 1;
        if (chances(job, usualRate(shares.slice(from, from + n), PRIOR)).pLoss <= ACTION_ALPHA) losses += 1;
      }
    console.info(`${law}, learned from 3 to 50 jobs: ${losses} of ${tried}`);
    expect(losses).toBeLessThanOrEqual(most(tried, 2 * ACTION_ALPHA));
  });
});

describe('“a loss of … would have shown”', () => {
  it.each([...laws, 'none'] as const)(
    'is found at least 95 times in 100 at the size told, and never said to agree oftener than promised: %s dust',
    {
      timeout: 600_000,
    },
    (law) => {
      const random = uniform(13);
      const honest = Array.from({ length: SEEDS * 1500 }, () => simJob(law === 'none' ? 'normal' : law, random));
      const rate = usualRate(honest.slice(0, 300).map(lossShare), PRIOR);
      const verdicts = honest.map(({ workedG, weighings }) => {
        const { uG, stepNg, dof } = closure(weighings);
        const told = levelAt(ACTION_ALPHA, { uG, stepNg, dof, usual: usualLoss(rate, PRIOR, workedG) }).detectableG;
        const robbed = simJob(law === 'none' ? 'normal' : law, random, told, law === 'none' ? -1e9 : 0, workedG);
        return judged(robbed, rate).verdict;
      });
      const found = verdicts.filter((verdict) => verdict === 'does not agree').length / verdicts.length;
      const agreed = verdicts.filter((verdict) => verdict === 'agrees').length / verdicts.length;
      console.info(`${law} dust: found ${percent(found)}, said to agree ${percent(agreed)}`);
      expect(found).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.05 * 0.95) / verdicts.length));
      expect(agreed).toBeLessThan(0.05);
    },
  );
});

describe('a chart on an accepted baseline of thirty jobs', () => {
  const RUN_LENGTH = runLengthFor(12, 50, 1);
  const limit = limitFor(RUN_LENGTH);
  const BASELINE = 30;
  const run = (law: Law, shift: number, random: () => number) => {
    const jobs = Array.from({ length: 80 }, (_, i) => simJob(law, random, 0, i < BASELINE ? 0 : shift * SPREADS[law]));
    const points = jobs.map((job) => {
      const { lossNg, uG, stepNg, dof } = closure(job.weighings);
      return { lossG: lossNg / 1e9, uG, stepNg, dof, basis: job.workedG };
    });
    const watched = watch(points, PRIOR, limit, { baseline: BASELINE });
    return watched.chart === 'accepted baseline' && watched.sums.alarms.some(({ side }) => side === 'loss');
  };
  it.each(laws)(
    'finds losses risen by one spread between jobs before the eightieth, and cries wolf seldom: %s dust',
    { timeout: 600_000 },
    (law) => {
      const random = uniform(17);
      const shops = SEEDS * 150;
      const share = (shift: number) => Array.from({ length: shops }, () => run(law, shift, random)).filter(Boolean).length / shops;
      const [found, false_] = [share(1), share(0)];
      console.info(
        `${law}: risen by one spread (${(SPREADS[law] * DUST_SHARE * 1000).toFixed(1)} mg/g) found ${percent(found)}; nothing changed, alarm ${percent(false_)}`,
      );
      expect(found).toBeGreaterThanOrEqual(0.95 - 3 * Math.sqrt((0.05 * 0.95) / shops));
      // With normal scores 50 later jobs are 50 in 600; what a baseline of thirty does not know comes on top.
      expect(false_).toBeLessThan(0.1 + 3 * Math.sqrt((0.1 * 0.9) / shops));
    },
  );
});
