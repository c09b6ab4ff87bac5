// Another history in the place of this one, and files that are cut, lost or open to others.
import { appendFileSync, chmodSync, cpSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { InArgs } from '@libsql/client';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { formatVerifierKey, verifierKey } from '../../src/log/note.ts';
import { auditLog } from '../../src/store/audit.ts';
import { sha256, signerOf } from '../../src/store/crypto.ts';
import { ReadOnly } from '../../src/store/guard.ts';
import { noKeys } from '../../src/store/keys.ts';
import { AlreadyOpen } from '../../src/store/lock.ts';
import { BadSecret } from '../../src/store/secrets.ts';
import { keptOf } from '../../src/store/shelf.ts';
import { seededBytes } from '../shop.ts';
import { audited } from '../store/audited.ts';
import { type GoodLedger, goodLedger, leafOf, tamper } from './good-ledger.ts';

let good: GoodLedger;
beforeAll(async () => {
  good = await goodLedger();
});
afterEach(() => good.tidy());
afterAll(() => good.remove());

describe('another history', () => {
  /** Puts another ledger.db beside the good one's keys and memory. */
  const replacedBy = (other: string) => {
    const dir = good.copy();
    rmSync(join(dir, 'ledger.db-wal'), { force: true });
    rmSync(join(dir, 'ledger.db-shm'), { force: true });
    cpSync(join(other, 'ledger.db'), join(dir, 'ledger.db'));
    return dir;
  };

  it('an older backup with its own checkpoints is read, not written', async () => {
    const store = await good.open(replacedBy(good.older));
    expect(store.readOnly).toMatch(/older copy/);
    await expect(store.record(good.note('late', 'late'))).rejects.toBeInstanceOf(ReadOnly);
    expect(await audited(store)).toMatchObject({ bad: { code: 'truncated' } });
  });

  it.each([
    ['zeros', () => Buffer.alloc(150_000)],
    ['lines that nobody signed', () => Buffer.from(`2026-11-25T10:00:00.000Z 999 ${'A'.repeat(43)}= ${'A'.repeat(86)}==\n`.repeat(900))],
  ])('an older backup is known as one behind any length of %s', async (_, behind) => {
    const dir = replacedBy(good.older);
    appendFileSync(join(dir, 'checkpoints.log'), behind());
    const store = await good.open(dir);
    expect(store.readOnly).toMatch(/older copy/);
  });

  it('a fork signed with the stolen seed shows by the memory outside', async () => {
    const thief = good.copy(good.older);
    const forked = await good.open(thief, 77);
    for (let n = 0; n < 9; n++) await forked.record(good.note(`fork-${n}`, 'another story'));
    expect(await audited(forked)).not.toHaveProperty('bad');
    await forked.close();
    const store = await good.open(replacedBy(thief));
    expect(store.readOnly).toMatch(/not the ones that were signed/);
    expect(await audited(store)).toMatchObject({ bad: { code: 'memory' } });
  });

  it('signed anew with another key is not this shop’s', async () => {
    const dir = good.copy();
    const seed = Buffer.alloc(32, 9);
    await tamper(dir, async (db) => {
      const { log } = JSON.parse(await leafOf(db, 0)) as { log: string };
      const key = verifierKey(sha256, log, 1, signerOf(seed).publicKey);
      if ('refused' in key) throw new Error(key.say);
      await db.execute({ sql: 'UPDATE signing_key SET vkey = ?', args: [formatVerifierKey(key)] });
    });
    const store = await good.open(dir);
    expect(store.readOnly).toMatch(/signing key/);
    expect(await audited(store)).toMatchObject({ bad: { code: 'signing_key' } });
    expect(await auditLog({ read: store.read, log: store.log, keys: noKeys })).toMatchObject({
      bad: { code: 'signature' },
    });
  });

  it('beside another seed is read, not written', async () => {
    const dir = good.copy();
    writeFileSync(join(dir, 'keys/seed'), `${'09'.repeat(32)}\n`);
    expect((await good.open(dir)).readOnly).toMatch(/signing key/);
  });
});

describe('a file that is cut, lost or open to others', () => {
  it('cut anywhere in its write-ahead log, is whole up to an earlier commit', { timeout: 60_000 }, async () => {
    const source = good.copy();
    const store = await good.open(source);
    const sizes = new Set<number>();
    for (let n = 0; n < 12; n++) await store.record(good.note(`wal-${n}`, 'before the cut'));
    const files = ['ledger.db', 'ledger.db-wal', 'keys.db'].map((name) => [name, readFileSync(join(source, name))] as const);
    const wal = files[1]?.[1].length ?? 0;
    const random = seededBytes(3);
    for (let cut = 0; cut < 20; cut++) {
      const dir = good.copy();
      for (const [name, bytes] of files) writeFileSync(join(dir, name), bytes);
      rmSync(join(dir, 'checkpoints.log'));
      const [high = 0, low = 0] = random(2);
      truncateSync(join(dir, 'ledger.db-wal'), Math.floor((wal * (high * 256 + low)) / 65_536));
      const survivor = await good.open(dir);
      const found = await audited(survivor);
      if ('bad' in found) throw new Error(JSON.stringify(found.bad));
      sizes.add(found.size);
    }
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(good.size);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(good.size + 12);
    expect(sizes.size).toBeGreaterThan(5);
  });

  it('without access.db, has lost sign-in and no data', async () => {
    const dir = good.copy();
    rmSync(join(dir, 'access.db'));
    const store = await good.open(dir);
    expect(store.readOnly).toBeNull();
    expect(await audited(store)).toMatchObject({ size: good.size });
  });

  it('in use, is not opened a second time', async () => {
    const dir = good.copy();
    await good.open(dir);
    await expect(good.open(dir)).rejects.toBeInstanceOf(AlreadyOpen);
  });

  it.each(['seed', 'mac', 'pepper'])('with a key that others can read (%s), does not start', async (name) => {
    const dir = good.copy();
    chmodSync(join(dir, 'keys', name), 0o640);
    await expect(good.open(dir)).rejects.toBeInstanceOf(BadSecret);
  });

  it('with the sealed words of two entries changed over, shows neither', async () => {
    const dir = good.copy();
    await tamper(dir, async (db) => {
      const { rows } = await db.execute("SELECT seq, field, iv, ciphertext FROM sealed WHERE field IN ('name', 'phone')");
      for (const [into, from] of [
        [0, 1],
        [1, 0],
      ] as const) {
        const [to, by] = [rows[into], rows[from]];
        const args = [by?.iv, by?.ciphertext, to?.seq, to?.field] as InArgs;
        await db.execute({ sql: 'UPDATE sealed SET iv = ?, ciphertext = ? WHERE seq = ? AND field = ?', args });
      }
    });
    const store = await good.open(dir);
    const [row] = await store.read("SELECT seq, leaf, leaf_hash FROM entry WHERE type = 'customer_met'");
    expect((await keptOf(store.read, store.keys, row ?? {})).opened).toEqual({});
  });
});
