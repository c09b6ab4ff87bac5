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

  // The steps of the legal table: 36 mils from 7/0 to 6/0, 32 to 5/0 and 4/0, down to 0.4 mil from 39 to 49 (encyclopaedia article "Standard wire gauge").
  it('of the British system goes down by the legal steps', () => {
    const step = (n: number) => Math.round(((swgMm(n) - swgMm(n + 1)) / 0.0254) * 10) / 10;
    expect([-6, -5, -4, -3, -2].map(step)).toEqual([36, 32, 32, 28, 24]);
    expect(Array.from({ length: 7 }, (_, i) => step(3 + i))).toEqual([20, 20, 20, 16, 16, 16, 16]);
    expect(Array.from({ length: 9 }, (_, i) => step(30 + i))).toEqual(Array(9).fill(0.8));
    expect(Array.from({ length: 10 }, (_, i) => step(39 + i))).toEqual(Array(10).fill(0.4));
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
