// An auditor who reads the raw leaves with plain loops comes to the same sums as the reckoning, on random histories.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balancesIn } from '../../src/projections/balances.ts';
import { reckonJob } from '../../src/projections/job-reckoning.ts';
import { told } from '../../src/projections/told.ts';
import { histories, played } from '../histories.ts';
import { expectedFigures } from './auditor.ts';

describe('an auditor with plain loops', () => {
  it('comes to the same weights in, losses and contents for every job', { timeout: 120_000 }, async () => {
    let closed = 0;
    await fc.assert(
      fc.asyncProperty(histories(45), async (history) => {
        const ledger = await played(history);
        const { leaves, things } = ledger.look();
        const balances = balancesIn(told(leaves));
        for (const { id } of things.filter(({ kind }) => kind === 'job')) {
          const own = leaves.filter(({ leaf }) => leaf.links.some(({ s }) => s === id));
          const reckoned = reckonJob(own, { balances, size: leaves.length });
          const { verdict, lossNg } = reckoned.closed ?? {};
          const found = {
            cameIn: reckoned.cameIn?.ng ?? null,
            loss: verdict === undefined ? null : verdict === 'not checked' ? verdict : lossNg,
            there: reckoned.expected?.ng ?? null,
          };
          expect(found).toEqual(expectedFigures(own));
          if (typeof found.loss === 'number') closed++;
        }
      }),
      { numRuns: 120, seed: 7 },
    );
    expect(closed).toBeGreaterThan(50);
  });
});
