// Every other seed of a run, as tests: each named by its seed, so that one that fails can be played alone.
import { describe, expect, it } from 'vitest';
import { CLAIMS, noClaims } from './said.ts';
import { simulate } from './simulate.ts';

const FROM = Number(process.env.LEMEL_SEED ?? 1);
const COUNT = Number(process.env.LEMEL_SEEDS ?? 200);

/** Tests of the even (0) or odd (1) seeds. LEMEL_SEED=17 LEMEL_SEEDS=1 plays one alone. */
export function playSeeds(parity: 0 | 1): void {
  const seeds = Array.from({ length: COUNT }, (_, i) => FROM + i).filter((seed) => seed % 2 === parity);
  const claims = noClaims();
  const befell = new Map<string, number>();
  describe('a simulated shop', () => {
    it.each(seeds)('keeps its record and says what is true: seed %i', async (seed) => {
      for (const [what, times] of await simulate(seed, claims)) befell.set(what, (befell.get(what) ?? 0) + times);
    });
    it('says so 95 times in 100 where that is what it claims', () => {
      console.info(JSON.stringify({ shops: seeds.length, claims, befell: Object.fromEntries(befell) }));
      for (const claim of CLAIMS) {
        const { held, of } = claims[claim];
        // Three standard deviations of a count below what is claimed: fewer would not be chance.
        expect(held, claim).toBeGreaterThanOrEqual(0.95 * of - 3 * Math.sqrt(0.95 * 0.05 * of));
      }
      if (seeds.length >= 50) expect([Math.min(...CLAIMS.map((claim) => claims[claim].of)) > 0, befell.size]).toEqual([true, 10]);
    });
  });
}
