// What is promised of alarms and of the law of losses, held against thousands of simulated jobs and shops.
import { describe, expect, it } from 'vitest';
import { closure } from '../../src/reckoning/closure.ts';
import { selfStarting } from '../../src/reckoning/drift.ts';
import { lossTail, NOTE_ALPHA } from '../../src/reckoning/loss-law.ts';
import { FALSE_ALARM_IN, materialBalance } from '../../src/reckoning/material-balance.ts';
import { reckon } from '../../src/reckoning/network.ts';
import { chain, FLOWS, named } from './chain.ts';
import { coarse, fine, normal, shownNg, uniform, weighed } from './random.ts';
import { periods, U } from './stock.ts';

const noise = normal(uniform(11));
const shops = (many: number, lostEach: number, n = 24) =>
  Array.from({ length: many }, () => materialBalance(periods(Array.from({ length: n + 1 }, (_, i) => 20 - lostEach * i + U * noise()))));

describe('a material balance', () => {
  it('signals no more often on each side than it says where nothing is missing', () => {
    const alarms = shops(400, 0).flatMap(({ alarms: own }) => own);
    for (const side of ['loss', 'gain'])
      expect(alarms.filter((one) => one.side === side).length / (400 * 24)).toBeLessThan(1.2 / FALSE_ALARM_IN);
  });

  it('finds a steady loss of twice the doubt of a period within a dozen', () => {
    const found = shops(200, 2 * Math.SQRT2 * U, 12).filter(({ alarms }) => alarms.some(({ side }) => side === 'loss'));
    expect(found.length / 200).toBeGreaterThan(0.95);
  });
});

describe('the bench note over many honest jobs', () => {
  it.each([
    ['0.01 g', coarse, 4, 11],
    ['0.01 g', coarse, 7, 12],
    ['0.001 g', fine, 4, 13],
    ['0.001 g', fine, 9, 14],
  ])('on a %s balance it is raised as often as it says', (_name, balance, outs, seed) => {
    const random = uniform(seed);
    const noise = normal(random);
    const jobs = 20_000;
    let raised = 0;
    let promised = 0;
    for (let i = 0; i < jobs; i++) {
      const gainError = noise() * balance.uGain;
      const parts = Array.from({ length: outs }, () => 0.2 + 3 * random());
      const whole = parts.reduce((sum, part) => sum + part, 0);
      const readings = [weighed(balance, 1, shownNg(balance, whole, gainError, random))];
      for (const part of parts) readings.push(weighed(balance, -1, shownNg(balance, part, gainError, random)));
      const closed = closure(readings);
      if (closed.pLoss <= NOTE_ALPHA) raised += 1;
      promised += closed.note.trueAlpha / jobs;
    }
    expect(Math.abs(raised / jobs - promised)).toBeLessThan(0.01);
    expect(raised / jobs).toBeLessThan(NOTE_ALPHA + 0.01);
  });
});

describe('a slip of 0.05 g planted in a chain of five steps on a 0.01 g balance', () => {
  const jobs = 1500;
  function trial(seed: number, slipG: number) {
    const random = uniform(seed);
    const noise = normal(random);
    let listed = 0;
    let alarmed = 0;
    for (let i = 0; i < jobs; i++) {
      const gainError = noise() * coarse.uGain;
      const wrong = FLOWS[Math.floor(random() * FLOWS.length)]?.[0];
      const slip = random() < 0.5 ? slipG : -slipG;
      const found = reckon(
        chain(coarse, (name, trueG) => shownNg(coarse, trueG, gainError, random) + (name === wrong ? Math.round(slip * 1e9) : 0)),
      );
      if (found.suspects.length > 0) alarmed += 1;
      if (found.suspects.some(({ suspects }) => suspects.some((suspect) => named(suspect) === wrong))) listed += 1;
    }
    return { listed: listed / jobs, alarmed: alarmed / jobs };
  }
  it('is among the suspects at least 70 times in 100', () => expect(trial(21, 0.05).listed).toBeGreaterThanOrEqual(0.7));
  it('of 0.09 g is there 95 times in 100', () => expect(trial(22, 0.09).listed).toBeGreaterThanOrEqual(0.95));
  it('of nothing raises about one alarm in twenty', () => {
    const { alarmed } = trial(23, 0);
    expect(alarmed).toBeGreaterThan(0.03);
    expect(alarmed).toBeLessThan(0.07);
  });
});

const DRAWS = 400_000;
/** Lognormal dust of a mean and spread plus a normal or Student error, drawn and not reckoned. */
function drawn(uG: number, meanG: number, tauG: number, dof: number, seed: number): readonly number[] {
  const noise = normal(uniform(seed));
  const variance = Math.log(1 + (tauG / meanG) ** 2);
  const [mu, sigma] = [Math.log(meanG) - variance / 2, Math.sqrt(variance)];
  return Array.from({ length: DRAWS }, () => {
    const square = dof === Number.POSITIVE_INFINITY ? 1 : Array.from({ length: dof }, () => noise() ** 2).reduce((a, b) => a + b) / dof;
    return Math.exp(mu + sigma * noise()) + (uG * noise()) / Math.sqrt(square);
  });
}

describe('dust and weighing error together', () => {
  it.each([
    [0.011, 0.05, 0.05, Number.POSITIVE_INFINITY],
    [0.011, 0.005, 0.007, Number.POSITIVE_INFINITY],
    [0.002, 0.12, 0.1, Number.POSITIVE_INFINITY],
    [0.05, 0.02, 0.02, Number.POSITIVE_INFINITY],
    [0.011, 0.05, 0.02, 4],
  ])('u %d g, dust %d ± %d g, %d degrees of freedom: as often as when it is drawn', (uG, meanG, tauG, dof) => {
    const losses = drawn(uG, meanG, tauG, dof, 5);
    for (const r of [-0.02, 0, 0.01, 0.03, 0.08, 0.15, 0.3]) {
      const p = lossTail(r * 1e9, { uG, stepNg: 0, dof, usual: { meanG, tauG } });
      const share = losses.filter((loss) => loss > r).length / DRAWS;
      expect(Math.abs(share - p)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / DRAWS) + 2e-5);
    }
  });
});

describe('a running sum of standard normals', () => {
  it.each([
    [3.502, 200],
    [3.892, 300],
  ])('at h = %d is within a tenth of %i jobs in simulation', (h, expected) => {
    const noise = normal(uniform(77));
    const runs = 3000;
    let jobs = 0;
    for (let run = 0; run < runs; run++) for (let sum = 0; sum <= h; jobs++) sum = Math.max(0, sum + noise() - 0.5);
    expect(Math.abs(jobs / runs / expected - 1)).toBeLessThan(0.1);
  });
  it('scores as standard normals from the third job on', () => {
    const noise = normal(uniform(99));
    const scores = Array.from({ length: 800 }, () => selfStarting(Array.from({ length: 12 }, () => 3 + noise())).slice(2)).flat();
    const mean = scores.reduce((sum: number, q) => sum + (q ?? 0), 0) / scores.length;
    const square = scores.reduce((sum: number, q) => sum + (q ?? 0) ** 2, 0) / scores.length;
    expect(Math.abs(mean)).toBeLessThan(0.04);
    expect(Math.abs(square - 1)).toBeLessThan(0.05);
  });
});
