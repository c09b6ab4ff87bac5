// A stock that is weighed whole, through the web: what is written out of it, what is not, and the sentence that says what was tested.
import { afterAll, beforeAll, expect, it } from 'vitest';
import { instant } from '../../src/units/dates.ts';
import { line } from '../shop.ts';
import { takeRingIn } from './job-in-house.ts';
import { openSite, type Site } from './site.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

it('a stock between counts is accounted for, until a gram of it is gone', async () => {
  const { shop } = site;
  const owner = await site.as('owner');
  const later = () => {
    shop.clock.now = instant(shop.clock.now + 60_000);
  };
  const page = async () => (await owner.get('/flow')).text();
  const stock = shop.newRef('stock');
  const { piece } = await takeRingIn(shop);
  const read = (text: string) => shop.grams(text, { repeats: [text], because: 'as read' });
  const count = async (text: string) => {
    later();
    await shop.write(line('stock_counted', { stock, weight: read(text) }));
  };
  await shop.write(line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('20.00') }));
  expect(await page()).toContain('No stock of it was weighed whole twice, so nothing is tested.');
  await count('20.00');
  later();
  await shop.write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'wire', weight: shop.grams('2.00') }));
  await count('18.00');
  // Three quarters of what the balance shows is gold.
  const agreed = await page();
  expect(agreed).toMatch(
    /Wire: 15\.00\sg weighed, 0\.00\sg in, 1\.50\sg out, 13\.50\sg weighed\. Over the period: no difference to 0\.01\sg, ± 0\.0\d\sg; since the first count: no difference to 0\.01\sg/,
  );
  expect(agreed).toContain('no more is missing or too much than weighing explains');
  await count('17.00');
  const short = await page();
  expect(short).toMatch(/Over the period: 0\.75\sg missing, ± 0\.0\d\sg; since the first count: 0\.75\sg missing/);
  expect(short).toContain('Tested over all 2 periods since the first count');
  expect(short).toContain('more is missing than weighing explains');
  const setup = await (await owner.get('/setup')).text();
  expect(setup).toContain(`/write/stock_counted?stock=${stock}`);
});
