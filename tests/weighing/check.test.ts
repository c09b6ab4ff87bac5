import { describe, expect, it } from 'vitest';
import { massNg } from '../../src/units/mass.ts';
import { dailyCheck, weighingsInDoubt } from '../../src/weighing/check.ts';
import { repeatability } from '../../src/weighing/repeatability.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));

describe('the daily check with a certified weight', () => {
  // In-service limit at 50 g, class II, e = 0.01 g: 0.010 g (SI 1995/1907 Sch. 2, Table 3 and para 4.2); the half is common practice.
  it.each([
    [50.005, 'pass'],
    [50.006, 'warn'],
    [49.99, 'warn'],
    [49.989, 'fail'],
  ] as const)('of 50 g showing %d g is a %s', (reading, result) => {
    expect(dailyCheck('II', g(0.01), g(50), g(reading))?.result).toBe(result);
  });
  it('cannot be made beyond the class', () => {
    expect(dailyCheck('III', g(0.1), g(2000), g(2000))).toBeNull();
  });
});

describe('a failed check', () => {
  const weighings = [10, 20, 30, 40, 50].map((atMs) => ({ id: `at ${atMs}`, atMs }));
  it('puts in doubt every weighing since the last pass, and those until the next one', () => {
    const checks = [
      { atMs: 35, result: 'fail' as const },
      { atMs: 15, result: 'pass' as const },
      { atMs: 45, result: 'pass' as const },
    ];
    expect(weighingsInDoubt(checks, weighings)).toEqual(['at 20', 'at 30', 'at 40']);
  });
  it('leaves a warning alone', () => {
    expect(weighingsInDoubt([{ atMs: 15, result: 'warn' }], weighings)).toEqual([]);
  });
  it('doubts all there is when no check ever passed', () => {
    expect(weighingsInDoubt([{ atMs: 60, result: 'fail' }], weighings)).toHaveLength(5);
  });
});

describe('repeatability', () => {
  it('is the standard deviation of repeated readings', () => {
    // By hand: 2 4 4 4 5 5 7 9 has mean 5 and squares about it that add up to 32.
    const found = repeatability([2, 4, 4, 4, 5, 5, 7, 9].map((mg) => mg * 1_000_000));
    expect(found?.meanG).toBeCloseTo(0.005, 15);
    expect(found?.sG).toBeCloseTo(Math.sqrt(32 / 7) / 1000, 15);
    expect(found?.dof).toBe(7);
  });
  it('does not lose a small spread under a large load', () => {
    expect(repeatability([500_000_000_001, 500_000_000_002, 500_000_000_003])?.sG).toBeCloseTo(1e-9, 18);
  });
  it('needs two readings', () => {
    expect(repeatability([1])).toBeNull();
  });
});
