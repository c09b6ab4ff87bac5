// The counter on a busy day: five pieces of one customer, an heirloom on the full path, a clasp done while she waits.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type House, openHouse, PIN, type Visit } from './harness.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const SCREENS = [
  ['with scripts', { scripts: true }],
  ['with scripts off, in the dark', { scripts: false, dark: true }],
] as const;
const textOf = async (visit: Visit) => ((await visit.page.locator('main').textContent()) ?? '').replaceAll('\u00a0', ' ');

/** A photograph such as a phone makes, on the disk. */
async function photograph(): Promise<string> {
  const path = join(house.dir, 'pan.jpg');
  const pan = sharp({ create: { width: 640, height: 480, channels: 3, background: { r: 190, g: 170, b: 120 } } });
  writeFileSync(path, await pan.jpeg().toBuffer());
  return path;
}

describe.each(SCREENS)('five pieces of one customer, %s', (name, screen) => {
  test('keep who and the day, and ask anew for piece, weight and work', async () => {
    const visit = await house.visit(screen);
    const customer = `Ines Okafor ${name.length}`;
    await visit.open('/');
    await visit.enter('Leaving a piece', customer);
    await visit.heading('Short ticket');
    expect(await visit.page.inputValue('[name="name"]')).toBe(customer);
    await visit.page.setInputFiles('[name="photo"]', await photograph());
    for (let piece = 1; piece <= 5; piece++) {
      expect(await visit.page.inputValue('[name="weight.text"]')).toBe('');
      await visit.tap('Chain');
      await visit.tap('9ct gold · 375');
      await visit.tap('None');
      await visit.type('Weight on the pan', `6.1${piece}`);
      await visit.tap('solder');
      await visit.type('Price', '28');
      await visit.tap('Read it back');
      await visit.heading('Read it back');
      expect(await textOf(visit)).toContain(`For ${customer}`);
      await visit.tap(piece < 5 ? 'Agreed, and another piece for the same customer' : 'We agree: bag it and print the slip');
      await visit.heading(piece < 5 ? 'Short ticket' : 'Collection slip');
    }
    await visit.check();
    await visit.open('/');
    await visit.check();
    expect((await textOf(visit)).split(customer).length - 1).toBe(5);
    await visit.close();
  });
});

describe.each(SCREENS)('the full path, %s', (_, screen) => {
  test('is read back whole: parts, seats and groups, marks, value, risks, terms', async () => {
    const visit = await house.visit(screen);
    await visit.open('/take-in');
    await visit.heading('Full take-in');
    await visit.check();
    const { page } = visit;
    await visit.type('Name', 'Estelle Moreau');
    await page.selectOption('[name="kind"]', 'brooch');
    await visit.type('In a few words', 'bar brooch, five stones, claws worn');
    await visit.type('Part', 'bar');
    await page.selectOption('[name="parts.0.metal"]', 'gold-750');
    await visit.tap('Add a row', page.locator('#f-parts'));
    await page.locator('[name="parts.1.part"]').fill('heads');
    await page.selectOption('[name="parts.1.metal"]', 'platinum-950');
    await visit.type('Stones in it, counted with the customer', '5');
    await page.fill('[name="settings.0.seat"]', 'centre');
    for (const [member, code] of [
      ['species', 'sapphire'],
      ['backing', 'not seen'],
      ['state', 'loose'],
    ] as const)
      await page.selectOption(`[name="settings.0.${member}"]`, code);
    await visit.tap('Add a row', page.locator('#f-settings'));
    await page.locator('[name="settings.1.seat"]').fill('the four beside it');
    await page.fill('[name="settings.1.stones"]', '4');
    for (const [member, code] of [
      ['species', 'diamond'],
      ['backing', 'open'],
      ['state', 'sound'],
    ] as const)
      await page.selectOption(`[name="settings.1.${member}"]`, code);
    await page.selectOption('[name="marks.0.kind"]', 'fineness');
    await page.fill('[name="marks.0.where"]', 'on the pin');
    await page.fill('[name="marks.0.struck"]', '750');
    await page.selectOption('[name="marks.0.legible"]', 'worn');
    await visit.tap('2,000 to 10,000');
    await visit.type('Condition, by position', 'claws at centre worn through');
    await visit.type('Weight as received', '8.67');
    await page.setInputFiles('[name="photos.0.photo"]', await photograph());
    await page.selectOption('[name="photos.0.shows"]', 'pan');
    await visit.tap('re-tip claws');
    await visit.type('Price', '240');
    await visit.type('Risks that were explained, and what was said', 'The sapphire may be treated: no heat before it is out.');
    await visit.tap('Read it back');
    await visit.heading('Read it back');
    await visit.check();
    const read = await textOf(visit);
    for (const words of [
      'For Estelle Moreau.',
      'bar 18ct gold · 750, heads platinum · 950; 5 stones; 8.67 g',
      'centre: sapphire, stone loose; the four beside it: 4 diamond, sound',
      'Marks: 750, on the pin.',
      'Stated value 2,000 to 10,000, for custody only.',
      'no heat before it is out',
      'Worn metal removed: back to the customer.',
    ])
      expect(read).toContain(words);
    await visit.tap('Change something');
    await visit.heading('Full take-in');
    expect(await page.inputValue('[name="settings.1.seat"]')).toBe('the four beside it');
    await visit.type('Price', '260');
    await visit.tap('Read it back');
    await visit.heading('Read it back');
    expect(await textOf(visit)).toContain('£260.00');
    await visit.tap('We agree: write it and bag it');
    await visit.heading('Collection slip');
    await visit.check();
    await visit.tap('The job');
    await visit.heading(/^bar brooch/);
    expect(await textOf(visit)).toContain('Mark read on the pin: 750');
    await visit.close();
  });

  test('tells every gap at once, beside its field, and keeps what was typed', async () => {
    const visit = await house.visit(screen);
    await visit.open('/take-in');
    await visit.type('In a few words', 'signet ring');
    await visit.tap('Read it back');
    await visit.page.getByRole('heading', { name: 'Not written yet' }).waitFor();
    await visit.check();
    expect(await visit.page.inputValue('[name="description"]')).toBe('signet ring');
    await visit.close();
  });
});

describe.each(SCREENS)('wait and take, %s', (_, screen) => {
  test('writes in and out together, and leaves nothing in the house', async () => {
    const visit = await house.visit(screen);
    await visit.open('/wait');
    await visit.heading('Wait and take');
    await visit.check();
    await visit.tap('Bracelet');
    await visit.tap('silver · 925');
    await visit.tap('None');
    await visit.type('Weight on the pan', '21.40');
    await visit.tap('new clasp');
    await visit.type('Price', '18');
    await visit.type('Stones counted out with the customer', '0');
    await visit.tap('marks still readable');
    await visit.tap('Read it back');
    await visit.heading('Read it back');
    await visit.type('Your PIN', PIN);
    await visit.tap('We agree: it goes home');
    await visit.heading(/^bracelet$/);
    const said = await textOf(visit);
    for (const words of ['Received: bracelet', 'Work finished', 'Returned to the customer', 'Job closed']) expect(said).toContain(words);
    await visit.close();
  });
});
