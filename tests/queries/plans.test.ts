// The plan of every statement of the screens: none walks the whole of a table that grows with the ledger.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { entry, entryLink, thing } from '../../drizzle/schema.ts';
import { inList, rows, type Statement, statement } from '../../src/queries/statement.ts';
import { type Connect, connect } from '../../src/store/connection.ts';
import { openDirectory } from '../../src/store/names.ts';
import { openShop, type Shop } from '../shop.ts';
import { takeRingIn } from '../web/job-in-house.ts';
import { openSite } from '../web/site.ts';

const FOLDER = join(import.meta.dirname, '..', '..', 'src', 'queries');
type Any = Statement<string, unknown>;
const isStatement = (value: unknown): value is Any => typeof value === 'function' && 'sql' in value;

const files = readdirSync(FOLDER).filter((name) => name !== 'statement.ts');
const found = await Promise.all(
  files.map(async (name) => {
    const exported = Object.entries((await import(join(FOLDER, name))) as Record<string, unknown>);
    const statements = exported.flatMap(([named, value]) => (isStatement(value) ? [[`${name} ${named}`, value.sql] as const] : []));
    return { name, text: readFileSync(join(FOLDER, name), 'utf8'), statements };
  }),
);
const all = found.flatMap(({ statements }) => statements);

let shop: Shop;
beforeAll(async () => {
  shop = await openShop();
});
afterAll(() => shop.close());

/** What is short however long the ledger is: a list given as an argument, the full-text index, the schema, a thousand people at a time. */
const SHORT = /VIRTUAL TABLE|CONSTANT ROW|SCAN sqlite_schema|SCAN some$/;
/** Steps of a plan that walk a whole table or index (SQLite, EXPLAIN QUERY PLAN: SCAN visits every row, SEARCH some of them). */
async function scansOf(text: string): Promise<readonly string[]> {
  const plan = await shop.store.read(`EXPLAIN QUERY PLAN ${text}`);
  return plan.map(({ detail }) => String(detail)).filter((step) => /\bSCAN\b/.test(step) && !SHORT.test(step));
}

describe('statements', () => {
  it('are all looked at: each is exported under a name of its own', () => {
    const made = found.map(({ name, text, statements }) => [name, [...text.matchAll(/\bstatement\(/g)].length - statements.length]);
    expect(made.filter(([, missing]) => missing !== 0)).toEqual([]);
    expect(all.length).toBeGreaterThan(20);
  });

  it.each(all)('%s walks no table', async (_, text) => {
    expect(await scansOf(text)).toEqual([]);
  });

  it('have the plan here that they have in a long ledger: without statistics the engine goes by the indexes alone', async () => {
    expect(await shop.store.read("SELECT name FROM sqlite_schema WHERE name LIKE 'sqlite_stat%'")).toEqual([]);
  });

  it.each([
    [
      'entries by a word in them',
      statement(['word'], ({ word }) => rows.select({ seq: entry.seq }).from(entry).where(sql`instr(${entry.leaf}, ${word})`)),
    ],
    [
      'links by entry',
      statement(['seqs'], ({ seqs }) => rows.select({ n: entryLink.n }).from(entryLink).where(inList(entryLink.seq, seqs))),
    ],
    ['things by state', statement([], () => rows.select({ id: thing.id }).from(thing).where(sql`${thing.status} NOT IN ('closed')`))],
    [
      'all jobs beside their links',
      statement([], () => rows.select({ id: thing.id }).from(thing).crossJoin(entryLink).where(sql`${entryLink.seq} = ${thing.n}`)),
    ],
  ] as const)('that walk a table are found: %s', async (_, planted) => {
    expect(await scansOf(planted.sql)).not.toEqual([]);
  });

  it('refuse a column that no row could be read by', () => {
    expect(() => statement([], () => rows.select({ n: sql<number>`COUNT(*)` }).from(entry))).toThrow();
    expect(() => statement([], () => rows.select({ a: entryLink.seq, b: entry.seq }).from(entry).crossJoin(entryLink))).toThrow();
  });
});

describe('pages', () => {
  it('ask nothing of the ledger, by whatever part of the program, that walks a table', async () => {
    const asked = new Set<string>();
    const noting: Connect = (path, use) => {
      const db = connect(path, use);
      const noted = (sql: string) => use === 'read' && path.endsWith('ledger.db') && asked.add(sql);
      return {
        ...db,
        all(sql, args) {
          noted(sql);
          return db.all(sql, args);
        },
      };
    };
    const site = await openSite({ connect: noting });
    const { job } = await takeRingIn(site.shop);
    const owner = await site.as('owner');
    asked.clear();
    const ofJob = ['', '/reckoning', '/letter', '/letter.html', '/stones', '/write/piece_weighed', '/finish', '/slip'];
    const paths = [
      ...[
        '/',
        '/bench',
        '/safe',
        '/whose?what=piece&weight.basis=estimate&weight.text=6.82',
        '/ticket',
        '/take-in',
        '/wait',
        '/owner',
        '/loss',
        '/owner/weights',
        '/flow',
        '/setup',
        '/trail',
        '/drafts',
      ],
      ...['/find?q=abara', '/find?q=07700', '/find?q=K', '/find?q=zzz', '/write/note_added', '/write/job_opened', '/entries/3'],
      ...['/trail?type=piece_received', `/trail?by=${site.shop.owner}`, `/balances/${site.shop.balance}`, '/readyz'],
      ...ofJob.map((path) => `/jobs/${job}${path}`),
    ];
    for (const path of paths) expect([path, (await owner.get(path)).status < 400]).toEqual([path, true]);
    const { directory, store } = site.web;
    await directory.settled();
    await openDirectory(store);
    const statements = [...asked].filter((text) => /^(SELECT|WITH)\b/i.test(text));
    expect(statements.length).toBeGreaterThan(25);
    const scanning = await Promise.all(statements.map(async (text) => ({ text, scans: await scansOf(text) })));
    expect(scanning.filter(({ scans }) => scans.length > 0)).toEqual([]);
    await site.close();
  });
});
