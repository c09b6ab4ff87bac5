// What the screens read: pages that follow one another, things of a job, and the Find box.
import { getTableColumns, getTableName } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as schema from '../../drizzle/schema.ts';
import { entriesBefore, entriesOfStream, findThings, streamSize, things, thingsOfStream } from '../../src/store/read.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
let bag: string;
const job = () => shop.newRef('job');
let jobs: ReturnType<typeof job>[];
beforeAll(async () => {
  shop = await openShop();
  jobs = [job(), job(), job()];
  for (const one of jobs) {
    const code = shop.newBag();
    bag ??= code;
    await shop.write(
      line('job_opened', { job: one, bag: code, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      line('piece_received', {
        job: one,
        piece: shop.newRef('piece'),
        kind: 'brooch',
        description: 'Brooch with "seed" pearls',
        parts: [{ part: 'frame', metal: 'gold-375' }],
        stones: 9,
      }),
    );
  }
});
afterAll(() => shop.close());

describe('what the screens read', () => {
  it('turns the pages of the jobs in the order they were opened', async () => {
    const first = await things(shop.store, { kind: 'job', status: 'open', limit: 2 });
    const second = await things(shop.store, { kind: 'job', status: 'open', limit: 2, after: first.next ?? 0 });
    expect([...first.rows, ...second.rows].map(({ id }) => id)).toEqual(jobs);
    expect(second.next).toBeNull();
    expect((await things(shop.store, { kind: 'job', status: 'closed' })).rows).toEqual([]);
  });

  it('turns the pages of the whole ledger from the newest entry back', async () => {
    const seqs: number[] = [];
    for (let next: number | null = Number.MAX_SAFE_INTEGER; next !== null; ) {
      const page = await entriesBefore(shop.store, next, 3);
      seqs.push(...page.rows.map(({ seq }) => seq));
      next = page.next;
    }
    expect(seqs).toEqual([9, 8, 7, 6, 5, 4, 3, 2, 1, 0]);
  });

  it('reads a job: its things, its entries and how many there are', async () => {
    const [one = shop.newRef('job')] = jobs;
    expect((await thingsOfStream(shop.store, one)).map(({ kind }) => kind)).toEqual(['job', 'bag', 'piece']);
    const page = await entriesOfStream(shop.store, one, { limit: 1 });
    const rest = await entriesOfStream(shop.store, one, { after: page.next ?? 0 });
    expect([...page.rows, ...rest.rows].map(({ leaf }) => leaf.type)).toEqual(['job_opened', 'piece_received']);
    expect(rest.next).toBeNull();
    expect(await streamSize(shop.store, one)).toBe(2);
  });

  it('finds pieces by words in any order and a bag by the first letters of its code', async () => {
    expect((await findThings(shop.store, 'pearls brooch')).map(({ kind }) => kind)).toEqual(['piece', 'piece', 'piece']);
    expect(await findThings(shop.store, 'pearls tiara')).toEqual([]);
    expect((await findThings(shop.store, '"seed"')).length).toBe(3);
    expect((await findThings(shop.store, bag.slice(0, 2).toLowerCase())).map(({ id }) => id)).toContain(bag);
    expect(await findThings(shop.store, ' ')).toEqual([]);
  });

  it('cannot write through the reader', async () => {
    await expect(shop.store.read("INSERT INTO command VALUES ('a', 'b', x'00', 0, 0, 0)")).rejects.toMatchObject({
      code: 'SQLITE_READONLY',
    });
  });

  it.each(Object.values(schema))('the table in TypeScript is the one that the SQL makes', async (table) => {
    const rows = await shop.store.read(`SELECT name, type, "notnull", pk FROM pragma_table_info('${getTableName(table)}') ORDER BY cid`);
    const made = rows.map(({ name, type, notnull, pk }) => ({ name, type, optional: Number(notnull) === 0 && Number(pk) === 0 }));
    const said = Object.values(getTableColumns(table)).map((column) => ({
      name: column.name,
      type: column.getSQLType().toUpperCase(),
      optional: !column.notNull && !column.primary,
    }));
    expect(said).toEqual(made);
  });
});
