import { describe, expect, it } from 'vitest';
import { adjustCurved } from '../../src/reckoning/adjustment.ts';
import { diagonal } from '../../src/reckoning/matrix.ts';
import { OUTSIDE, reckon } from '../../src/reckoning/network.ts';
import { explanationsIn } from '../../src/reckoning/together.ts';
import { chain, FLOWS, flow, named, STEPS } from './chain.ts';
import { coarse } from './random.ts';

const exactly = (_name: string, trueG: number) => Math.round(trueG * 1e9);

describe('a chain that closes', () => {
  const closing = () => reckon(chain(coarse, exactly));
  it('has no suspects', () => {
    const found = closing();
    expect(found.suspects).toEqual([]);
    expect(found.together).toEqual([]);
    expect(found.p).toBeGreaterThan(0.99);
    expect(found.groups.map(({ nodes }) => nodes)).toEqual(STEPS.map((step) => [step]));
  });
  it('reconciles each weighing to itself, and knows it better than it was read', () => {
    for (const [i, { reconciledG, uG, checkable }] of closing().streams.entries()) {
      expect(reconciledG).toBeCloseTo(FLOWS[i]?.[3] ?? 0, 9);
      expect(uG).toBeLessThan(0.0079);
      expect(checkable).toBe(true);
    }
  });
  it('says how large a fault would be found', () => {
    // Independent computation with numpy over this chain: 0.045 to 0.064 g at the Šidák level for 13.
    for (const { detectableG } of closing().streams) expect(detectableG).toBeGreaterThan(0.04);
    for (const { detectableG } of closing().streams) expect(detectableG).toBeLessThan(0.066);
  });
});

describe('a chain with a fault', () => {
  it('picks out the weighing whose digits were swapped', () => {
    const found = reckon(chain(coarse, (name, trueG) => exactly(name, name === 'cut' ? 6.57 : trueG)));
    expect(found.suspects).toHaveLength(1);
    expect(found.suspects[0]?.suspects.map(named)).toEqual(['cut']);
    expect(found.suspects[0]?.suspects[0]?.size).toBeCloseTo(-0.18, 2);
    expect(found.suspects[0]?.significant).toBe(true);
  });
  it('names a loss and the loose weighings of its step together, as nothing can tell them apart', () => {
    const found = reckon(chain(coarse, (name, trueG) => exactly(name, name === 'filings' ? 0 : trueG)));
    expect(found.suspects[0]?.suspects.map(named)).toEqual(['cut-off', 'filings', 'loss at cut and filed']);
  });
  it('points nowhere when not even three faults would explain it', () => {
    const wrongG: Readonly<Record<string, number>> = { stones: 0.2, 'cut-off': 0.53, donor: 0.97, lemel: 0.41, returned: 0.7 };
    const found = reckon(chain(coarse, (name, trueG) => exactly(name, trueG + (wrongG[name] ?? 0))));
    expect(found.together).toBeNull();
    expect(explanationsIn(found)).toEqual([]);
  });
  it('keeps the residual of each step exact', () => {
    const found = reckon(chain(coarse, (name, trueG) => exactly(name, name === 'cut' ? 6.57 : trueG)));
    expect(found.groups.map(({ residualNg }) => residualNg)).toEqual([0, 180_000_000, -180_000_000, 0, 0]);
    expect(found.total.residualNg).toBe(0);
  });
});

describe('one flow weighed three times', () => {
  it('is their mean, with residuals and z by step and over all', () => {
    // By hand with u = 0.01 g: mean 4.95667 g ± 0.01/√3; each step differs by 0.03 and 0.07 ± 0.01·√2; over all 0.10 ± 0.01·√2.
    const streams = [flow('in', OUTSIDE, 'a', 5), flow('between', 'a', 'b', 4.97), flow('out', 'b', OUTSIDE, 4.9)];
    const found = reckon({ nodes: ['a', 'b'], streams });
    for (const { reconciledG, uG } of found.streams) {
      expect(reconciledG).toBeCloseTo(4.956667, 6);
      expect(uG).toBeCloseTo(0.0057735, 8);
    }
    expect(found.groups.map(({ residualNg }) => residualNg)).toEqual([30_000_000, 70_000_000]);
    for (const [i, z] of [2.12132, 4.949747].entries()) {
      expect(found.groups[i]?.uG).toBeCloseTo(0.01414214, 8);
      expect(found.groups[i]?.z).toBeCloseTo(z, 5);
    }
    expect(found.total.residualNg).toBe(100_000_000);
    expect(found.total.uG).toBeCloseTo(0.01414214, 8);
    expect(found.total.z).toBeCloseTo(7.071068, 5);
  });
  it('has no z where nothing was weighed', () => {
    const found = reckon({ nodes: ['empty', 'a'], streams: [flow('in', OUTSIDE, 'a', 5), flow('out', 'a', OUTSIDE, 5)] });
    expect(found.groups[0]).toEqual({ nodes: ['empty'], testable: true, residualNg: 0, uG: 0, z: 0 });
    expect(reckon({ nodes: ['a'], streams: [] }).total).toEqual({ residualNg: 0, uG: 0, z: 0 });
  });
});

describe('what cannot be checked', () => {
  it('is joined by what nobody weighed, whichever way that went, and by nothing else', () => {
    const streams = [flow('back', 'b', 'a', null), flow('on', 'c', 'd', null), flow('away', 'e', OUTSIDE, null)];
    const measured = [flow('in', OUTSIDE, 'a', 5), flow('over', 'b', 'c', 4.99), flow('out', 'd', OUTSIDE, 4.97)];
    const found = reckon({ nodes: ['e', 'a', 'b', 'c', 'd'], streams: [...streams, ...measured] });
    expect(found.groups.map(({ nodes, testable, residualNg }) => [nodes, testable, residualNg])).toEqual([
      [['e'], false, 0],
      [['a', 'b'], true, 10_000_000],
      [['c', 'd'], true, 20_000_000],
    ]);
  });
  it('says so of a weighing at a node joined to the outside by an unmeasured flow', () => {
    const found = reckon({ nodes: ['bench'], streams: [flow('in', OUTSIDE, 'bench', 5), flow('dust', 'bench', OUTSIDE, null)] });
    expect(found.groups[0]?.testable).toBe(false);
    expect(found.streams[0]).toMatchObject({ checkable: false, detectableG: null });
    expect(found.unmeasured).toEqual([{ id: 'dust', g: 5 }]);
    expect(found.rank).toBe(0);
  });
  it('merges two nodes over a flow nobody weighed, and finds that flow', () => {
    const streams = [flow('in', OUTSIDE, 'a', 5), flow('across', 'a', 'b', null), flow('out', 'b', OUTSIDE, 4.99)];
    const found = reckon({ nodes: ['a', 'b'], streams });
    expect(found.groups).toHaveLength(1);
    expect(found.groups[0]).toMatchObject({ nodes: ['a', 'b'], testable: true, residualNg: 10_000_000 });
    expect(found.unmeasured[0]?.g).toBeCloseTo(4.995, 9);
  });
  it('leaves two unmeasured flows side by side open', () => {
    const streams = [flow('in', OUTSIDE, 'a', 5), flow('one', 'a', 'b', null), flow('two', 'a', 'b', null), flow('out', 'b', OUTSIDE, 5)];
    expect(reckon({ nodes: ['a', 'b'], streams }).unmeasured.map(({ g }) => g)).toEqual([null, null]);
  });
  it('refuses a flow to a place it does not know', () => {
    expect(() => reckon({ nodes: ['a'], streams: [flow('in', OUTSIDE, 'b', 5)] })).toThrow(RangeError);
  });
});

describe('a transfer weighed at both ends', () => {
  it('is tested by its own pass-through node', () => {
    const streams = [flow('sent', OUTSIDE, 'courier', 20, 0.005), flow('arrived', 'courier', OUTSIDE, 19.9, 0.005)];
    const found = reckon({ nodes: ['courier'], streams });
    expect(found.suspects[0]?.suspects.map(named)).toEqual(['sent', 'arrived', 'loss at courier']);
  });
});

describe('a small flow', () => {
  it('never comes out below zero, and says where it was held', () => {
    const streams = [flow('in', OUTSIDE, 'a', 5, 0.01), flow('dust', 'a', OUTSIDE, 0.001, 0.01), flow('out', 'a', OUTSIDE, 5.02, 0.01)];
    const found = reckon({ nodes: ['a'], streams });
    expect(found.streams.map(({ fixedAtZero }) => fixedAtZero)).toEqual([false, true, false]);
    expect(found.streams.map(({ reconciledG }) => Number(reconciledG.toFixed(9)))).toEqual([5.01, 0, 5.01]);
  });
});

describe('a balance that has drifted', () => {
  it('is one of the suspects by name', () => {
    const gain = (grams: number) => [{ id: 'gain:B1:2026a', sensitivityG: 1e-3 * grams }];
    const streams = [
      { ...flow('in', OUTSIDE, 'a', 100, 0.005), factors: gain(100) },
      flow('between', 'a', 'b', 100.6, 0.005),
      { ...flow('out', 'b', OUTSIDE, 100, 0.005), factors: gain(100) },
    ];
    const found = reckon({ nodes: ['a', 'b'], streams });
    expect(found.suspects.flatMap(({ suspects }) => suspects.map(named))).toContain('gain:B1:2026a');
  });
});

describe('dependent balances', () => {
  it('of a closed ring cost one rank and upset nothing', () => {
    const streams = [flow('ab', 'a', 'b', 5), flow('bc', 'b', 'c', 5.01), flow('ca', 'c', 'a', 4.99)];
    const found = reckon({ nodes: ['a', 'b', 'c'], streams });
    expect(found.rank).toBe(2);
    expect(found.streams.map(({ reconciledG }) => Number(reconciledG.toFixed(6)))).toEqual([5, 5, 5]);
  });
  it('with flows known beyond any balance do not divide by zero', () => {
    const found = reckon({ nodes: ['a'], streams: [flow('in', OUTSIDE, 'a', 5, 0), flow('out', 'a', OUTSIDE, 5, 0)] });
    expect(found.gamma).toBe(0);
    expect(found.p).toBe(1);
  });
});

describe('curved balances', () => {
  it('find the nearest point of a hyperbola', () => {
    // By hand: the point of x·y = 4 nearest to (3, 3) is (2, 2), at a squared distance of 2.
    const { x, gamma } = adjustCurved([3, 3], diagonal([1, 1]), ([a = 0, b = 0]) => ({ values: [a * b - 4], slopes: [[b, a]] }));
    expect(x[0]).toBeCloseTo(2, 9);
    expect(x[1]).toBeCloseTo(2, 9);
    expect(gamma).toBeCloseTo(2, 9);
  });
});

describe('a flow that nobody weighed, between two that nobody weighed', () => {
  it('is settled where it alone joins two sides, however many unweighed flows lie within each', () => {
    const streams = [
      flow('in', OUTSIDE, 'a', 10),
      ...[
        flow('one', 'a', 'b', null),
        flow('two', 'a', 'b', null),
        flow('bridge', 'b', 'c', null),
        flow('three', 'c', 'd', null),
        flow('four', 'c', 'd', null),
      ],
      flow('off', 'b', OUTSIDE, 3),
      flow('out', 'd', OUTSIDE, 7),
    ];
    const found = new Map(reckon({ nodes: ['a', 'b', 'c', 'd'], streams }).unmeasured.map(({ id, g }) => [id, g]));
    expect(found.get('bridge')).toBeCloseTo(7, 9);
    for (const id of ['one', 'two', 'three', 'four']) expect(found.get(id)).toBeNull();
  });
});
