// What a bad day does to a ledger: locks held elsewhere, commits that fail or only say so, a full disk, a damaged file.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { Answer, Command } from '../../src/ledger/leaf.ts';
import { connect, StorageFault } from '../../src/store/connection.ts';
import { ReadOnly } from '../../src/store/guard.ts';
import { openStore } from '../../src/store/open.ts';
import { line, openShop, type Shop, SQL_DIR, seededBytes } from '../shop.ts';
import { audited, writtenIn } from './audited.ts';
import { faulty } from './faulty.ts';

const dirs: string[] = [];
const newDir = () => {
  const dir = mkdtempSync(join(tmpdir(), 'lemel-'));
  dirs.push(dir);
  return dir;
};
afterEach(() => {
  for (const dir of dirs.splice(0)) rmSync(dir, { recursive: true });
});

async function shopWithJob(dir: string) {
  const shop = await openShop({ dir });
  const job = shop.newRef('job');
  await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
  const note = (id: string, texts: readonly string[]): Command => ({
    ...{ id, by: shop.owner, auth: 'session', device: 'test', seen: {} },
    lines: texts.map((text) => line('note_added', { about: job, text })),
  });
  return { shop, note };
}
const reopened = (shop: Shop, dir: string, through?: typeof connect) =>
  openStore({ dir, sqlDir: SQL_DIR, clock: () => shop.clock.now, random: seededBytes(9), ...(through ? { connect: through } : {}) });

describe('a ledger on a bad day', () => {
  it('loses nothing and doubles nothing of 600 commands, under an outside lock and failing commits', { timeout: 120_000 }, async () => {
    const dir = newDir();
    const { shop, note } = await shopWithJob(dir);
    await shop.close();
    const { connect: through, happened } = faulty(7, { busy: 2, lostBefore: 25, lostAfter: 25 });
    const store = await reopened(shop, dir, through);
    const hog = spawn(process.execPath, [join(import.meta.dirname, 'hog.mjs'), join(dir, 'ledger.db')], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    let bursts = 0;
    hog.stdout.on('data', () => bursts++);
    await once(hog.stdout, 'data');
    const answers = new Map<string, Answer[]>();
    const call = async (caller: number) => {
      for (let turn = 0; turn < 50; turn++) {
        const id = `c${caller}-${turn}`;
        const command = note(id, turn % 4 === 0 ? [id, `${id} again`] : [id]);
        // Every fifth form is sent twice at once, as a double tap does.
        const sent = turn % 5 === 0 ? [store.record(command), store.record(command)] : [store.record(command)];
        answers.set(id, await Promise.all(sent));
      }
    };
    await Promise.all(Array.from({ length: 12 }, (_, caller) => call(caller)));
    hog.stdin.end();
    await once(hog, 'exit');

    const written = await writtenIn(store);
    expect(answers.size).toBe(600);
    for (const [id, given] of answers) {
      const [first] = given;
      if (first?.answer !== 'written') throw new Error(JSON.stringify(first));
      const seqs = written.filter(({ command }) => command === id).map(({ seq }) => seq);
      expect(seqs).toEqual(Array.from({ length: first.size }, (_, index) => first.from + index));
      for (const again of given) expect(again).toEqual(first);
    }
    expect(await audited(store)).toMatchObject({ size: written.length });
    expect(happened).toMatchObject({ reused: 0 });
    expect(bursts).toBeGreaterThan(3);
    expect(Math.min(happened.busy, happened.lostBefore, happened.lostAfter)).toBeGreaterThan(0);
    await store.close();
  });

  it('answers as written once what was committed but reported as failed, and tells of it', async () => {
    const dir = newDir();
    const { shop, note } = await shopWithJob(dir);
    await shop.close();
    let failed = false;
    const store = await reopened(shop, dir, (path, use) => {
      const inner = connect(path, use);
      const commit = () => {
        const isOurs = inner.all("SELECT 1 FROM command WHERE id = 'once'", []).length > 0;
        inner.run('COMMIT', []);
        if (failed || !isOurs) return;
        failed = true;
        throw new Error('the answer was lost');
      };
      return { ...inner, run: (sql, args) => (sql === 'COMMIT' && use === 'write' ? commit() : inner.run(sql, args)) };
    });
    const told: number[] = [];
    store.onCommit((size) => told.push(size));
    expect(await store.record(note('once', ['written once']))).toEqual({ answer: 'written', from: 5, size: 1 });
    expect(failed).toBe(true);
    expect((await writtenIn(store)).filter(({ command }) => command === 'once')).toHaveLength(1);
    expect(told).toEqual([6]);
    expect((await store.issueCheckpoint()).size).toBe(6);
    expect(await store.record(note('after', ['goes on']))).toEqual({ answer: 'written', from: 6, size: 1 });
    expect(await audited(store)).toMatchObject({ size: 7 });
    await store.close();
  });

  it('lets a bug hit only its author, in the middle of a batch', async () => {
    const dir = newDir();
    const { shop, note } = await shopWithJob(dir);
    const bad: Command = { ...note('bad', []), lines: [line('no_such_entry', {})] };
    const settled = await Promise.allSettled([note('a', ['a']), bad, note('b', ['b'])].map((command) => shop.store.record(command)));
    expect(settled.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect((await writtenIn(shop.store)).slice(5).map(({ command }) => command)).toEqual(['a', 'b']);
    expect(await audited(shop.store)).toMatchObject({ size: 7 });
    await shop.close();
  });

  it('says that the disk is full, writes nothing by halves, and takes the same form once there is room', async () => {
    const dir = newDir();
    const { shop, note } = await shopWithJob(dir);
    await shop.close();
    const full = await reopened(shop, dir, (path, use) => {
      const client = connect(path, use);
      // The engine takes the present number of pages instead, so that nothing may grow.
      if (use === 'write') client.all('PRAGMA max_page_count = 1', []);
      return client;
    });
    const texts = Array.from({ length: 15 }, () => 'x'.repeat(4000));
    const fault = await full.record(note('big', texts)).catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(StorageFault);
    expect(fault).toMatchObject({ code: 'SQLITE_FULL', message: expect.stringMatching(/^The disk is full.*\.$/) });
    expect(await writtenIn(full)).toHaveLength(5);
    await full.close();
    const store = await reopened(shop, dir);
    expect(await audited(store)).toMatchObject({ size: 5 });
    expect(await store.record(note('big', texts))).toEqual({ answer: 'written', from: 5, size: 15 });
    await store.close();
  });

  it('says in a sentence that it cannot open its directory, and lets go of the lock', async () => {
    const dir = newDir();
    mkdirSync(join(dir, 'lock.db'));
    const open = () => openStore({ dir, sqlDir: SQL_DIR, clock: () => 0 as never, random: seededBytes(1) });
    await expect(open()).rejects.toMatchObject({ code: 'SQLITE_CANTOPEN', message: expect.stringMatching(/\.$/) });
    rmSync(join(dir, 'lock.db'), { recursive: true });
    mkdirSync(join(dir, 'keys.db'));
    await expect(open()).rejects.toMatchObject({ code: 'SQLITE_CANTOPEN' });
    rmSync(join(dir, 'keys.db'), { recursive: true });
    await (await open()).close();
  });

  it('writes nothing more once it came upon a damaged page, and says so', async () => {
    const dir = newDir();
    const { shop, note } = await shopWithJob(dir);
    await shop.close();
    let isDamaged = false;
    const store = await reopened(shop, dir, (path, use) => {
      const inner = connect(path, use);
      const all: typeof inner.all = (sql, args) => {
        if (isDamaged && use === 'read') throw Object.assign(new Error('malformed'), { code: 'SQLITE_CORRUPT' });
        return inner.all(sql, args);
      };
      return { ...inner, all };
    });
    expect(store.readOnly).toBeNull();
    isDamaged = true;
    await expect(store.read('SELECT 1')).rejects.toMatchObject({ code: 'SQLITE_CORRUPT' });
    isDamaged = false;
    expect(store.readOnly).toMatch(/damaged.*last good copy\.$/);
    await expect(store.record(note('after', ['x']))).rejects.toBeInstanceOf(ReadOnly);
    await store.close();
  });

  it('says in a sentence that a file is no database any more, and leaves it as it is', async () => {
    const dir = newDir();
    const { shop } = await shopWithJob(dir);
    await shop.close();
    writeFileSync(join(dir, 'ledger.db'), 'This was a ledger once.'.repeat(500));
    await expect(reopened(shop, dir)).rejects.toMatchObject({ code: 'SQLITE_NOTADB', message: expect.stringMatching(/\.$/) });
  });
});
