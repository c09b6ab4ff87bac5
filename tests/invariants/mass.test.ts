// Mass is conserved: an independent double entry over all flows, read as corrected, comes to what the things hold.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Kept } from '../../src/ledger/leaf.ts';
import { histories, played } from '../histories.ts';
import { doubleEntry } from './double-entry.ts';

describe('mass', () => {
  it('is in the holdings what came in less what went out, after every command', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(histories(40), async (history) => {
        await played(history, ({ overlay }) => {
          const sums = doubleEntry(overlay.written);
          const holdings = [...overlay.things.values()].map(({ id, posted }) => [id, posted.ng] as const);
          expect(holdings.filter(([id, ng]) => ng !== (sums.get(id) ?? 0))).toEqual([]);
          expect(holdings.reduce((sum, [, ng]) => sum + ng, 0) + (sums.get('outside') ?? 0)).toBe(0);
          expect(sums.get('between jobs') ?? 0).toBe(0);
        });
      }),
      { numRuns: 40, seed: 1 },
    );
  });

  it('counts as many stones in the things as came in less what went home', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(histories(40, ['correct', 'supply']), async (history) => {
        await played(history, ({ overlay }) => {
          const things = [...overlay.things.values()];
          for (const job of things.filter(({ kind }) => kind === 'job')) {
            const of = things.filter(({ stream }) => stream === job.id);
            const count = (which: (kind: string) => boolean) =>
              of.filter(({ kind }) => which(kind)).reduce((sum, { stones }) => sum + (stones ?? 0), 0);
            expect(job.stonesOut).toBe(count((kind) => kind === 'stone' || kind === 'packet'));
            expect(job.pieces).toBe(of.filter(({ kind, gone }) => kind === 'piece' && !gone).length);
            const received = overlay.written.filter(({ leaf }) => leaf.type === 'piece_received' && leaf.links[0].s === job.id);
            const gone = overlay.written.filter(({ leaf }) => leaf.type === 'piece_returned' && leaf.links[0].s === job.id);
            const sum = (kept: readonly Kept[]) => kept.reduce((stones, { leaf }) => stones + Number(leaf.data.stones), 0);
            if (overlay.written.every(({ leaf }) => leaf.type !== 'returned_with_exception')) {
              expect(count(() => true)).toBe(sum(received) - sum(gone));
            }
          }
        });
      }),
      { numRuns: 30, seed: 2 },
    );
  });
});
