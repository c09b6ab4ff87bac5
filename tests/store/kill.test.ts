// kill -9 in the midst of writing, thirty times over: whatever was acknowledged is there, once, and the record is whole, photographs and all.
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { instant } from '../../src/units/dates.ts';
import { BUILD } from '../build.ts';
import { line, openShop, SQL_DIR, seededBytes } from '../shop.ts';
import { audited, writtenIn } from './audited.ts';
import { killedAfter } from './killed.ts';

it('keeps every acknowledged command once through thirty kills under load', { timeout: 120_000 }, async () => {
  const dir = mkdtempSync(join(tmpdir(), 'lemel-'));
  const program = join(BUILD, 'src');
  const shop = await openShop({ dir });
  const job = shop.newRef('job');
  await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
  await shop.close();
  mkdirSync(join(dir, 'photos'));
  const random = seededBytes(11);
  const acknowledged: string[] = [];
  for (let kill = 0; kill < 30; kill++) {
    const args = [join(import.meta.dirname, 'writer.mjs'), program, dir, SQL_DIR, job, shop.owner, `k${kill}`];
    acknowledged.push(...(await killedAfter(args, 5 + ((random(1)[0] ?? 0) >> 2))));

    const store = await openStore({ dir, sqlDir: SQL_DIR, clock: () => instant(Date.now()), random });
    expect(store.readOnly).toBeNull();
    const written = await writtenIn(store);
    const parts = new Map<string, number>();
    for (const { command } of written) parts.set(command, (parts.get(command) ?? 0) + 1);
    // Odd turns write one entry, even turns two.
    const should = acknowledged.map((id) => [id, Number(id.split('-').at(-1)) % 2 === 0 ? 2 : 1]);
    expect(acknowledged.map((id) => [id, parts.get(id) ?? 0])).toEqual(should);
    if (kill % 10 === 9) {
      const found = await audited(store);
      expect(found).toMatchObject({ size: written.length, photographsMissing: 0, told: [] });
      expect('photographs' in found && found.photographs).toBeGreaterThan(kill);
    }
    await store.close();
    expect(readdirSync(join(dir, 'photos')).filter((name) => !name.endsWith('.webp'))).toEqual([]);
  }
  expect(new Set(acknowledged).size).toBe(acknowledged.length);
  rmSync(dir, { recursive: true });
});
