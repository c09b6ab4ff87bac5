// Who notices what: every column of every table and every file of a data directory, changed one at a time, and which detector sees it.
// The columns are read from the schema itself, so that a new one without an entry here fails.
import {
  appendFileSync,
  chmodSync,
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { type Client, createClient } from '@libsql/client';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { hex } from '../../src/log/bytes.ts';
import { checkData } from '../../src/store/check.ts';
import { sha256 } from '../../src/store/crypto.ts';
import { rebuild } from '../../src/store/replay.ts';
import { UNSEEN } from '../../src/store/unseen.ts';
import { line, openShop, SQL_DIR } from '../shop.ts';
import { type GoodLedger, goodLedger, tamper } from './good-ledger.ts';

let good: GoodLedger;
beforeAll(async () => {
  good = await goodLedger();
});
afterEach(() => good.tidy());
afterAll(() => good.remove());

/** What the check says of a directory: the code of the first bad place, the name of what it threw, or the sentences it told. */
async function seenIn(dir: string): Promise<string> {
  const found = await checkData(dir, SQL_DIR).catch((error: unknown) => error as Error);
  if (found instanceof Error) return found.constructor.name;
  if ('bad' in found) return found.bad.code;
  return found.told.length > 0 ? `told: ${found.told.join(' ')}` : 'nothing';
}
/** The same of a start. */
async function startOf(dir: string): Promise<string> {
  const store = await good.open(dir).catch((error: unknown) => error as Error);
  if (store instanceof Error) return store.constructor.name;
  return store.readOnly === null ? (store.told[0] ?? 'nothing') : 'read only';
}
async function inFile(dir: string, name: string, work: (db: Client) => Promise<unknown>): Promise<void> {
  const db = createClient({ url: `file:${join(dir, name)}`, concurrency: 1 });
  await work(db);
  db.close();
}

type Change = string | ((db: Client) => Promise<unknown>);
/** Column → a change of it that the engine takes, and the code of the detector that sees it. */
const LEDGER: Readonly<Record<string, readonly [change: Change, seen: string | RegExp]>> = {
  'entry.seq': ['UPDATE entry SET seq = seq + 1000 WHERE seq = 8', 'wrong_seq'],
  'entry.leaf': ['UPDATE entry SET leaf = CAST(replace(CAST(leaf AS TEXT), \'"test"\', \'"tset"\') AS BLOB) WHERE seq = 8', 'columns'],
  'entry.leaf_hash': ['UPDATE entry SET leaf_hash = zeroblob(32) WHERE seq = 8', 'columns'],
  'entry.type': ["UPDATE entry SET type = 'moved' WHERE seq = 8", 'columns'],
  'entry.at': ['UPDATE entry SET at = at + 1 WHERE seq = 8', 'columns'],
  'entry_link.stream': ["UPDATE entry_link SET stream = 'elsewhere' WHERE seq = 8", 'links'],
  'entry_link.n': ['UPDATE entry_link SET n = n + 100 WHERE seq = 8', 'links'],
  'entry_link.seq': ['UPDATE entry_link SET seq = 7 WHERE seq = 8', 'links'],
  'node.level': ['UPDATE node SET level = 9 WHERE level = 1 AND position = 2', 'node'],
  'node.position': ['UPDATE node SET position = 99 WHERE level = 1 AND position = 2', 'node'],
  'node.hash': ['UPDATE node SET hash = zeroblob(32) WHERE level = 1 AND position = 2', 'node'],
  'checkpoint.size': ['UPDATE checkpoint SET size = 6 WHERE size = 7', 'signature'],
  'checkpoint.signature': ['UPDATE checkpoint SET signature = zeroblob(64) WHERE size = 8', 'signature'],
  'checkpoint.issued': ['UPDATE checkpoint SET issued = issued + 1 WHERE size = 8', 'issued'],
  'cosignature.size': ["INSERT INTO cosignature VALUES (8, 'w', 'x')", 'cosignature'],
  'cosignature.name': ["INSERT INTO cosignature VALUES (8, 'w', 'x')", 'cosignature'],
  'cosignature.line': ["INSERT INTO cosignature VALUES (8, 'w', 'x')", 'cosignature'],
  'signing_key.from_size': ['UPDATE signing_key SET from_size = 1', 'signing_key'],
  'signing_key.vkey': ["UPDATE signing_key SET vkey = 'x' || vkey", 'signing_key'],
  'command.id': ["UPDATE command SET id = 'another' WHERE from_seq = 8", 'command'],
  'command.by': ["UPDATE command SET by = 'another' WHERE from_seq = 8", 'command'],
  'command.mac': ['UPDATE command SET mac = zeroblob(32) WHERE from_seq = 8', 'nothing'],
  'command.from_seq': ['UPDATE command SET from_seq = 7 WHERE from_seq = 8', 'command'],
  'command.size': ['UPDATE command SET size = 2 WHERE from_seq = 8', 'command'],
  'command.at': ['UPDATE command SET at = at + 1 WHERE from_seq = 8', 'command'],
  'sealed.seq': ['UPDATE sealed SET seq = 3 WHERE seq = 8', 'sealed'],
  'sealed.field': ["UPDATE sealed SET field = 'texts' WHERE seq = 8", 'sealed'],
  'sealed.subject': ['UPDATE sealed SET subject = (SELECT subject FROM sealed WHERE seq = 4) WHERE seq = 8', 'sealed'],
  'sealed.iv': ['UPDATE sealed SET iv = zeroblob(12) WHERE seq = 8', 'sealed'],
  'sealed.ciphertext': ['UPDATE sealed SET ciphertext = zeroblob(40) WHERE seq = 8', 'sealed'],
  'thing.n': ["UPDATE thing SET n = n + 500 WHERE kind = 'piece'", 'find'],
  'thing.id': ["UPDATE thing SET id = 'x' || id WHERE kind = 'piece'", 'fold'],
  'thing.kind': ["UPDATE thing SET kind = 'stone' WHERE kind = 'piece'", 'fold'],
  'thing.stream': ["UPDATE thing SET stream = 'x' WHERE kind = 'piece'", 'fold'],
  'thing.status': ["UPDATE thing SET status = 'closed' WHERE kind = 'job'", 'fold'],
  'thing.stones': ["UPDATE thing SET stones = 2 WHERE kind = 'piece'", 'fold'],
  'thing.words': ["UPDATE thing SET words = 'x' WHERE kind = 'piece'", 'fold'],
  'thing.state': ["UPDATE thing SET state = json_set(state, '$.posted', 1) WHERE kind = 'piece'", 'fold'],
  'migration.name': ["UPDATE migration SET name = 'x' WHERE name = (SELECT MAX(name) FROM migration)", 'schema'],
  'migration.hash': ["UPDATE migration SET hash = 'x'", 'schema'],
};
/** Rows that are taken out, added or rewritten whole, and the schema around them. */
const ROWS: Readonly<Record<string, readonly [change: Change, seen: string | RegExp]>> = {
  'a sealed value taken out': ['DELETE FROM sealed WHERE seq = 8', 'sealed'],
  'a sealed value added': ["INSERT INTO sealed VALUES (8, 'more', 'x', zeroblob(12), zeroblob(40))", 'sealed'],
  'a form taken out': ['DELETE FROM command WHERE from_seq = 9', 'command'],
  'the newest form taken out': ['DELETE FROM command WHERE from_seq = (SELECT MAX(from_seq) FROM command)', 'command'],
  'all forms taken out': ['DELETE FROM command', 'command'],
  'a form added': ["INSERT INTO command SELECT 'more', by, mac, from_seq, size, at FROM command LIMIT 1", 'command'],
  'an earlier checkpoint taken out': ['DELETE FROM checkpoint WHERE size = 8', 'memory'],
  'a second key': ['INSERT INTO signing_key SELECT 5, vkey FROM signing_key', 'signing_key'],
  'the index of the Find box emptied': ["INSERT INTO find (find) VALUES ('delete-all')", 'find'],
  'a word of the index taken out': [
    "INSERT INTO find (find, rowid, words) SELECT 'delete', n, words FROM thing WHERE kind = 'lot'",
    'find',
  ],
  'an index dropped': ['DROP INDEX thing_by_kind', 'schema'],
  'an index changed': [(db) => db.batch(['DROP INDEX thing_by_kind', 'CREATE INDEX thing_by_kind ON thing (kind)']), 'schema'],
  'a table added': ['CREATE TABLE mine (a TEXT)', 'schema'],
  'a view added': ['CREATE VIEW mine AS SELECT 1', 'schema'],
  'a trigger added': ['CREATE TRIGGER mine AFTER INSERT ON command BEGIN DELETE FROM command; END', 'schema'],
};
const KEYS: Readonly<Record<string, readonly [change: Change, seen: string | RegExp]>> = {
  'subject_key.subject': ["UPDATE subject_key SET subject = 'x' WHERE wrapped_by IS NOT NULL", /^told: .* no key/],
  'subject_key.wrapped_by': [
    'UPDATE subject_key SET wrapped_by = (SELECT k.subject FROM subject_key AS k WHERE k.wrapped_by IS NULL AND k.subject <> subject_key.wrapped_by LIMIT 1) WHERE wrapped_by IS NOT NULL',
    'sealed',
  ],
  'subject_key.iv': ['UPDATE subject_key SET iv = zeroblob(12) WHERE iv IS NOT NULL', 'sealed'],
  'subject_key.key': ['UPDATE subject_key SET key = randomblob(32) WHERE wrapped_by IS NULL', 'sealed'],
  'row taken out': ['DELETE FROM subject_key WHERE wrapped_by IS NOT NULL', /^told: .* no key/],
  'migration.name': ["UPDATE migration SET name = 'keys-0000.sql'", 'schema'],
  'migration.hash': ["UPDATE migration SET hash = 'x'", 'schema'],
};

describe('a column of ledger.db', () => {
  it('has a detector, every one', async () => expect(Object.keys(LEDGER).sort()).toEqual(await columnsOf('ledger.db')));
  it.each(Object.entries({ ...LEDGER, ...ROWS }))('%s', async (_where, [change, seen]) => {
    const dir = good.copy();
    expect(await seenIn(dir)).toBe('nothing');
    await tamper(dir, (db) => (typeof change === 'string' ? db.execute(change) : change(db)));
    expect(await seenIn(dir)).toMatch(typeof seen === 'string' ? new RegExp(`^${seen}$`) : seen);
  });
});

/** What a start sees of ledger.db without reading all of it, and what is left to the check. */
const AT_START: Readonly<Record<string, readonly [change: string, seen: 'read only' | 'nothing']>> = {
  'who is an owner': ["UPDATE thing SET state = json_set(state, '$.role', 'auditor') WHERE kind = 'person'", 'read only'],
  'a person taken out': ["DELETE FROM thing WHERE kind = 'person'", 'read only'],
  'a person added': [
    "INSERT INTO thing SELECT n + 900, 'x' || id, kind, stream, status, stones, words, state FROM thing WHERE kind = 'person'",
    'read only',
  ],
  'what a balance can show': ["UPDATE thing SET state = json_set(state, '$.balance.unit', 'ct') WHERE kind = 'balance'", 'read only'],
  'how the shop works': ["UPDATE thing SET state = json_set(state, '$.says.staffing', 'two') WHERE kind = 'shop'", 'read only'],
  'what a piece weighs': ["UPDATE thing SET state = json_set(state, '$.posted', 1) WHERE kind = 'piece'", 'nothing'],
  'a leaf': ['UPDATE entry SET leaf = CAST(replace(CAST(leaf AS TEXT), \'"test"\', \'"tset"\') AS BLOB) WHERE seq = 8', 'nothing'],
};
describe('what a start sees', () => {
  it.each(Object.entries(AT_START))('of a change of %s', async (_what, [change, seen]) => {
    const dir = good.copy();
    await tamper(dir, (db) => db.execute(change));
    expect(await startOf(dir)).toBe(seen);
    expect(await seenIn(dir)).not.toBe('nothing');
  });

  it('of changed people is mended as it says: a rebuild, and another start', async () => {
    const dir = good.copy();
    await tamper(dir, (db) => db.execute("UPDATE thing SET state = json_set(state, '$.role', 'auditor') WHERE kind = 'person'"));
    const store = await good.open(dir);
    expect(store.readOnly).toMatch(/lemel rebuild/);
    await rebuild(store.file, store.keys);
    await store.close();
    expect([await startOf(dir), await seenIn(dir)]).toEqual(['nothing', 'nothing']);
  });

  it.each([
    ['thing', 'the rows of a table'],
    ['thing_by_kind', 'the rows of an index'],
    ['node', 'the tree'],
  ])('of damaged pages: %s (%s)', async (name) => {
    const dir = good.copy();
    const page = await pageOf(dir, name);
    const file = openSync(join(dir, 'ledger.db'), 'r+');
    // The offsets of the cells, which no page can do without, and none of what they hold.
    writeSync(file, Buffer.alloc(16, 0xff), 0, 16, page * 4096 - 4096 + 8);
    closeSync(file);
    expect(await startOf(dir)).toMatch(/^read only$|^StorageFault$/);
    expect(await seenIn(dir)).toMatch(/^damaged$|^StorageFault$/);
  });
});

/** The first page of a table or index, with nothing left beside the file. */
async function pageOf(dir: string, name: string): Promise<number> {
  let page = 0;
  await inFile(dir, 'ledger.db', async (db) => {
    await db.execute('PRAGMA wal_checkpoint(TRUNCATE)');
    page = Number((await db.execute({ sql: 'SELECT rootpage FROM sqlite_schema WHERE name = ?', args: [name] })).rows[0]?.rootpage);
  });
  return page;
}

describe('a column of keys.db', () => {
  it('has a detector, every one', async () =>
    expect(
      Object.keys(KEYS)
        .filter((key) => key.includes('.'))
        .sort(),
    ).toEqual(await columnsOf('keys.db')));
  it.each(Object.entries(KEYS))('%s', async (_where, [change, seen]) => {
    const dir = good.copy();
    await inFile(dir, 'keys.db', (db) => (typeof change === 'string' ? db.execute(change) : change(db)));
    expect(await seenIn(dir)).toMatch(typeof seen === 'string' ? new RegExp(`^${seen}$`) : seen);
  });
});

/** A line of checkpoints.log by its number, changed. */
const lineOf = (dir: string, number: number, change: (text: string) => string) => {
  const path = join(dir, 'checkpoints.log');
  const lines = readFileSync(path, 'utf8').split('\n');
  lines[number] = change(lines[number] ?? '');
  writeFileSync(path, lines.join('\n'));
};
const FILES: Readonly<Record<string, readonly [change: (dir: string) => unknown, start: string | RegExp, check: string | RegExp]>> = {
  'ledger.db taken out': [(dir) => rmSync(join(dir, 'ledger.db')), 'Missing', 'Missing'],
  'keys.db taken out': [(dir) => rmSync(join(dir, 'keys.db')), 'Missing', 'Missing'],
  'keys.db emptied': [(dir) => inFile(dir, 'keys.db', (db) => db.execute('DELETE FROM subject_key')), 'Missing', 'Missing'],
  'access.db taken out': [(dir) => rmSync(join(dir, 'access.db')), 'nothing', 'nothing'],
  'lock.db taken out': [(dir) => rmSync(join(dir, 'lock.db')), 'nothing', 'nothing'],
  'spare taken out': [(dir) => rmSync(join(dir, 'spare')), 'nothing', 'nothing'],
  'keys/seed taken out': [(dir) => rmSync(join(dir, 'keys/seed')), 'Missing', 'Missing'],
  'keys/seed changed': [(dir) => writeFileSync(join(dir, 'keys/seed'), `${'09'.repeat(32)}\n`), 'read only', 'signing_key'],
  'keys/seed open to others': [(dir) => chmodSync(join(dir, 'keys/seed'), 0o644), 'BadSecret', 'BadSecret'],
  'keys/mac taken out': [(dir) => rmSync(join(dir, 'keys/mac')), 'Missing', 'Missing'],
  'keys/mac changed': [(dir) => writeFileSync(join(dir, 'keys/mac'), `${'09'.repeat(32)}\n`), 'nothing', 'nothing'],
  'keys/pepper taken out': [(dir) => rmSync(join(dir, 'keys/pepper')), 'Missing', 'Missing'],
  'keys/pepper changed': [(dir) => writeFileSync(join(dir, 'keys/pepper'), `${'09'.repeat(32)}\n`), 'nothing', 'nothing'],
  'checkpoints.log taken out': [(dir) => rmSync(join(dir, 'checkpoints.log')), /^checkpoints\.log is missing/, 'memory'],
  'checkpoints.log cut in the middle': [(dir) => lineOf(dir, 3, () => ''), 'nothing', 'memory'],
  'checkpoints.log cut at its end': [
    (dir) =>
      writeFileSync(join(dir, 'checkpoints.log'), readFileSync(join(dir, 'checkpoints.log'), 'utf8').split('\n').slice(0, -3).join('\n')),
    'nothing',
    'memory',
  ],
  'checkpoints.log begun later': [(dir) => lineOf(dir, 0, () => ''), 'nothing', /^told: checkpoints\.log begins/],
  'the time of a line of checkpoints.log': [
    (dir) => lineOf(dir, 3, (text) => text.replace(/^2026-12-01T09/, '2026-12-01T10')),
    'nothing',
    'memory',
  ],
  'the size of a line of checkpoints.log': [(dir) => lineOf(dir, 3, (text) => text.replace(/ (\d+) /, ' 5 ')), 'nothing', 'memory'],
  'the root of a line of checkpoints.log': [
    (dir) => lineOf(dir, 3, (text) => text.replace(/ \S{44} /, ` ${'A'.repeat(43)}= `)),
    'nothing',
    'memory',
  ],
  'the signature of a line of checkpoints.log': [
    (dir) => lineOf(dir, 3, (text) => text.replace(/\S{88}$/, `${'A'.repeat(86)}==`)),
    'nothing',
    'memory',
  ],
  'a forged line of checkpoints.log': [
    (dir) => appendFileSync(join(dir, 'checkpoints.log'), `2027-01-01T00:00:00.000Z 99999 ${'A'.repeat(43)}= ${'A'.repeat(86)}==\n`),
    'nothing',
    'memory',
  ],
};

describe('a file of a data directory', () => {
  it.each(Object.entries(FILES))('%s', async (_what, [change, start, check]) => {
    const [checked, started] = [good.copy(), good.copy()];
    for (const dir of [checked, started]) await change(dir);
    expect(await seenIn(checked)).toMatch(typeof check === 'string' ? new RegExp(`^${check}$`) : check);
    expect(await startOf(started)).toMatch(typeof start === 'string' ? new RegExp(`^${start}$`) : start);
  });

  it('that is a photograph: another in its place is seen, one that is gone is told', async () => {
    const shop = await openShop();
    const job = shop.newRef('job');
    await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
    const bytes = new TextEncoder().encode('a picture');
    const photo = hex(sha256(bytes));
    mkdirSync(join(shop.dir, 'photos'));
    writeFileSync(join(shop.dir, 'photos', `${photo}.webp`), bytes);
    // Terms are named by a digest too, and are no photograph.
    const [text, digest] = ['We take care.', hex(sha256(new TextEncoder().encode('We take care.')))];
    await shop.write(line('photo_added', { about: job, photo, shows: 'whole' }), line('terms_set', { shop: shop.shop, text, digest }));
    expect(await shop.store.check()).toMatchObject({ photographs: 1, photographsMissing: 0 });
    writeFileSync(join(shop.dir, 'photos', `${photo}.webp`), 'another');
    expect(await shop.store.check()).toMatchObject({ bad: { code: 'photograph' } });
    rmSync(join(shop.dir, 'photos'), { recursive: true });
    expect(await shop.store.check()).toMatchObject({ photographsMissing: 1, told: [expect.stringMatching(/photographs/)] });
    await shop.store.close();
    const started = await good.open(shop.dir);
    expect(started.told).toEqual(['1 of the photographs that entries name are not there.']);
    rmSync(shop.dir, { recursive: true });
  });
});

describe('what nobody sees', () => {
  it('is said in words, and only that', async () => {
    const unseen = Object.entries({ ...LEDGER, ...ROWS }).filter(([, [, seen]]) => seen === 'nothing');
    const files = Object.entries(FILES).filter(([, [, start, check]]) => start === 'nothing' && check === 'nothing');
    const said = UNSEEN.flatMap(({ where }) => where);
    for (const [column] of unseen) expect(said).toContain(`ledger.db ${column}`);
    for (const [what] of files) expect(said.some((where) => what.startsWith(where.replace(/ \*$/, '')))).toBe(true);
    for (const where of said.filter((one) => one.startsWith('ledger.db ')))
      expect(unseen.map(([column]) => `ledger.db ${column}`)).toContain(where);
    expect(UNSEEN.every(({ say }) => /\.$/.test(say))).toBe(true);
  });
});

/** "table.column" of every table that is no shadow of the index, from the file itself. */
async function columnsOf(name: string): Promise<readonly string[]> {
  const dir = good.copy();
  const found: string[] = [];
  await inFile(dir, name, async (db) => {
    const { rows } = await db.execute(
      "SELECT t.name AS t, c.name AS c FROM pragma_table_list AS t, pragma_table_info(t.name) AS c WHERE t.type = 'table' AND t.schema = 'main' AND t.name NOT LIKE 'sqlite%'",
    );
    found.push(...rows.map(({ t, c }) => `${t}.${c}`));
  });
  expect(existsSync(dir)).toBe(true);
  return found.sort();
}
