// Ring sizes: labels are only names of a measured circumference. Printed sizes are among the check rows.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  circumferenceOf,
  formatRingSize,
  labelOf,
  RING_SYSTEMS,
  type RingSystem,
  usByDefinitionMm,
  usStepMm,
} from '../../src/units/ring-size.ts';

const system = fc.constantFrom(...(Object.keys(RING_SYSTEMS) as RingSystem[]));

describe('a ring size', () => {
  it('read back from its label lies within half a grain of what was measured', () => {
    fc.assert(
      fc.property(system, fc.double({ min: 41, max: 76, noNaN: true }), (of, mm) => {
        const label = labelOf(of, mm);
        const back = label === null ? null : circumferenceOf(of, label);
        if (back === null) throw new Error(`${of} ${mm}: ${label}`);
        const { grain, mm: sizeMm } = RING_SYSTEMS[of];
        expect(Math.abs(back - mm)).toBeLessThanOrEqual((sizeMm(grain) - sizeMm(0)) / 2 + 1e-9);
      }),
    );
  });

  it('grows with its number in every system', () => {
    fc.assert(
      fc.property(system, fc.integer({ min: 1, max: 20 }), (of, n) => {
        expect(RING_SYSTEMS[of].mm(n + 1)).toBeGreaterThan(RING_SYSTEMS[of].mm(n));
      }),
    );
  });

  it.each([
    ['us', '7', 54.42],
    ['us', '7.25', 55.06],
    ['us', '7 1/4', 55.06],
    ['us', '7¼', 55.06],
    ['uk', 'N', 53.75],
    ['uk', 'n 1/2', 54.375],
    ['uk', 'N½', 54.375],
    ['uk', 'Z+1', 70],
    ['iso', '54', 54],
    ['ch', '14', 54],
    ['jp', '13', 53.407],
  ] as const)('%s %s is %d mm round', (of, label, mm) => {
    expect(circumferenceOf(of, label)).toBeCloseTo(mm, 2);
  });

  it.each([
    ['us', 'N'],
    ['uk', '7'],
    ['uk', 'A+1'],
    ['uk', 'AA'],
    ['iso', '-4'],
    ['us', ''],
  ] as const)('%s has no size %j', (of, label) => {
    expect(circumferenceOf(of, label)).toBeNull();
  });

  it('is said with what was measured and on what', () => {
    expect(formatRingSize({ insideCircumferenceMm: 54.42, system: 'us', gauge: 'steel mandrel' })).toBe(
      'US 7, 54.4\u00a0mm inside, steel mandrel',
    );
    expect(formatRingSize({ insideCircumferenceMm: 30, system: 'us', gauge: 'steel mandrel' })).toBe('30.0\u00a0mm inside, steel mandrel');
  });

  // One dictionary confuses the two scales: ISO 8653 is the circumference, the Swiss number is that less 40 (WRS, ENA).
  it('by ISO is the circumference and by the Swiss scale 40 less', () => {
    expect(labelOf('iso', 54)).toBe('54');
    expect(labelOf('ch', 54)).toBe('14');
  });

  // A retail chart prints US 7 as 17.12 mm across, which is 6¾.
  it('of 17.12 mm across is US 6¾ and not 7', () => {
    expect(labelOf('us', 17.12 * Math.PI)).toBe('6¾');
  });

  it('of the US differs between definitions in print by a tenth of a size', () => {
    const all = Object.values(usByDefinitionMm(7));
    expect(Math.max(...all) - Math.min(...all)).toBeGreaterThan(usStepMm(0.09).circumference);
    expect(Math.max(...all) - Math.min(...all)).toBeLessThan(usStepMm(0.11).circumference);
  });
});
