// A ring to be sized, from the counter to hand-back, as one person in the shop does it: taps counted, with scripts and without.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type House, openHouse, PIN, type Visit } from './harness.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
  const setup = await house.visit();
  await setup.open('/write/metal_received');
  await setup.type('Name of a new stock', '18ct D-section wire');
  await setup.page.selectOption('[name="metal"]', 'gold-750');
  await setup.type('Weight', '20.00');
  await setup.tap('Write the entry');
  await setup.page.waitForURL('**/entries/*');
  await setup.close();
});
afterAll(() => house.close());

/** From whoever stands at the counter to the slip in her hand; answers the bag. */
async function takeIn(counter: Visit, look: () => Promise<void>): Promise<string> {
  await counter.open('/');
  await look();
  await counter.enter('Leaving a piece', '07700 900471');
  await counter.heading('Short ticket');
  await look();
  await counter.type('Name of a new customer', 'Moyo Adeyemi');
  await counter.tap('18ct gold · 750');
  await counter.tap('All there and tight');
  await counter.type('How many, counted together', '3');
  await counter.type('Weight on the pan', '4.12');
  await counter.tap('size up');
  await counter.type('Ring size now', 'L');
  await counter.type('Size wanted', 'N');
  await counter.type('Price', '45');
  await counter.tap('up to 500');
  await counter.tap('Read it back');
  await counter.heading('Read it back');
  await look();
  const read = await counter.page.locator('main').textContent();
  for (const words of ['Moyo Adeyemi', '18ct gold · 750 ring', '4.12\u00a0g', '3 stones', 'size L to N', '£45.00']) {
    expect(read).toContain(words);
  }
  await counter.tap('We agree: bag it and print the slip');
  await counter.heading('Collection slip');
  await look();
  const narrow = counter.page.viewportSize();
  await counter.page.setViewportSize({ width: 1200, height: 844 });
  const [shop, tag] = await Promise.all(
    ['.slip header b', '.slip header .tag'].map((part) => counter.page.locator(part).first().boundingBox()),
  );
  expect((shop?.y ?? 0) + (shop?.height ?? 0)).toBeLessThanOrEqual(tag?.y ?? 0);
  if (narrow) await counter.page.setViewportSize(narrow);
  return (await counter.page.locator('.slip .tag code').first().textContent()) ?? '';
}

async function finish(bench: Visit, bag: string, look: () => Promise<void>): Promise<void> {
  await bench.open(`/b/${bag}`);
  await bench.heading(/^Finish/);
  await look();
  await bench.tap('a piece let in');
  await bench.type('Size on the stick', 'N');
  await bench.type('Weight out', '4.29');
  await bench.tap('3 stones, all tight');
  await bench.tap('Marks still readable');
  await bench.tap('Finished');
  await bench.heading(/^ring$/);
}

async function handBack(counter: Visit, bag: string, look: () => Promise<void>): Promise<void> {
  await counter.open(`/b/${bag}`);
  await counter.heading('Hand a piece back');
  expect(await counter.page.locator('main').textContent()).toContain('4.12\u00a0g in, 4.29\u00a0g out, 0.17\u00a0g more.');
  await counter.type('Stones counted out with the customer', '3');
  await look();
  await counter.tap('Read it back');
  await counter.heading('Read it back');
  await counter.type('Your PIN', PIN);
  await look();
  await counter.tap('Hand it back');
  await counter.heading(/^ring$/);
}

describe.each([
  ['with scripts', { scripts: true, dark: false }],
  ['with scripts off', { scripts: false, dark: false }],
  ['in the dark', { scripts: true, dark: true }],
])('a sizing, %s', (_, screen) => {
  test('takes at most twelve taps and two typed weights from the counter to hand-back', async () => {
    const visit = await house.visit(screen);
    const bag = await takeIn(visit, visit.check);
    await finish(visit, bag, visit.check);
    await handBack(visit, bag, visit.check);
    expect(await visit.page.locator('main').textContent()).toContain('Job closed');
    console.log(`sizing: ${visit.counted.taps} taps, ${visit.counted.typed} typed fields, two of them weights`);
    expect(visit.counted.taps).toBeLessThanOrEqual(12);
    await visit.close();
  });
});

describe('a wrong count at hand-back', () => {
  test('stops it, says what to do, and lets it go home with an exception that was told and signed', async () => {
    const visit = await house.visit();
    const nothing = async () => undefined;
    const bag = await takeIn(visit, nothing);
    await finish(visit, bag, nothing);
    await visit.open(`/b/${bag}`);
    await visit.type('Stones counted out with the customer', '2');
    await visit.tap('Read it back');
    await visit.page.getByRole('heading', { name: 'Not written yet' }).waitFor();
    await visit.check();
    expect(await visit.page.locator('main').textContent()).toContain('Count again');
    await visit.tap('hand it back with an exception');
    await visit.heading('Hand back with an exception');
    await visit.type('Stones counted out with the customer', '2');
    await visit.type('What does not agree', 'Two stones where three came in; the third is being looked for.');
    await visit.tap('They were told what does not agree, and signed');
    await visit.check();
    await visit.tap('Read it back');
    await visit.heading('Read it back');
    await visit.type('Your PIN', '0000');
    await visit.tap('Hand it back with the exception');
    await visit.page.getByText('That is not your PIN.').first().waitFor();
    await visit.type('Your PIN', PIN);
    await visit.tap('Hand it back with the exception');
    await visit.heading(/^ring$/);
    expect(await visit.page.locator('main').textContent()).toContain('with an exception: 2 stones counted out');
    await visit.close();
  });
});
