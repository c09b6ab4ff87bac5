// Several faults at once, by hand: whitened residuals of a few steps, and what each fault would leave in them.
import { describe, expect, it } from 'vitest';
import type { Vector } from '../../src/reckoning/matrix.ts';
import type { Suspect } from '../../src/reckoning/suspects.ts';
import { explanationsIn, together } from '../../src/reckoning/together.ts';

const dot = (a: Vector, b: Vector) => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
type Fault = readonly [direction: Vector, ...suspects: Suspect[]];
const loss = (name: string, u = 1): Suspect => ({ fault: 'loss', nodes: [name], size: 1, u });
const drift = (name: string, u = 1): Suspect => ({ fault: 'factor drifted', factor: name, size: 1, u });
const nameOf = (one: Suspect) => (one.fault === 'loss' ? one.nodes.join() : one.fault === 'factor drifted' ? one.factor : one.stream);
/** What explains these whitened residuals, of steps as many as they have: names of the suspects of each fault. */
function explained(white: Vector, ...faults: readonly Fault[]) {
  const sets = faults.map(([direction, ...suspects]) => {
    const z = dot(direction, white);
    return { best: { size: z, u: 1, z, t: z * z, direction }, suspects };
  });
  return together({ explained: [], sets, criticalZ: 4.5 }, { white, gamma: dot(white, white), rank: white.length });
}
const names = (found: ReturnType<typeof explained>) => found?.map((sets) => sets.map(({ suspects }) => suspects.map(nameOf).join('/')));

const A: Fault = [[1, 0], loss('a')];
const B: Fault = [[0, 1], loss('b')];

describe('a second fault', () => {
  it('is not sought where one is enough: where what it leaves is chance oftener than five times in a thousand', () => {
    // χ² of one degree of freedom: 7.879 is passed 5 times in 1000.
    expect(explained([6, 0], A, B)).toEqual([]);
    expect(explained([6, 2.8], A, B)).toEqual([]);
    expect(names(explained([6, 2.82], A, B))).toEqual([['a', 'b']]);
  });
  it('has its size beside the first, with the doubt that the other leaves it', () => {
    // By hand: 5·(1, 0) + 6·(0.6, 0.8); of two directions 0.6 alike each is known to 1/√(1 − 0.36) = 1.25.
    const [found] =
      explained([8.6, 4.8, 0], [[1, 0, 0], loss('a'), { ...loss('other way', 2), size: -1 }], [[0.6, 0.8, 0], loss('b')]) ?? [];
    expect(found).toMatchObject([
      {
        suspects: [
          { nodes: ['a'], size: expect.closeTo(5, 12), u: expect.closeTo(1.25, 12) },
          { nodes: ['other way'], size: expect.closeTo(-10, 12), u: expect.closeTo(2.5, 12) },
        ],
        z: expect.closeTo(4, 12),
        t: expect.closeTo(16, 12),
        significant: false,
      },
      { suspects: [{ nodes: ['b'], size: expect.closeTo(6, 12) }], z: expect.closeTo(4.8, 12), significant: true },
    ]);
  });
  it('is named with every other pair within 3.84 of the best, best first', () => {
    const others: readonly Fault[] = [
      [[0, 1, 0], loss('b')],
      [[0, 0.99, Math.sqrt(1 - 0.99 ** 2)], loss('c')],
      [[0, 0.9, -Math.sqrt(1 - 0.9 ** 2)], loss('d')],
    ];
    // By hand beside a: (5·0.99 + 0.141)² = 25.9 for c, 25 for b, (4.5 − 0.436)² = 16.5 for d.
    expect(names(explained([6, 5, 1], [[1, 0, 0], loss('a')], ...others))).toEqual([
      ['a', 'c'],
      ['a', 'b'],
    ]);
  });
});

describe('three faults', () => {
  const steps = ['a', 'b', 'c', 'd'].map((name, i): Fault => [[0, 1, 2, 3].map((j) => Number(i === j)), loss(name)]);
  it('are sought where two leave too much', () => {
    expect(names(explained([6, 5, 7, 2.8], ...steps))).toEqual([['a', 'b', 'c']]);
  });
  it('are the most: where they leave too much nothing is pointed at', () => {
    expect(explained([6, 5, 7, 2.82], ...steps)).toBeNull();
  });
});

describe('a fault that cannot be', () => {
  it('is in no explanation, while another that leaves the same may be', () => {
    const along: Fault = [[0.98, Math.sqrt(1 - 0.98 ** 2)], loss('w')];
    expect(names(explained([6, 5], [[1, 0], drift('gain')], B, along))).toEqual([['b', 'w']]);
    expect(names(explained([6, 5], [[1, 0], drift('gain'), loss('a')], B))).toEqual([['a', 'b']]);
    expect(names(explained([6, 5], [[1, 0], drift('gain', 0.8)], B))).toEqual([['gain', 'b']]);
  });
  it('explains nothing where there is no other', () => {
    expect(explained([6, 5], [[1, 0], drift('gain')], [[0, 1], drift('slope')])).toEqual([]);
  });
});

describe('what may be wrong', () => {
  it('is each single fault, or several together where one is not enough, or nothing', () => {
    const set = (name: string) => ({ suspects: [loss(name)], z: 5, t: 25, significant: true });
    const suspects = [set('a'), set('b')];
    expect(explanationsIn({ suspects, together: [] })).toEqual([[set('a')], [set('b')]]);
    expect(explanationsIn({ suspects, together: [[set('a'), set('b')]] })).toEqual([[set('a'), set('b')]]);
    expect(explanationsIn({ suspects, together: null })).toEqual([]);
  });
});
