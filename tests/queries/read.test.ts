// What the screens read: pages that follow one another, things of a job, and the Find box.
import { getTableColumns, getTableName } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as schema from '../../drizzle/schema.ts';
import { entriesOf, lastOfStream, trailBack, withCorrections } from '../../src/queries/entries.ts';
import { logSize, streamSizes } from '../../src/queries/sizes.ts';
import { findThings, newestOf, thingAt, thingsAt, thingsOfStream } from '../../src/queries/things.ts';
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
  it('turns the pages of the jobs from the newest back', async () => {
    const first = await newestOf(shop.store, 'job', { limit: 2 });
    const second = await newestOf(shop.store, 'job', { limit: 2, before: first.next ?? 0 });
    expect([...first.things, ...second.things].map(({ id }) => id)).toEqual(jobs.toReversed());
    expect(second.next).toBeNull();
  });

  it('turns the pages of the whole ledger from the newest entry back, of one kind and of one person alone', async () => {
    const all = async (only: { type: string; by: string }, limit: number) => {
      const seqs: number[] = [];
      for (let before: number | null = Number.MAX_SAFE_INTEGER; before !== null; ) {
        const { kept, older }: Awaited<ReturnType<typeof trailBack>> = await trailBack(shop.store, before, only, limit);
        seqs.push(...kept.map(({ seq }) => seq));
        before = older;
      }
      return seqs;
    };
    const whole = [9, 8, 7, 6, 5, 4, 3, 2, 1, 0];
    expect(await all({ type: '', by: '' }, 3)).toEqual(whole);
    expect(await all({ type: '', by: shop.owner }, 4)).toEqual(whole);
    expect(await all({ type: 'piece_received', by: '' }, 2)).toEqual([9, 7, 5]);
    expect(await all({ type: 'piece_received', by: shop.owner }, 1)).toEqual([9, 7, 5]);
    expect(await all({ type: '', by: shop.newRef('person') }, 3)).toEqual([]);
  });

  it('reads a job: its things, its entries and how many there are', async () => {
    const [one = shop.newRef('job')] = jobs;
    expect((await thingsOfStream(shop.store, one)).map(({ kind }) => kind)).toEqual(['job', 'bag', 'piece']);
    expect((await entriesOf(shop.store, one)).map(({ leaf }) => leaf.type)).toEqual(['job_opened', 'piece_received']);
    const last = await lastOfStream(shop.store, one, Number.MAX_SAFE_INTEGER, 1);
    const before = await lastOfStream(shop.store, one, last.older ?? 0, 1);
    expect([...last.kept, ...before.kept].map(({ leaf }) => leaf.type)).toEqual(['piece_received', 'job_opened']);
    const none = shop.newRef('job');
    expect([...(await streamSizes(shop.store, [one, none]))]).toEqual([
      [one, 2],
      [none, 0],
    ]);
    expect(await logSize(shop.store)).toBe(10);
  });

  it('reads an entry with what corrects it, and a thing only of the kind asked for', async () => {
    const [received] = (await trailBack(shop.store, Number.MAX_SAFE_INTEGER, { type: 'piece_received', by: '' }, 1)).kept;
    if (!received) throw new Error('no piece was received');
    const { hash: target, seq } = received;
    expect((await withCorrections(shop.store, [received])).map((kept) => kept.seq)).toEqual([seq]);
    const is = [{ part: 'frame', metal: 'gold-585' }];
    await shop.write(
      line('corrected', { target, seq, field: 'parts', was: [{ part: 'frame', metal: 'gold-375' }], is, reason: 'misread' }),
    );
    expect((await withCorrections(shop.store, [received])).map((kept) => kept.seq)).toEqual([seq, 10]);
    const [one = shop.newRef('job')] = jobs;
    expect([(await thingAt(shop.store, one))?.id, await thingAt(shop.store, one, 'piece')]).toEqual([one, null]);
    expect((await thingsAt(shop.store, [...jobs, shop.newRef('job'), one])).map(({ id }) => id).sort()).toEqual(jobs.toSorted());
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
    const rows = await shop.store.read(`SELECT name, type, "notnull", pk FROM pragma_table_xinfo('${getTableName(table)}') ORDER BY cid`);
    const made = rows.map(({ name, type, notnull, pk }) => ({ name, type, optional: Number(notnull) === 0 && Number(pk) === 0 }));
    const said = Object.values(getTableColumns(table)).map((column) => ({
      name: column.name,
      type: column.getSQLType().toUpperCase(),
      optional: !column.notNull && !column.primary,
    }));
    expect(said).toEqual(made);
  });
});
