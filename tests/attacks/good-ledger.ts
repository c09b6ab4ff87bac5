// A good ledger of one small job, a backup taken of it before its last entries, and copies of it to be spoiled.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Client, createClient } from '@libsql/client';
import type { Command } from '../../src/ledger/leaf.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { instant } from '../../src/units/dates.ts';
import { line, openShop, SQL_DIR, seededBytes } from '../shop.ts';

export interface GoodLedger {
  /** How many entries it has. */
  readonly size: number;
  /** The backup: a data directory of its own, as it was before the last entries. */
  readonly older: string;
  /** A data directory like it, or like `from`, to be spoiled. */
  copy(from?: string): string;
  open(dir: string, seed?: number): Promise<Store>;
  note(id: string, text: string): Command;
  /** Closes what was opened and removes the copies. */
  tidy(): Promise<void>;
  remove(): void;
}

/** Writes the good ledger: entries 0 to 3 begin the shop, 4 to 6 are one command, 8 on are notes, each a command of its own. */
export async function goodLedger(): Promise<GoodLedger> {
  const home = mkdtempSync(join(tmpdir(), 'lemel-'));
  const [good, older] = [join(home, 'good'), join(home, 'older')];
  const first = await openShop({ dir: good });
  const [job, piece, lot, customer] = [first.newRef('job'), first.newRef('piece'), first.newRef('lot'), first.newRef('customer')];
  await first.write(
    line('customer_met', { customer, name: 'Ruth Abara', phone: '07700 900123' }),
    line('job_opened', { job, bag: first.newBag(), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece, kind: 'ring', description: 'Ring', stones: 3, weight: first.grams('6.82') },
      parts: [{ part: 'shank', metal: 'gold-750' }],
    }),
  );
  await first.write(line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' }));
  await first.close();
  cpSync(good, older, { recursive: true });
  const note: GoodLedger['note'] = (id, text) => ({
    ...{ id, by: first.owner, auth: 'session', device: 'test', seen: {} },
    lines: [line('note_added', { about: job, text })],
  });
  const shop = await openShop({ dir: good, seed: 2 });
  for (const text of ['one', 'two', 'three', 'four']) await shop.store.record(note(text, text));
  const { size } = await shop.store.issueCheckpoint();
  await shop.close();
  const opened: Store[] = [];
  const dirs: string[] = [];
  return {
    ...{ size, older, note },
    copy(from = good) {
      const dir = mkdtempSync(join(tmpdir(), 'lemel-'));
      dirs.push(dir);
      cpSync(from, dir, { recursive: true });
      return dir;
    },
    async open(dir, seed = 5) {
      const store = await openStore({ dir, sqlDir: SQL_DIR, clock: () => instant(Date.UTC(2026, 11, 2)), random: seededBytes(seed) });
      opened.push(store);
      return store;
    },
    async tidy() {
      for (const store of opened.splice(0)) await store.close();
      for (const dir of dirs.splice(0)) rmSync(dir, { recursive: true });
    },
    remove: () => rmSync(home, { recursive: true }),
  };
}

/** Runs statements past the guards, which are put back word for word. */
export async function tamper(dir: string, work: (db: Client) => Promise<unknown>): Promise<void> {
  const db = createClient({ url: `file:${join(dir, 'ledger.db')}`, concurrency: 1 });
  await db.execute('PRAGMA foreign_keys = OFF');
  const { rows } = await db.execute("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND name NOT LIKE 'find%'");
  for (const { name } of rows) await db.execute(`DROP TRIGGER ${name}`);
  await work(db);
  for (const { sql } of rows) await db.execute(String(sql));
  db.close();
}

/** The text of a leaf. */
export async function leafOf(db: Client, seq: number): Promise<string> {
  const { rows } = await db.execute({ sql: 'SELECT leaf FROM entry WHERE seq = ?', args: [seq] });
  return new TextDecoder().decode(rows[0]?.leaf as ArrayBuffer);
}
