// A network as large as a shop grows in years: reconciled with nothing below zero, and nearest to the readings.
import { describe, expect, it } from 'vitest';
import { OUTSIDE, reckon } from '../../src/reckoning/network.ts';
import { flow } from './chain.ts';
import { uniform } from './random.ts';

describe('a shop of 97 holdings and 389 flows', () => {
  // A closing below zero, as one is when more was posted out of a holding than was in it.
  const random = uniform(5);
  const streams = Array.from({ length: 97 }, (_, i) => {
    const [here, next] = [`${i}`, i < 96 ? `${i + 1}` : OUTSIDE];
    return [
      flow(`passed ${i}`, here, next, 5 + 0.02 * random()),
      flow(`bought ${i}`, OUTSIDE, here, 1),
      flow(`sold ${i}`, here, OUTSIDE, 1 + 0.05 * random()),
      flow(`closing ${i}`, here, OUTSIDE, -0.3 * random()),
    ];
  }).flat();
  const nodes = Array.from({ length: 97 }, (_, i) => `${i}`);
  const reckoned = () => reckon({ nodes, streams: [flow('opening', OUTSIDE, '0', 5), ...streams] });
  it('is reconciled with no flow below zero and every holding balanced, however many closings are held at zero', () => {
    const found = reckoned();
    expect(found.streams.filter(({ fixedAtZero }) => fixedAtZero).length).toBeGreaterThan(80);
    const reconciled = new Map(found.streams.map(({ id, reconciledG }) => [id, reconciledG]));
    const net = new Map<string, number>();
    for (const { id, from, to } of [flow('opening', OUTSIDE, '0', 5), ...streams]) {
      net.set(from, (net.get(from) ?? 0) - (reconciled.get(id) ?? 0));
      net.set(to, (net.get(to) ?? 0) + (reconciled.get(id) ?? 0));
    }
    for (const node of nodes) expect(net.get(node)).toBeCloseTo(0, 9);
    for (const { reconciledG } of found.streams) expect(reconciledG).toBeGreaterThanOrEqual(-1e-12);
  });
  it('is nearest to the readings: each flow pulls as its ends do, and one held at zero pulls further below', () => {
    // Karush, Kuhn and Tucker: with equal u and no shared errors, reconciled − read = price of its end − price of its start, and less where it is held.
    const found = reckoned();
    const read = new Map([flow('opening', OUTSIDE, '0', 5), ...streams].map(({ id, ng }) => [id, (ng ?? 0) / 1e9]));
    const moved = new Map(found.streams.map(({ id, reconciledG }) => [id, reconciledG - (read.get(id) ?? 0)]));
    for (const i of nodes) {
      const price = moved.get(`bought ${i}`) ?? 0;
      expect(moved.get(`sold ${i}`)).toBeCloseTo(-price, 9);
      const closing = found.streams.find(({ id }) => id === `closing ${i}`);
      if (closing?.fixedAtZero) expect(moved.get(`closing ${i}`)).toBeGreaterThanOrEqual(-price - 1e-9);
      else expect(moved.get(`closing ${i}`)).toBeCloseTo(-price, 9);
    }
  });
});
