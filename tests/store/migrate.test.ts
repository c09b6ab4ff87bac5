// Schemas grow by numbered files: a copy is made first, a file edited later or a schema from the future is refused.
import { appendFileSync, cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SchemaMismatch } from '../../src/store/migrate.ts';
import { openStore } from '../../src/store/open.ts';
import { pruneCommands } from '../../src/store/rows.ts';
import { openFile } from '../../src/store/sqlite.ts';
import { type Instant, instant } from '../../src/units/dates.ts';
import { line, openShop, type Shop, SQL_DIR, seededBytes } from '../shop.ts';
import { audited } from './audited.ts';

let home: string;
let sqlDir: string;
let shop: Shop;
let now: Instant;
beforeEach(async () => {
  home = mkdtempSync(join(tmpdir(), 'lemel-'));
  sqlDir = join(home, 'sql');
  cpSync(SQL_DIR, sqlDir, { recursive: true });
  shop = await openShop({ dir: join(home, 'data') });
  now = shop.clock.now;
  await shop.write(line('place_named', { place: shop.newRef('place'), name: 'Safe', kind: 'safe' }));
  await shop.close();
});
afterEach(() => rmSync(home, { recursive: true }));

const open = () => openStore({ dir: join(home, 'data'), sqlDir, clock: () => now, random: seededBytes(3) });
const MORE = `CREATE TABLE more (
  a TEXT NOT NULL
) STRICT;
INSERT INTO more VALUES ('one; of two');
DROP TRIGGER node_no_delete;
CREATE TRIGGER node_no_delete BEFORE DELETE ON node
BEGIN
  SELECT RAISE (ABORT, 'nodes stay');
END;
`;

describe('a migration', () => {
  it('is run once, after a copy of what there was', async () => {
    writeFileSync(join(sqlDir, 'ledger-9001.sql'), MORE);
    const store = await open();
    expect(await store.read('SELECT a FROM more')).toEqual([{ a: 'one; of two' }]);
    expect(await audited(store)).toMatchObject({ size: 5 });
    await store.close();
    expect(readdirSync(join(home, 'data/backups'))).toEqual(['before-ledger-9001.sql.db']);
    const copy = openFile(join(home, 'data/backups/before-ledger-9001.sql.db'));
    expect(await copy.read('SELECT COUNT(*) AS n FROM entry')).toEqual([{ n: 5 }]);
    expect(await copy.read("SELECT name FROM sqlite_schema WHERE name = 'more'")).toEqual([]);
    await copy.close();
    await (await open()).close();
  });

  it('that fails leaves the schema and the data as they were', async () => {
    writeFileSync(join(sqlDir, 'ledger-9001.sql'), `${MORE}INSERT INTO nowhere VALUES (1);\n`);
    await expect(open()).rejects.toMatchObject({ code: 'SQLITE_ERROR' });
    rmSync(join(sqlDir, 'ledger-9001.sql'));
    const store = await open();
    expect(await store.read("SELECT name FROM sqlite_schema WHERE name = 'more'")).toEqual([]);
    expect(await audited(store)).toMatchObject({ size: 5 });
    await store.close();
  });

  it('that was edited after it ran is refused', async () => {
    appendFileSync(join(sqlDir, 'ledger-0001.sql'), '-- a word\n');
    await expect(open()).rejects.toBeInstanceOf(SchemaMismatch);
  });

  it('of a newer program stops an older one', async () => {
    writeFileSync(join(sqlDir, 'keys-9001.sql'), 'CREATE TABLE more (a TEXT) STRICT;\n');
    await (await open()).close();
    rmSync(join(sqlDir, 'keys-9001.sql'));
    await expect(open()).rejects.toBeInstanceOf(SchemaMismatch);
  });
});

describe('forms that were answered', () => {
  const commands = 'SELECT COUNT(*) AS n FROM command';
  const form = (again: Shop, name: string) => line('place_named', { place: again.newRef('place'), name, kind: 'safe' });

  it('a month before the last one are forgotten, and their entries are not', async () => {
    const later = instant(now + 31 * 86_400_000);
    const again = await openShop({ dir: join(home, 'data'), clock: () => later, seed: 5 });
    await pruneCommands(again.store.file, 0);
    expect(await again.store.read(commands)).toEqual([{ n: 2 }]);
    await again.tell([form(again, 'Vault')], { by: shop.owner });
    await pruneCommands(again.store.file, 0);
    expect(await again.store.read(commands)).toEqual([{ n: 1 }]);
    expect(await audited(again.store)).toMatchObject({ size: 6 });
    await again.close();
  });

  it('are remembered though the clock is four years ahead for a while, and put right', async () => {
    const clock = { at: now };
    const at = () => clock.at;
    const again = await openShop({ dir: join(home, 'data'), clock: at, seed: 5 });
    const first = form(again, 'Vault');
    const answer = await again.tell([first], { by: shop.owner, id: 'before' });
    clock.at = instant(now + 4 * 365 * 86_400_000);
    await again.tell([form(again, 'Strongroom')], { by: shop.owner });
    clock.at = instant(now + 60_000);
    await again.tell([form(again, 'Drawer')], { by: shop.owner });
    await again.close();
    const store = await openStore({ dir: join(home, 'data'), sqlDir, clock: at, random: seededBytes(6) });
    expect([store.readOnly, store.told]).toEqual([null, []]);
    expect(await store.recorded({ id: 'before', by: shop.owner, lines: [first] })).toEqual(answer);
    expect(await audited(store)).toMatchObject({ size: 8, told: [] });
    await store.close();
  });
});
