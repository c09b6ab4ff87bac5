// What entries rest on is never made anew in silence, a lock that is deleted lets nobody write beside, and what was answered is remembered outside.
import { appendFileSync, cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { base64 } from '../../src/log/bytes.ts';
import { ReadOnly } from '../../src/store/guard.ts';
import { AlreadyOpen } from '../../src/store/lock.ts';
import { notedLines } from '../../src/store/memory.ts';
import { openStore } from '../../src/store/open.ts';
import { Missing, NoLedger } from '../../src/store/present.ts';
import { instant } from '../../src/units/dates.ts';
import { SQL_DIR, seededBytes } from '../shop.ts';
import { type GoodLedger, goodLedger } from './good-ledger.ts';

let good: GoodLedger;
beforeAll(async () => {
  good = await goodLedger();
});
afterEach(() => good.tidy());
afterAll(() => good.remove());

describe('something that entries rest on', () => {
  it.each(['keys/seed', 'keys/mac', 'keys/pepper', 'keys.db', 'ledger.db'])('(%s) is asked for, not made', async (name) => {
    const dir = good.copy();
    for (const file of [name, `${name}-wal`, `${name}-shm`]) rmSync(join(dir, file), { force: true });
    const fault = await good.open(dir).catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(Missing);
    expect((fault as Error).message).toMatch(new RegExp(`${name} is missing.*\\.$`));
    expect(existsSync(join(dir, name))).toBe(false);
  });

  it('(keys.db) is asked for where it was emptied', async () => {
    const dir = good.copy();
    const store = await good.open(dir);
    const subjects = await store.read('SELECT DISTINCT subject FROM sealed');
    for (const { subject } of subjects) await store.keys.destroy(String(subject));
    await store.close();
    await expect(good.open(dir)).rejects.toBeInstanceOf(Missing);
  });

  it('(checkpoints.log) is told to be missing, and that is seen ever after', async () => {
    const dir = good.copy();
    rmSync(join(dir, 'checkpoints.log'));
    const store = await good.open(dir);
    expect(store.told).toEqual([expect.stringMatching(/checkpoints\.log is missing/)]);
    await store.record(good.note('after', 'after'));
    expect(await store.check()).toMatchObject({ told: [expect.stringMatching(/checkpoints\.log begins/)] });
  });

  it('is not asked for where no ledger is: nothing is made for a command that reads', async () => {
    const dir = join(good.copy(), 'mistyped');
    const asked = openStore({ dir, sqlDir: SQL_DIR, clock: () => 0 as never, random: seededBytes(1), existing: true });
    await expect(asked).rejects.toBeInstanceOf(NoLedger);
    expect(existsSync(dir)).toBe(false);
  });
});

describe('two programs on one ledger', () => {
  it('never write beside each other, though the lock was deleted', async () => {
    const dir = good.copy();
    const first = await good.open(dir);
    await first.record(good.note('before', 'before'));
    for (const again of [1, 2]) {
      for (const name of ['lock.db', 'lock.db-wal', 'lock.db-shm']) rmSync(join(dir, name), { force: true });
      expect([again, first.readOnly]).toEqual([again, expect.stringMatching(/lock\.db was deleted/)]);
      // The second time its own lock.db is there: it was not asked about, and so is asked about again.
      for (const seed of [8, 9]) await expect(good.open(dir, seed)).rejects.toBeInstanceOf(AlreadyOpen);
    }
    await expect(first.record(good.note('beside', 'beside'))).rejects.toBeInstanceOf(ReadOnly);
    expect(await first.check()).toMatchObject({ size: good.size + 1, told: [] });
  });
});

describe('a clock', () => {
  const openedAt = (dir: string, at: number) => openStore({ dir, sqlDir: SQL_DIR, clock: () => instant(at), random: seededBytes(3) });
  it('that was four years ahead, or is as far behind, is told at the start', async () => {
    const dir = good.copy();
    const at = Math.max(...[...notedLines(join(dir, 'checkpoints.log'))].map((noted) => noted?.at ?? 0));
    const behind = await openedAt(dir, at - 4 * 365 * 86_400_000);
    expect(behind.clockTrouble()).toMatch(/has not reached/);
    await behind.close();
    // A minute is what a clock is put right by.
    const right = await openedAt(dir, at - 59_000);
    expect(right.clockTrouble()).toBeNull();
    await right.close();
    const ahead = await openedAt(dir, at + 15 * 86_400_000);
    expect(ahead.clockTrouble()).toMatch(/the clock is ahead/);
    await ahead.close();
    const holidays = await openedAt(dir, at + 14 * 86_400_000);
    expect(holidays.clockTrouble()).toBeNull();
    await holidays.close();
  });
});

describe('what was answered', () => {
  /** A ledger with its memory, put back over by an older copy of the file alone. */
  async function restored() {
    const [dir, older] = [good.copy(), good.copy()];
    const store = await good.open(dir);
    for (const n of [1, 2, 3]) await store.record(good.note(`late ${n}`, 'late'));
    const head = store.head();
    await store.close();
    return { dir, older, head };
  }
  const putBack = (from: string, dir: string) => {
    for (const name of ['ledger.db-wal', 'ledger.db-shm']) rmSync(join(dir, name), { force: true });
    cpSync(join(from, 'ledger.db'), join(dir, 'ledger.db'));
  };

  it('has its line in checkpoints.log before the answer', async () => {
    const dir = good.copy();
    const store = await good.open(dir);
    const answer = await store.record(good.note('now', 'now'));
    const last = [...notedLines(join(dir, 'checkpoints.log'))].at(-1);
    expect(answer).toMatchObject({ from: good.size });
    expect(last?.size).toBe(good.size + 1);
  });

  it('is missed at the start of an older copy, which names the entries and takes no others', async () => {
    const { dir, older } = await restored();
    putBack(older, dir);
    const store = await good.open(dir);
    expect(store.readOnly).toMatch(new RegExp(`^Entries ${good.size} to ${good.size + 2} are missing`));
    await expect(store.record(good.note('other', 'other'))).rejects.toBeInstanceOf(ReadOnly);
    expect(await store.check()).toMatchObject({ bad: { code: 'truncated' } });
  });

  it('is missed when a screen tells of it, though the whole directory was put back, now and at the next start', async () => {
    const { older, head } = await restored();
    const store = await good.open(older);
    expect(store.readOnly).toBeNull();
    if (!head) throw new Error('nothing was signed');
    await store.hear({ ...head, signature: head.signature.map((byte, i) => (i === 0 ? byte ^ 1 : byte)) }, 'a screen');
    await store.hear({ ...head, size: head.size + 1_000_000 }, 'a screen');
    expect(store.readOnly).toBeNull();
    await store.hear(head, 'the screen at the counter');
    expect(store.readOnly).toMatch(new RegExp(`^Entries ${good.size} to ${good.size + 2} are missing.*the screen at the counter`));
    await expect(store.record(good.note('other', 'other'))).rejects.toBeInstanceOf(ReadOnly);
    await store.close();
    expect((await good.open(older)).readOnly).toMatch(/are missing/);
  });

  it('is known as another history when the copy was written on, whatever its size', async () => {
    const { older, head } = await restored();
    const store = await good.open(older, 9);
    for (let n = 0; n < 5; n++) await store.record(good.note(`other ${n}`, 'another story'));
    if (head) await store.hear(head, 'a screen');
    expect(store.readOnly).toMatch(/not the ones that were signed/);
  });

  it('is not doubted for a line that nobody signed', async () => {
    const dir = good.copy();
    const root = base64(new Uint8Array(32));
    appendFileSync(join(dir, 'checkpoints.log'), `2027-01-01T00:00:00.000Z 999999999 ${root} ${base64(new Uint8Array(64))}\n`);
    const store = await good.open(dir);
    expect(store.readOnly).toBeNull();
    expect(await store.check()).toMatchObject({ bad: { code: 'memory' } });
  });

  it('is noted at the next start where the power took its line', async () => {
    const dir = good.copy();
    const path = join(dir, 'checkpoints.log');
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.split('\n').slice(0, -3).join('\n').concat('\n2026-12-01T09'));
    const store = await good.open(dir);
    expect(await store.check()).toMatchObject({ size: good.size, told: [] });
  });
});
