import { describe, expect, it } from 'vitest';
import { studentTail } from '../../src/reckoning/distributions.ts';
import { ACTION_ALPHA, dustUpper, levelAt, lossTail, NOTE_ALPHA, Z95 } from '../../src/reckoning/loss-law.ts';

describe('dust and weighing error together', () => {
  it('is the error alone where the dust is small, and the dust alone where the error is', () => {
    const small = { uG: 0.01, stepNg: 0, usual: { meanG: 1e-9, tauG: 1e-9 } };
    for (const r of [-0.02, 0.003, 0.031, 0.06]) expect(lossTail(r * 1e9, small) / studentTail(r / 0.01, 1e9)).toBeCloseTo(1, 4);
    const usual = { meanG: 0.1, tauG: 0.08 };
    for (const [z, p] of [
      [Z95, 0.05],
      [3.0902323061678132, 0.001],
    ] as const)
      expect(lossTail(dustUpper(usual, z) * 1e9, { uG: 1e-6, stepNg: 0, usual }) / p).toBeCloseTo(1, 3);
  });
  it('falls as the loss rises, from a chance of one to none', () => {
    const spread = { uG: 0.012, stepNg: 10_000_000, usual: { meanG: 0.03, tauG: 0.04 } };
    const ps = Array.from({ length: 400 }, (_, i) => lossTail((i - 100) * 10_000_000, spread));
    expect(ps.every((p, i) => p >= 0 && p <= 1 && (i === 0 || p <= (ps[i - 1] ?? 0)))).toBe(true);
    expect(ps[0]).toBeCloseTo(1, 9);
  });
  it('flags at the smallest step whose chance is allowed, dust or none', () => {
    for (const meanG of [0, 0.0004, 0.02, 0.3])
      for (const alpha of [NOTE_ALPHA, ACTION_ALPHA]) {
        const spread = { uG: 0.0163, stepNg: 10_000_000, usual: { meanG, tauG: 0.8 * meanG } };
        const { flagNg } = levelAt(alpha, spread);
        expect(lossTail(flagNg, spread)).toBeLessThanOrEqual(alpha);
        expect(lossTail(flagNg - 10_000_000, spread)).toBeGreaterThan(alpha);
      }
  });
});
