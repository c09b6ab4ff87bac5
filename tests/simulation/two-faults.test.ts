// Faults planted in checked jobs, the piece weighed between all steps: two at once are both named, and one alone is not made into two.
import { describe, expect, it } from 'vitest';
import { type NetworkReckoning, reckon } from '../../src/reckoning/network.ts';
import type { SuspectSet } from '../../src/reckoning/suspects.ts';
import { MORE_ALPHA } from '../../src/reckoning/together.ts';
import { chain, FLOWS } from '../reckoning/chain.ts';
import { balanceWith, normal, shownNg, uniform } from '../reckoning/random.ts';

const SEEDS = process.env.LEMEL_SEEDS === undefined ? 1 : 10;
const JOBS = 1000 * SEEDS;
const bench = balanceWith('0.01 g', 0.01, 0.006, 0.005);
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

interface Fault {
  readonly stream: string;
  readonly g: number;
}
/** A job with these errors on top of what its balance shows. */
function faulty(faults: readonly Fault[], random: () => number): NetworkReckoning {
  const gainError = normal(random)() * bench.uGain;
  const wrongG = (name: string) => faults.filter(({ stream }) => stream === name).reduce((sum, { g }) => sum + g, 0);
  return reckon(chain(bench, (name, trueG) => shownNg(bench, trueG, gainError, random) + Math.round(wrongG(name) * 1e9)));
}

/** So many different weighings, wrong by `leastG` to `mostG` either way. */
function drawn(count: number, [leastG, mostG]: readonly [number, number], random: () => number): readonly Fault[] {
  const left = FLOWS.map(([name]) => name as string);
  return Array.from({ length: count }, () => {
    const [stream = ''] = left.splice(Math.floor(random() * left.length), 1);
    const g = (random() < 0.5 ? -1 : 1) * (leastG + random() * (mostG - leastG));
    return { stream, g: Math.round(100 * g) / 100 };
  });
}

const holds = ({ suspects }: SuspectSet, { stream }: Fault) =>
  suspects.some((one) => one.fault === 'weighing wrong' && one.stream === stream);
/** What is said of a job: every set that stands in a sentence. */
const said = ({ together, suspects }: NetworkReckoning) => (together.length > 0 ? together.flat() : suspects);

describe('two weighings wrong in one job', () => {
  it.each([
    [[0.08, 0.3] as const, 0.8],
    [[0.2, 1.5] as const, 0.8],
  ])('are both named at least 80 times in 100: %s g', { timeout: 600_000 }, (range, least) => {
    const random = uniform(31);
    let [both, inOne, sentences, within, sized] = [0, 0, 0, 0, 0];
    for (let i = 0; i < JOBS; i++) {
      const faults = drawn(2, range, random);
      const found = faulty(faults, random);
      if (faults.every((fault) => said(found).some((set) => holds(set, fault)))) both += 1;
      const right = found.together.find((sets) => faults.every((fault) => sets.some((set) => holds(set, fault))));
      if (!right) continue;
      inOne += 1;
      sentences += found.together.length;
      for (const fault of faults) {
        const one = right.flatMap(({ suspects }) => suspects).find((s) => s.fault === 'weighing wrong' && s.stream === fault.stream);
        if (!one || right.length !== 2 || faults.every((f) => right.some((set) => faults.every((g) => holds(set, g)) && holds(set, f))))
          continue;
        sized += 1;
        if (Math.abs(one.size - fault.g) <= 2 * one.u) within += 1;
      }
    }
    console.info(
      `pairs of ${range.join(' to ')} g: both named ${percent(both / JOBS)}, in one sentence ${percent(inOne / JOBS)} (of ${(sentences / inOne).toFixed(1)}), size within its ± ${percent(within / sized)}`,
    );
    expect(both / JOBS).toBeGreaterThanOrEqual(least);
  });
});

describe('one weighing wrong', () => {
  it.each([[0.05, 0.1] as const, [0.1, 1.5] as const])(
    'is made into two no oftener than promised: %s to %s g',
    { timeout: 600_000 },
    (...range) => {
      const random = uniform(37);
      let [more, named] = [0, 0];
      for (let i = 0; i < JOBS; i++) {
        const [fault] = drawn(1, range, random);
        if (!fault) continue;
        const found = faulty([fault], random);
        if (found.together.length > 0) more += 1;
        if (said(found).some((set) => holds(set, fault))) named += 1;
      }
      console.info(`one of ${range.join(' to ')} g: named ${percent(named / JOBS)}, a second invented ${percent(more / JOBS)}`);
      expect(more / JOBS).toBeLessThanOrEqual(MORE_ALPHA + 3 * Math.sqrt((MORE_ALPHA * (1 - MORE_ALPHA)) / JOBS));
    },
  );
});
