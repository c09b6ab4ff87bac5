// Each hypothesis by the signature it would leave, and which of them are named.
import { describe, expect, it } from 'vitest';
import { adjust } from '../../src/reckoning/adjustment.ts';
import { diagonal } from '../../src/reckoning/matrix.ts';
import { hypothesesOf, isPlausible, nearBest, type Suspect, weighed } from '../../src/reckoning/suspects.ts';
import { massNg } from '../../src/units/mass.ts';

const read = (id: string, grams: number, factors: Readonly<Record<string, number>> = {}) => ({
  ...{ id, ng: massNg(Math.round(grams * 1e9)), uRandomG: 0.01 },
  factors: Object.entries(factors).map(([factor, sensitivityG]) => ({ id: factor, sensitivityG })),
});
const signaturesOf = (...[measured, a, reconciledG]: [ReturnType<typeof read>[], number[][], number[]]) =>
  hypothesesOf(
    a.map((_, i) => ({ nodes: [`step ${i}`] })),
    measured,
    a,
    reconciledG,
  );
const driftOf = (measured: ReturnType<typeof read>[], a: number[][], reconciledG: number[]) =>
  signaturesOf(measured, a, reconciledG).flatMap(({ hypothesis, signature }) => (hypothesis.fault === 'factor drifted' ? [signature] : []));

describe('what a fault would leave in each step', () => {
  it('is the way of the flow for a weighing, and one for a loss', () => {
    const a = [
      [1, -1, 0],
      [0, 1, -1],
    ];
    expect(signaturesOf([read('in', 5), read('between', 5), read('out', 5)], a, [5, 5, 5])).toEqual([
      { hypothesis: { fault: 'weighing wrong', stream: 'in' }, signature: [1, 0] },
      { hypothesis: { fault: 'weighing wrong', stream: 'between' }, signature: [-1, 1] },
      { hypothesis: { fault: 'weighing wrong', stream: 'out' }, signature: [0, -1] },
      { hypothesis: { fault: 'loss', nodes: ['step 0'] }, signature: [1, 0] },
      { hypothesis: { fault: 'loss', nodes: ['step 1'] }, signature: [0, 1] },
    ]);
  });
  it('is its share of the reconciled masses for a gain, whatever was read', () => {
    // By hand: a thousandth of 99 g in less a thousandth of 51 g out.
    const gain = [read('in', 100, { gain: 0.1 }), read('out', 50, { gain: 0.05 })];
    expect(driftOf(gain, [[1, -1]], [99, 51])).toEqual([[expect.closeTo(0.048, 12)]]);
    // A reading of nothing says nothing of the share.
    expect(driftOf([read('dust', 0, { gain: 0 }), ...gain], [[1, 1, -1]], [1, 99, 51])).toEqual([[expect.closeTo(0.049, 12)]]);
  });
  it('is what it weighs for a container, each time as much', () => {
    const tray = (grams: number) => read(`${grams}`, grams, { tray: -0.002 });
    expect(driftOf([tray(100), tray(50), tray(20)], [[1, -1, -1]], [100, 50, 20])).toEqual([[expect.closeTo(0.002, 12)]]);
    expect(driftOf([read('nothing', 0, { tray: -0.002 }), read('out', 5)], [[1, -1]], [0, 5])).toEqual([[-0.002]]);
  });
  it('is nothing where it cancels but for rounding', () => {
    const gain = (grams: number) => read(`${grams}`, grams, { gain: 0.001 * grams });
    expect(driftOf([gain(0.3), gain(0.1), gain(0.2)], [[1, -1, -1]], [0.3, 0.1, 0.2])).toEqual([[0]]);
    expect(driftOf([gain(0.3), gain(0.1), gain(0.2)], [[1, -1, -1]], [0.3, 0.1, 0.2000001])).toEqual([[expect.closeTo(-1e-10, 15)]]);
  });
});

describe('the sets of suspects', () => {
  const found = (residuals: readonly number[], a: number[][]) =>
    weighed(
      signaturesOf(
        (a[0] ?? []).map((_, j) => read(`${j}`, 5)),
        a,
        (a[0] ?? []).map(() => 5),
      ),
      adjust({ a, covariance: diagonal((a[0] ?? []).map(() => 1e-4)), residuals }),
    );
  it('hold together what would leave the same, either way round, and divide the level by their number', () => {
    // Šidák (1967): two-sided 5 % in all; 1.95996 for one, 2.23648 for two (1 − 0.95^(1/2) = 0.02532), independently with scipy.
    const one = found([0.1], [[1, -1]]);
    expect(one.sets).toHaveLength(1);
    expect(one.sets[0]?.suspects).toHaveLength(3);
    expect(one.criticalZ).toBeCloseTo(1.959964, 6);
    const two = found(
      [0.1, 0],
      [
        [1, 0],
        [0, 1],
      ],
    );
    expect(two.sets.map(({ suspects }) => suspects.length)).toEqual([2, 2]);
    expect(two.criticalZ).toBeCloseTo(2.236477, 6);
  });
  it('are none where there is nothing to be seen', () => {
    expect(weighed([], adjust({ a: [], covariance: [], residuals: [] }))).toEqual({ explained: [], sets: [], criticalZ: 0 });
  });
});

describe('those that are named', () => {
  const set = (z: number) => {
    const suspect: Suspect = { fault: 'loss', nodes: [`${z}`], size: z, u: 1 };
    return { best: { size: z, u: 1, z, t: z * z, direction: [1] }, suspects: [suspect] };
  };
  it('are within 3.84 of the best, best first, and told whether they pass the level', () => {
    // By hand: 25 − 3.84 = 21.16 = 4.6².
    const sets = [4.7, -5, 4.55, 4.61].map(set);
    const named = nearBest({ explained: [], sets, criticalZ: 4.7 });
    expect(named.map(({ z, significant }) => [z, significant])).toEqual([
      [-5, true],
      [4.7, true],
      [4.61, false],
    ]);
  });
  it('are no drift of more than five of its own u', () => {
    const drift = (size: number): Suspect => ({ fault: 'factor drifted', factor: 'gain', size, u: 1 });
    expect([5, -5, 5.01, -5.01].map((size) => isPlausible(drift(size)))).toEqual([true, true, false, false]);
    expect(isPlausible({ fault: 'loss', nodes: ['a'], size: 50, u: 1 })).toBe(true);
  });
});
