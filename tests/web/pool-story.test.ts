// What is kept of lots, stocks and skins between two pages is what telling the whole ledger anew gives, whatever was written between.
import { afterEach, beforeEach, expect, it } from 'vitest';
import { base64url } from '../../src/log/bytes.ts';
import { told } from '../../src/projections/told.ts';
import { entriesOfPools } from '../../src/queries/entries.ts';

import { instant } from '../../src/units/dates.ts';
import { poolStory } from '../../src/web/owner/pool-story.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
beforeEach(async () => {
  shop = await openShop();
});
afterEach(() => shop.close());
const minutes = (n: number) => {
  shop.clock.now = instant(shop.clock.now + n * 60_000);
};

/** What is kept, once it is seen to be what is told anew. */
async function kept() {
  const { entries } = await poolStory(shop.store);
  expect(entries).toEqual(told(await entriesOfPools(shop.store, 0)));
  return entries;
}

async function hashOf(seq: number): Promise<string> {
  const [row] = await shop.store.read('SELECT leaf_hash FROM entry WHERE seq = ?', [seq]);
  return base64url(new Uint8Array(row?.leaf_hash as ArrayBuffer));
}

it('keeps the order of what happened, over stated times and a clock that was set back', async () => {
  const [stock, lot] = [shop.newRef('stock'), shop.newRef('lot')];
  const metal = 'gold-750';
  expect(await kept()).toEqual([]);
  const bought = await shop.write(line('metal_received', { stock, name: 'Wire', metal, weight: shop.grams('20.00') }));
  const began = shop.clock.now;
  await kept();
  minutes(60);
  const counted = await shop.write(line('stock_counted', { stock, weight: shop.grams('20.00') }));
  await kept();
  minutes(-30);
  const setBack = await shop.write(line('stock_counted', { stock, weight: shop.grams('19.99') }));
  await kept();
  minutes(60);
  const stated = await shop.write(line('stock_counted', { stock, weight: shop.grams('20.01') }, instant(began + 60_000)));
  expect((await kept()).map(({ seq }) => seq)).toEqual([bought, stated, counted, setBack]);
  const opened = await shop.write(line('lot_opened', { lot, name: 'L1', metal }), line('note_added', { about: stock, text: 'Seen.' }));
  expect((await kept()).map(({ seq }) => seq)).toContain(opened);
});

it('reads an earlier entry as it is corrected later', async () => {
  const stock = shop.newRef('stock');
  const weight = (text: string) => shop.grams(text);
  const seq = await shop.write(line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: weight('20.00') }));
  await shop.write(line('stock_counted', { stock, weight: weight('19.00') }));
  const before = await kept();
  const said = { target: await hashOf(seq), seq, field: 'weight', was: weight('20.00'), is: weight('19.00'), reason: 'misread' };
  await shop.write(line('corrected', said));
  const after = await kept();
  expect(JSON.stringify(before[0])).toContain('20.00');
  expect(JSON.stringify(after[0])).not.toContain('20.00');
  await shop.write(line('stock_counted', { stock, weight: weight('18.99') }));
  expect(await kept()).toHaveLength(4);
});

it('is the same object until something is written, and only continued by what is', async () => {
  const stock = shop.newRef('stock');
  await shop.write(line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('20.00') }));
  const before = await poolStory(shop.store);
  expect(await poolStory(shop.store)).toBe(before);
  await shop.write(line('stock_counted', { stock, weight: shop.grams('20.00') }));
  const after = await poolStory(shop.store);
  expect(after.entries).toHaveLength(2);
  expect(after.entries[0]).toBe(before.entries[0]);
});
