// The same history through the real store: live = rebuild = audit = what a start folds, and one batch gives what one at a time gives.
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Command } from '../../src/ledger/leaf.ts';
import { troubleAtStart } from '../../src/store/at-start.ts';
import { rebuild } from '../../src/store/replay.ts';
import { keptAll, thingOf } from '../../src/store/shelf.ts';
import { histories, linesOf, played } from '../histories.ts';
import { beginning, type Look, namesFrom } from '../memory-ledger.ts';
import { openShop, type Shop } from '../shop.ts';
import { audited } from '../store/audited.ts';

const rowsOf = ({ store }: Shop) => store.read('SELECT id, kind, stream, status, stones, words, state FROM thing ORDER BY n');

/** The commands of a history, as the pure ledger took or refused them, with those that begin the shop. */
async function commandsOf(history: Parameters<typeof played>[0]): Promise<readonly Command[]> {
  const told: Command[] = [];
  await played(history, (_ledger, command) => void told.push(command));
  const names = namesFrom(1);
  const first = beginning(names).map((lines, index) => ({
    ...({ id: `begin-${index}`, by: names.owner, auth: 'password', device: 'test', lines, seen: { [names.shop]: index } } as const),
  }));
  return [...first, ...told];
}

/** The ledger as a step looks at it, read from the file. */
async function lookAt({ store }: Shop): Promise<Look> {
  const things = await store.read('SELECT state FROM thing ORDER BY n');
  const leaves = await store.read('SELECT seq, leaf, leaf_hash FROM entry ORDER BY seq');
  return { things: things.map(thingOf), leaves: await keptAll(store.read, store.keys, leaves) };
}

it('things written live are those a rebuild makes and those the audit folds', { timeout: 60_000 }, async () => {
  let corrected = 0;
  await fc.assert(
    fc.asyncProperty(histories(50), async (history) => {
      const shop = await openShop({ started: false });
      const names = namesFrom(1);
      for (const lines of beginning(names)) await shop.tell(lines, { by: names.owner });
      for (const step of history) {
        const look = await lookAt(shop);
        const lines = linesOf(step, look, names);
        if (lines.length > 0) await shop.tell(lines, { by: names.owner });
        corrected += lines.filter(({ type }) => type === 'corrected').length;
      }
      expect(await audited(shop.store)).not.toHaveProperty('bad');
      expect(await troubleAtStart(shop.store.read, join(shop.dir, 'ledger.db'))).toBeNull();
      const live = await rowsOf(shop);
      await rebuild(shop.store.file, shop.store.keys);
      expect(await rowsOf(shop)).toEqual(live);
      await shop.close();
    }),
    { numRuns: 6, seed: 8 },
  );
  expect(corrected).toBeGreaterThan(5);
});

it('commands in one batch give the same things as one at a time', { timeout: 60_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(histories(40, ['correct']), async (history) => {
      const commands = await commandsOf(history);
      const [together, alone] = [await openShop({ started: false }), await openShop({ started: false })];
      const batched = await Promise.all(commands.map((command) => together.store.record(command)));
      const one = [];
      for (const command of commands) one.push(await alone.store.record(command));
      expect(batched).toEqual(one);
      expect(one.filter(({ answer }) => answer === 'written').length).toBeGreaterThanOrEqual(5);
      expect(await rowsOf(together)).toEqual(await rowsOf(alone));
      const [checkpoints] = await together.store.read('SELECT COUNT(*) AS n FROM checkpoint');
      expect(Number(checkpoints?.n)).toBeLessThan(commands.length / 2);
      await together.close();
      await alone.close();
    }),
    { numRuns: 5, seed: 9 },
  );
});
