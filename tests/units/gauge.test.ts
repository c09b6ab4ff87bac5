// Wire gauges against printed tables.
import { describe, expect, it } from 'vitest';
import { awgMm, readGauge, swgMm } from '../../src/units/gauge.ts';

describe('a gauge', () => {
  // mm column printed beside the inches at engineeringtoolbox.com/swg-standard-wire-gauge-d_1779.html (its 1/0, 8.236, is a slip for 8.230)
  it.each([
    [-6, 12.7],
    [-5, 11.786],
    [-3, 10.16],
    [1, 7.62],
    [8, 4.064],
    [16, 1.626],
    [18, 1.219],
    [20, 0.914],
    [24, 0.559],
    [27, 0.417],
    [30, 0.315],
    [36, 0.193],
    [40, 0.122],
    [45, 0.071],
    [50, 0.025],
  ])('SWG %d is %d mm', (n, mm) => {
    expect(swgMm(n)).toBeCloseTo(mm, 3);
  });

  // The legal table is straight between these corners, in inches (GNU units 2.22, brwiregauge).
  it('of the British system is straight between the corners of the legal table', () => {
    const corners: readonly (readonly [number, number])[] = [
      [-6, 0.5],
      [-5, 0.464],
      [-3, 0.4],
      [-2, 0.372],
      [3, 0.252],
      [6, 0.192],
      [10, 0.128],
      [14, 0.08],
      [19, 0.04],
      [23, 0.024],
      [26, 0.018],
      [28, 0.0148],
      [30, 0.0124],
      [39, 0.0052],
      [49, 0.0012],
      [50, 0.001],
    ];
    for (const [i, [from, start]] of corners.slice(0, -1).entries()) {
      const [to, end] = corners[i + 1] ?? [from, start];
      for (let n = from; n <= to; n++) {
        expect(swgMm(n), `SWG ${n}`).toBeCloseTo((start + ((end - start) * (n - from)) / (to - from)) * 25.4, 9);
      }
    }
  });

  // ASTM B258: 4/0 is 0.4600 in and 36 is 0.0050 in by definition
  it('of the American system runs from 0.46 in to 0.005 in', () => {
    expect(awgMm(-3)).toBeCloseTo(0.46 * 25.4, 9);
    expect(awgMm(36)).toBeCloseTo(0.005 * 25.4, 9);
    expect(awgMm(0) / awgMm(6)).toBeCloseTo(2.005, 3);
  });

  it('without its system is refused, since 18 is 1.024 mm or 1.219 mm', () => {
    expect(readGauge('18')).toEqual({ problem: 'which gauge' });
    expect(readGauge('18 ga')).toEqual({ problem: 'which gauge' });
    expect(readGauge('18 AWG')).toMatchObject({ system: 'awg', mm: expect.closeTo(1.024, 3) });
    expect(readGauge('18 B&S')).toMatchObject({ system: 'awg' });
    expect(readGauge('18 swg')).toMatchObject({ system: 'swg', mm: expect.closeTo(1.219, 3) });
    expect(readGauge('2/0 SWG')).toMatchObject({ mm: expect.closeTo(8.839, 3) });
    expect(readGauge('6/0 AWG')).toEqual({ problem: 'not a gauge' });
    expect(readGauge('thick')).toEqual({ problem: 'not a gauge' });
  });

  it('outside its table throws', () => {
    for (const n of [-7, 51, 1.5]) expect(() => swgMm(n)).toThrow(RangeError);
    for (const n of [-4, 51, 1.5]) expect(() => awgMm(n)).toThrow(RangeError);
  });
});
