// What a leaf may touch and tell: flows stay within its links, it tells of one job at most, and of no other job at all.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factsOf } from '../../src/ledger/corrections.ts';
import type { Kept } from '../../src/ledger/leaf.ts';
import type { Thing } from '../../src/ledger/thing.ts';
import { histories, played } from '../histories.ts';

/** Everything by which a job could be known again: its things, its customer, its words, its salts, its digests and hashes. */
function tellTales(job: Thing, things: readonly Thing[], leaves: readonly Kept[]): readonly string[] {
  const own = leaves.filter(({ leaf }) => leaf.links[0].s === job.id);
  const words = own.flatMap(({ leaf, opened }) =>
    Object.values({ ...leaf.data, ...opened }).filter((value) => String(value).startsWith('words ')),
  );
  const ids = things.filter(({ stream }) => stream === job.id).map(({ id }) => id);
  const secrets = own.flatMap(({ leaf, hash, opened }) => [
    leaf.salt,
    hash,
    ...Object.values(leaf.sealed ?? {}),
    String(opened.customer ?? job.id),
  ]);
  return [...new Set([...ids, ...words.map(String), ...secrets])];
}

/** A leaf's text without what jobs may share: the command, and what a common lot, stock or skin says of itself. */
function ownText({ leaf }: Kept, things: ReadonlyMap<string, Thing>): string {
  const links = leaf.links.filter(({ s }) => things.get(s)?.kind === 'job');
  return JSON.stringify({ ...leaf, command: '', links });
}

describe('a leaf', () => {
  it('holds its flows within the streams it links, and links one job at most', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(histories(40), async (history) => {
        const { overlay } = await played(history);
        for (const { leaf } of overlay.written) {
          const linked = leaf.links.map(({ s }) => s);
          const ends = factsOf(leaf).flatMap((one) => (one.fact === 'flow' ? [one.from, one.to] : []));
          const holdings = ends.flatMap((end) => overlay.things.get(end) ?? []);
          expect(holdings.filter(({ stream }) => !linked.includes(stream))).toEqual([]);
          expect(linked.filter((stream) => overlay.things.get(stream)?.kind === 'job').length).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  it('of one job tells nothing of another', { timeout: 60_000 }, async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(histories(40), async (history) => {
        const { overlay } = await played(history);
        const things = [...overlay.things.values()];
        const jobs = things.filter(({ kind }) => kind === 'job');
        for (const job of jobs) {
          const texts = overlay.written
            .filter(({ leaf }) => leaf.links.some(({ s }) => s === job.id))
            .map((kept) => ownText(kept, overlay.things));
          for (const other of jobs) {
            if (other === job) continue;
            const tales = tellTales(other, things, overlay.written);
            compared += tales.length;
            expect(tales.filter((tale) => texts.some((text) => text.includes(tale)))).toEqual([]);
          }
        }
      }),
      { numRuns: 60, seed: 6 },
    );
    expect(compared).toBeGreaterThan(1000);
  });

  it('of a job never names its customer, nor says a word that was sealed', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(histories(30), async (history) => {
        const { overlay } = await played(history);
        const sealed = overlay.written.flatMap(({ opened }) => Object.values(opened).map(String));
        const customers = overlay.written.filter(({ leaf }) => leaf.type !== 'customer_met').map(({ leaf }) => JSON.stringify(leaf));
        const met = [...overlay.things.values()].filter(({ kind }) => kind === 'customer').map(({ id }) => id);
        expect(met.filter((id) => customers.some((text) => text.includes(id)))).toEqual([]);
        const all = overlay.written.map(({ leaf }) => JSON.stringify(leaf));
        expect(sealed.filter((value) => !met.includes(value as never) && all.some((text) => text.includes(value)))).toEqual([]);
      }),
      { numRuns: 40, seed: 7 },
    );
  });
});
