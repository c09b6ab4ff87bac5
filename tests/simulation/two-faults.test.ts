// Faults planted in checked jobs, the piece weighed between all steps: two at once are both named, and one alone is not made into two.
import { describe, expect, it } from 'vitest';
import { type NetworkReckoning, reckon } from '../../src/reckoning/network.ts';
import type { SuspectSet } from '../../src/reckoning/suspects.ts';
import { explanationsIn } from '../../src/reckoning/together.ts';
import { massNg } from '../../src/units/mass.ts';
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
/** Dust is weighed, or nobody weighs it and it goes in as the usual loss: its mean, with a spread of half of it. */
type Dust = 'weighed' | 'usual';
const DUST = ['filings', 'lemel'];
const SPREAD = 0.5;
/** A job with these errors on top of what its balance shows. */
function faulty(faults: readonly Fault[], random: () => number, dust: Dust): NetworkReckoning {
  const noise = normal(random);
  const gainError = noise() * bench.uGain;
  const wrongG = (name: string) => faults.filter(({ stream }) => stream === name).reduce((sum, { g }) => sum + g, 0);
  const read = chain(bench, (name, trueG) => shownNg(bench, trueG, gainError, random) + Math.round(wrongG(name) * 1e9));
  if (dust === 'weighed') return reckon(read);
  const streams = read.streams.map((stream) => {
    const meanG = FLOWS.find(([name]) => name === stream.id)?.[3] ?? 0;
    if (!DUST.includes(stream.id)) return stream;
    // What went beyond its mean is missing beside it: a lognormal share with mean 1 and this spread.
    const variance = Math.log(1 + SPREAD ** 2);
    const share = Math.exp(Math.sqrt(variance) * noise() - variance / 2);
    return { ...stream, ng: massNg(Math.round(1e9 * meanG * (2 - share))), uRandomG: SPREAD * meanG, factors: [] };
  });
  return reckon({ ...read, streams });
}

/** So many different weighings, wrong by `leastG` to `mostG` either way. */
function drawn(count: number, [leastG, mostG]: readonly [number, number], random: () => number, dust: Dust): readonly Fault[] {
  const left = FLOWS.map(([name]) => name as string).filter((name) => dust === 'weighed' || !DUST.includes(name));
  return Array.from({ length: count }, () => {
    const [stream = ''] = left.splice(Math.floor(random() * left.length), 1);
    const g = (random() < 0.5 ? -1 : 1) * (leastG + random() * (mostG - leastG));
    return { stream, g: Math.round(100 * g) / 100 };
  });
}

const holds = ({ suspects }: SuspectSet, { stream }: Fault) =>
  suspects.some((one) => one.fault === 'weighing wrong' && one.stream === stream);
/** What is said of a job: every set that stands in a sentence. */
const said = (found: NetworkReckoning) => explanationsIn(found).flat();

describe('two weighings wrong in one job', () => {
  it.each([
    ['weighed', [0.08, 0.3]],
    ['weighed', [0.2, 1.5]],
    ['usual', [0.2, 1.5]],
  ] as const)('are both named at least 80 times in 100: dust %s, %s g', { timeout: 600_000 }, (dust, range) => {
    const random = uniform(31);
    let [both, sized, within, sentences, more] = [0, 0, 0, 0, 0];
    for (let i = 0; i < JOBS; i++) {
      const faults = drawn(2, range, random, dust);
      const found = faulty(faults, random, dust);
      if (faults.every((fault) => said(found).some((set) => holds(set, fault)))) both += 1;
      const several = found.together ?? [];
      if (several.length > 0) more += 1;
      sentences += several.length;
      // Each planted one in a set of its own: then its size is told.
      const right = several.find(
        (sets) =>
          sets.length === 2 &&
          faults.every(
            (fault, k) =>
              sets.filter((set) => holds(set, fault)).length === 1 &&
              !sets.some((set) => holds(set, fault) && faults.some((other, l) => l !== k && holds(set, other))),
          ),
      );
      for (const { stream, g } of right ? faults : []) {
        const one = right?.flatMap(({ suspects }) => suspects).find((it) => it.fault === 'weighing wrong' && it.stream === stream);
        if (!one) continue;
        sized += 1;
        if (Math.abs(one.size - g) <= 2 * one.u) within += 1;
      }
    }
    console.info(
      `pairs of ${range.join(' to ')} g, dust ${dust}: both named ${percent(both / JOBS)}; said as several ${percent(more / JOBS)}, in ${(sentences / more).toFixed(1)} sentences; size within its ± ${percent(within / sized)}`,
    );
    expect(both / JOBS).toBeGreaterThanOrEqual(0.8);
    expect(within / sized).toBeGreaterThan(0.9);
  });
});

describe('one weighing wrong', () => {
  it.each([
    ['weighed', [0.05, 0.1], 0.005],
    ['weighed', [0.1, 1.5], 0.005],
    ['usual', [0.1, 1.5], 0.02],
  ] as const)('is made into two no oftener than promised: dust %s, %s g, %s', { timeout: 600_000 }, (dust, range, promised) => {
    const random = uniform(37);
    let [more, named] = [0, 0];
    for (let i = 0; i < JOBS; i++) {
      const [fault] = drawn(1, range, random, dust);
      if (!fault) continue;
      const found = faulty([fault], random, dust);
      if (found.together?.length !== 0) more += 1;
      if (said(found).some((set) => holds(set, fault))) named += 1;
    }
    console.info(`one of ${range.join(' to ')} g, dust ${dust}: named ${percent(named / JOBS)}, a second invented ${percent(more / JOBS)}`);
    expect(more / JOBS).toBeLessThanOrEqual(promised + 3 * Math.sqrt((promised * (1 - promised)) / JOBS));
  });
});
