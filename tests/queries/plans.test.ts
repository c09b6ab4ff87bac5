// The plan of every statement of the screens: none walks the whole of a table that grows with the ledger.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { entry, entryLink, thing } from '../../drizzle/schema.ts';
import { inList, rows, type Statement, statement } from '../../src/queries/statement.ts';
import { openShop, type Shop } from '../shop.ts';

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

/** Steps of a plan that walk a whole table or index (SQLite, EXPLAIN QUERY PLAN: SCAN visits every row, SEARCH some of them). */
async function scansOf(text: string): Promise<readonly string[]> {
  const plan = await shop.store.read(`EXPLAIN QUERY PLAN ${text}`);
  return plan.map(({ detail }) => String(detail)).filter((step) => /\bSCAN\b/.test(step) && !/VIRTUAL TABLE|CONSTANT ROW/.test(step));
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
