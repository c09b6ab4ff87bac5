// What somebody with the file in his hands would try with raw SQL; the first bad place is named by its code.
import { join } from 'node:path';
import { type Client, createClient, type InArgs } from '@libsql/client';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { sha256 } from '../../src/store/crypto.ts';
import { SchemaMismatch } from '../../src/store/migrate.ts';
import { audited } from '../store/audited.ts';
import { type GoodLedger, goodLedger, leafOf, tamper } from './good-ledger.ts';

let good: GoodLedger;
beforeAll(async () => {
  good = await goodLedger();
});
afterEach(() => good.tidy());
afterAll(() => good.remove());

const sql =
  (text: string, args: InArgs = []) =>
  (db: Client) =>
    db.execute({ sql: text, args });
/** Another word in the leaf; its hash beside it is made to fit where `rehash` says so. */
const reword = (seq: number, rehash: boolean) => async (db: Client) => {
  const bytes = new TextEncoder().encode((await leafOf(db, seq)).replace('"device":"', '"device":"x'));
  await db.execute({ sql: 'UPDATE entry SET leaf = ? WHERE seq = ?', args: [bytes, seq] });
  const hash = sha256(Buffer.concat([Uint8Array.of(0), bytes]));
  if (rehash) await db.execute({ sql: 'UPDATE entry SET leaf_hash = ? WHERE seq = ?', args: [new Uint8Array(hash), seq] });
};
const swap = async (db: Client) => {
  for (const [from, to] of [
    [5, 1000],
    [6, 5],
    [1000, 6],
  ] as const)
    await db.execute({ sql: 'UPDATE entry SET seq = ? WHERE seq = ?', args: [to, from] });
};
const cutTail = async (db: Client) => {
  await db.execute({ sql: 'DELETE FROM entry_link WHERE seq >= ?', args: [good.size - 2] });
  await db.execute({ sql: 'DELETE FROM entry WHERE seq >= ?', args: [good.size - 2] });
};
const cutTailWell = async (db: Client) => {
  await cutTail(db);
  await db.execute({ sql: 'DELETE FROM node WHERE (position + 1) << level > ?', args: [good.size - 2] });
  await db.execute({ sql: 'DELETE FROM checkpoint WHERE size > ?', args: [good.size - 2] });
};

describe('an alteration of the file', () => {
  it.each<[string, (db: Client) => Promise<unknown>, { seq: number | null; code: string }]>([
    ['a word in a leaf', reword(9, false), { seq: 9, code: 'columns' }],
    ['a word in a leaf, and its hash made to fit', reword(9, true), { seq: 9, code: 'signature' }],
    [
      'the same inside a command of several entries',
      async (db) => {
        const bytes = new TextEncoder().encode((await leafOf(db, 5)).replace('"counter"', '"post"'));
        const hash = new Uint8Array(sha256(Buffer.concat([Uint8Array.of(0), bytes])));
        await db.execute({ sql: 'UPDATE entry SET leaf = ?, leaf_hash = ? WHERE seq = 5', args: [bytes, hash] });
      },
      { seq: 5, code: 'node' },
    ],
    [
      'white space in a leaf',
      sql("UPDATE entry SET leaf = CAST(' ' || CAST(leaf AS TEXT) AS BLOB) WHERE seq = 7"),
      { seq: 7, code: 'not_canonical' },
    ],
    ['the type beside a leaf', sql("UPDATE entry SET type = 'withdrawn' WHERE seq = 7"), { seq: 7, code: 'columns' }],
    ['the time beside a leaf', sql('UPDATE entry SET at = at + 1 WHERE seq = 7'), { seq: 7, code: 'columns' }],
    [
      'an entry taken out',
      async (db) => {
        await db.execute('DELETE FROM entry_link WHERE seq = 9');
        await db.execute('DELETE FROM entry WHERE seq = 9');
      },
      { seq: 9, code: 'wrong_seq' },
    ],
    ['two entries changed over', swap, { seq: 5, code: 'wrong_seq' }],
    ['the last entries cut off', cutTail, { seq: null, code: 'truncated' }],
    ['the last entries cut off with all that belongs to them', cutTailWell, { seq: null, code: 'truncated' }],
    ['a node of the tree', sql('UPDATE node SET hash = zeroblob(32) WHERE level = 1 AND position = 2'), { seq: 5, code: 'node' }],
    ['a node of the tree taken out', sql('DELETE FROM node WHERE level = 2 AND position = 0'), { seq: 3, code: 'node' }],
    ['a node too many', sql('INSERT INTO node VALUES (9, 0, zeroblob(32))'), { seq: null, code: 'node' }],
    ['a place in a stream', sql("UPDATE entry_link SET stream = 'elsewhere' WHERE seq = 7 "), { seq: 7, code: 'links' }],
    ['a place in a stream too many', sql("INSERT INTO entry_link VALUES ('elsewhere', 0, 7)"), { seq: null, code: 'links' }],
    ['a signature', sql('UPDATE checkpoint SET signature = zeroblob(64) WHERE size = 8'), { seq: 7, code: 'signature' }],
    [
      'the last signature taken out',
      sql('DELETE FROM checkpoint WHERE size = (SELECT MAX(size) FROM checkpoint)'),
      { seq: null, code: 'unsigned' },
    ],
    ['the key taken out', sql('DELETE FROM signing_key'), { seq: 3, code: 'signature' }],
    [
      'a thing on the screens',
      sql("UPDATE thing SET state = json_set(state, '$.posted.ng', 1) WHERE kind = 'piece'"),
      { seq: null, code: 'fold' },
    ],
    ['a column beside a thing', sql("UPDATE thing SET stones = 2 WHERE kind = 'piece'"), { seq: null, code: 'fold' }],
    ['a thing taken off the screens', sql("DELETE FROM thing WHERE kind = 'lot'"), { seq: null, code: 'fold' }],
  ])('%s is found', async (_what, work, expected) => {
    const dir = good.copy();
    await tamper(dir, work);
    const store = await good.open(dir);
    const found = await audited(store);
    expect('bad' in found ? { ...found.bad, seq: expected.seq === null ? null : found.bad.seq } : found).toMatchObject(expected);
  });
});

describe('a guard of the file', () => {
  const refused: readonly (readonly [string, string])[] = [
    ['UPDATE', 'UPDATE entry SET at = 0 WHERE seq = 1'],
    ['DELETE', 'DELETE FROM entry WHERE seq = 1'],
    ['INSERT OR REPLACE of its number', "INSERT OR REPLACE INTO entry VALUES (1, x'7b7d', zeroblob(32), 't', 0)"],
    [
      'INSERT OR REPLACE of its hash',
      'INSERT OR REPLACE INTO entry SELECT (SELECT MAX(seq) + 1 FROM entry), leaf, leaf_hash, type, at FROM entry WHERE seq = 1',
    ],
    ['an upsert', "INSERT INTO entry VALUES (1, x'7b7d', zeroblob(32), 't', 0) ON CONFLICT DO UPDATE SET at = 0"],
    ['UPDATE OR IGNORE', 'UPDATE OR IGNORE entry SET at = 0 WHERE seq = 1'],
    ['a gap', "INSERT INTO entry SELECT MAX(seq) + 2, x'7b7d', zeroblob(32), 't', 0 FROM entry"],
    ['a number below 0', "INSERT INTO entry VALUES (-1, x'7b7d', zeroblob(32), 't', 0)"],
    ['a gap in a stream', "INSERT INTO entry_link VALUES ('s', 1, 1)"],
    ['REPLACE of a link', 'INSERT OR REPLACE INTO entry_link SELECT stream, n, 0 FROM entry_link LIMIT 1'],
    ['REPLACE of a node', 'INSERT OR REPLACE INTO node SELECT level, position, zeroblob(32) FROM node LIMIT 1'],
    ['REPLACE of a checkpoint', 'INSERT OR REPLACE INTO checkpoint SELECT size, zeroblob(64), 0 FROM checkpoint LIMIT 1'],
    ['REPLACE of a key', "INSERT OR REPLACE INTO signing_key VALUES (0, 'k')"],
    ['DELETE of a sealed value', 'DELETE FROM sealed'],
    ['REPLACE of a sealed value', "INSERT OR REPLACE INTO sealed SELECT seq, field, subject, iv, x'00' FROM sealed LIMIT 1"],
  ];
  it.each(refused)('refuses %s', async (_what, statement) => {
    const db = createClient({ url: `file:${join(good.copy(), 'ledger.db')}`, concurrency: 1 });
    await expect(db.execute(statement)).rejects.toMatchObject({ code: 'SQLITE_CONSTRAINT' });
    db.close();
  });

  it.each(['DROP TRIGGER entry_no_update', 'CREATE TRIGGER mine AFTER INSERT ON command BEGIN DELETE FROM command; END'])(
    'that is not as it was written stops the start: %s',
    async (statement) => {
      const dir = good.copy();
      const db = createClient({ url: `file:${join(dir, 'ledger.db')}`, concurrency: 1 });
      await db.execute(statement);
      db.close();
      await expect(good.open(dir)).rejects.toBeInstanceOf(SchemaMismatch);
    },
  );
});
