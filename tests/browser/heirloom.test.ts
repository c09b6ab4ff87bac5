// One heirloom through the whole bench, entry by entry, as a person would: with scripts and without. And two tabs on one job.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type House, openHouse, PIN, type Visit } from './harness.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const SCREENS = [
  ['with scripts, at the counter', { scripts: true, width: 1200 }],
  ['with scripts off, on a telephone', { scripts: false, width: 390 }],
] as const;
const textOf = async (visit: Visit) => ((await visit.page.locator('main').textContent()) ?? '').replaceAll('\u00a0', ' ');

/** Fills in the open form by the names it posts, whatever control each has. */
async function fill({ page }: Visit, fields: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(fields)) {
    const inputs = page.locator(`main [name="${name}"]:not([type="hidden"])`);
    const kind = await inputs.first().evaluate((input) => (input as unknown as { readonly type: string }).type);
    if (kind.startsWith('select')) await inputs.first().selectOption(value);
    else if (kind === 'radio' || kind === 'checkbox') await choose(inputs, value);
    else await inputs.first().fill(value);
  }
}
type Inputs = ReturnType<Visit['page']['locator']>;
/** A chip by its value, or the first or last of them. */
async function choose(inputs: Inputs, value: string): Promise<void> {
  if (value === 'first') return inputs.first().check({ force: true });
  if (value === 'last') return inputs.last().check({ force: true });
  const count = await inputs.count();
  for (let at = 0; at < count; at++) {
    if ((await inputs.nth(at).getAttribute('value')) === value) return inputs.nth(at).check({ force: true });
  }
  throw new Error(`no chip ${value}`);
}
const submit = ({ page }: Visit) => page.locator('main form[method="post"] .act button').first().click();

/** Writes one entry through its own form and waits until the page says its number. */
async function write(visit: Visit, path: string, fields: Readonly<Record<string, string>>): Promise<void> {
  await visit.open(path);
  await fill(visit, fields);
  await submit(visit);
  await visit.page.waitForURL(/written=|\/entries\//);
}

/** A three-stone ring of 6.82 g, agreed, in a bag; answers the path of its job. */
async function takeIn(visit: Visit, customer: string): Promise<string> {
  await visit.open('/take-in');
  await fill(visit, {
    name: customer,
    kind: 'ring',
    description: 'three-stone ring, claws worn',
    'parts.0.part': 'all',
    'parts.0.metal': 'gold-750',
    stones: '3',
    'weight.text': '6,82',
    steps: 're-tip',
    price: '140',
  });
  await visit.tap('Read it back');
  await visit.heading('Read it back');
  await visit.tap('We agree: write it and bag it');
  await visit.heading('Collection slip');
  await visit.tap('The job');
  await visit.page.waitForURL(/\/jobs\/[0-9a-z]{26}/);
  return new URL(visit.page.url()).pathname;
}

describe.each(SCREENS)('an heirloom, %s', (name, screen) => {
  test('goes from the counter through the bench to her hands, and reckons', async () => {
    const visit = await house.visit(screen);
    const lot = `18Y-${name.length}`;
    await write(visit, '/write/lot_opened', { name: lot, metal: 'gold-750' });
    await write(visit, '/write/metal_received', { stock: 'last', name: `wire ${lot}`, metal: 'gold-750', 'weight.text': '20.00' });
    const job = await takeIn(visit, `Rosa Lind ${name.length}`);
    const entry = (type: string, fields: Readonly<Record<string, string>>) => write(visit, `${job}/write/${type}`, fields);
    await entry('taken', { of: 'first' });
    await entry('piece_cleaned', { how: 'first', dry: 'first', 'weight.text': '6.80' });
    await visit.check();
    expect(await textOf(visit)).toContain('6.80 g once cleaned.');
    await entry('stone_unset', { stone: 'first', stones: '1', 'weight.text': '0.12', condition: 'first' });
    await entry('metal_cut', { metal: 'gold-750', 'weight.text': '0.30', lot: 'first' });
    await entry('metal_added', { stock: 'first', metal: 'gold-750', what: 'claw', 'weight.text': '0.45' });
    expect(await textOf(visit)).toContain('By reckoning 6.83 g is in the piece.');
    await entry('stone_set', { stone: 'first', stones: '1' });
    await visit.open(`${job}/write/piece_weighed`);
    expect(await textOf(visit)).toMatch(/expected 6\.95 ± 0\.0\d g/);
    await fill(visit, { state: 'finished', 'weight.text': '3.41' });
    await submit(visit);
    await visit.page.getByRole('heading', { name: 'Not written yet' }).waitFor();
    await visit.check();
    expect(await visit.page.inputValue('[name="weight.text"]')).toBe('3.41');
    await fill(visit, { 'weight.text': '6.94' });
    await submit(visit);
    await visit.page.waitForURL(/written=/);
    expect(await textOf(visit)).toContain('agrees as far as the balance can tell');
    await entry('piece_checked', { stones: '3', seats: 'first', marks: 'first' });
    await entry('work_finished', {});
    await visit.open(`${job}/hand-back`);
    await fill(visit, { stones: '3' });
    await visit.tap('Read it back');
    await visit.heading('Read it back');
    await visit.type('Your PIN', PIN);
    await submit(visit);
    await visit.page.waitForURL(/written=/);
    expect(await textOf(visit)).toContain('closed');
    await visit.check();
    await visit.open('/trail');
    await visit.tap('Check the log');
    await visit.page.getByRole('heading', { name: 'The log is whole' }).waitFor();
    await visit.close();
  });
});

describe('two tabs on one job', () => {
  test('show the second what the first wrote and keep what was typed there', async () => {
    const visit = await house.visit({ width: 1200 });
    const job = await takeIn(visit, 'Anke Vidal');
    const other = await visit.page.context().newPage();
    for (const page of [visit.page, other]) await page.goto(`${job}/write/piece_weighed`);
    await fill({ ...visit, page: other }, { state: 'cleaned and dry', 'weight.text': '6.81' });
    await submit({ ...visit, page: other });
    await other.waitForURL(/written=/);
    await fill(visit, { state: 'cleaned and dry', 'weight.text': '6.80' });
    await submit(visit);
    await visit.page.getByText('What you typed is kept below').waitFor();
    expect(await visit.page.inputValue('[name="weight.text"]')).toBe('6.80');
    await visit.check();
    await submit(visit);
    await visit.page.waitForURL(/written=/);
    await visit.close();
  });
});
