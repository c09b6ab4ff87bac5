// What is said while the piece is in the hand is what is known: five ways a weight goes wrong or open at a bench, each walked to its sentence.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type House, landed, openHouse, type Screen, type Visit } from './harness.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
  const setup = await house.visit();
  await fill(setup, '/write/metal_received', { name: '18ct wire', metal: 'gold-750', 'weight.text': '20.00' });
  await fill(setup, '/write/tare_listed', { thing: 'string tag', from: 'ten weighed together', 'weight.text': '0.21' });
  await setup.close();
});
afterAll(() => house.close());

const PHONE: Screen = { width: 390 };
const DESK: Screen = { width: 1200 };
const shown = async ({ page }: Visit) => ((await page.locator('main').textContent()) ?? '').replaceAll('\u00a0', ' ');

/** What the page comes to say once an answer has been put into it. */
const says = (visit: Visit) => expect.poll(() => shown(visit), { timeout: 10_000 });

/** Fills the sheet at that address by the names of its inputs, sends it, and waits for the answer. */
async function fill({ page }: Visit, path: string, said: Readonly<Record<string, string>>): Promise<void> {
  if (new URL(page.url()).pathname !== path) await page.goto(path);
  for (const [name, value] of Object.entries(said)) {
    const input = page.locator(`main form.sheet [name="${name}"]:not([type="hidden"])`).first();
    const kind = await input.evaluate<string, { readonly type: string }>(({ type }) => type);
    if (kind === 'radio' || kind === 'checkbox')
      await page.locator(`main form.sheet [name="${name}"][value="${value}"]`).check({ force: true });
    else if (kind === 'select-one') await input.selectOption(value);
    else await input.fill(value, { force: true });
  }
  const answered = page.waitForResponse((answer) => answer.request().method() === 'POST' && answer.url().endsWith(path));
  await page.locator('main form.sheet .act button').first().click();
  await landed(page, await answered);
}

/** A ring over the counter by the short ticket; answers the address of its job. */
async function ring(visit: Visit, grams: string, { work = 'size-up', stones = '' } = {}): Promise<string> {
  await visit.page.goto('/ticket?q=07700900471');
  const sizes = work === 'size-up' ? { sizeFrom: 'L', sizeTo: 'N' } : {};
  const counted = stones === '' ? { stonesSeen: 'none' } : { stonesSeen: 'tight', stones };
  const said = {
    kind: 'ring',
    metal: 'gold-750',
    'weight.text': grams,
    steps: work,
    price: '45',
    priceKind: 'fixed',
    ...sizes,
    ...counted,
  };
  await fill(visit, '/ticket', { name: 'Moyo Adeyemi', ...said });
  await visit.page.locator('button[name="agreed"]').first().click();
  await visit.heading('Collection slip');
  return /\/jobs\/[^/]+/.exec(visit.page.url())?.[0] ?? '';
}

describe('an insert by difference', () => {
  test('is asked about where the sizes do not explain it, and goes in as it is read again', async () => {
    const visit = await house.visit(PHONE);
    const job = await ring(visit, '4.12');
    const looked = { method: 'insert', to: 'N', stonesHold: 'yes', marksHold: 'yes' };
    await fill(visit, `${job}/finish`, { ...looked, 'weight.text': '5.29' });
    await says(visit).toMatch(/5\.29 g is 1\.17 g more than the 4\.12 g before\. From L to N at most about 0\.\d\d g is let in/);
    await visit.check();
    await fill(visit, `${job}/finish`, { 'weight.text': '4.29' });
    await visit.open(job);
    await says(visit).toContain('0.17 g by difference');
    await visit.close();
  });
});

describe('digits swapped in a cut', () => {
  test('show at the next weighing, while the cut is still on the bench', async () => {
    const visit = await house.visit(DESK);
    const job = await ring(visit, '4.12', { work: 're-tip' });
    await fill(visit, `${job}/write/metal_cut`, {
      metal: 'gold-750',
      'weight.text': '0.14',
      packet: await fresh(visit, job, 'metal_cut', 'packet'),
    });
    await fill(visit, `${job}/write/piece_weighed`, { state: 'cut', 'weight.text': '3.71' });
    await says(visit).toMatch(/3\.71 g was read and 3\.98 g is expected/);
    await visit.check();
    await visit.close();
  });
});

describe('a tag left on', () => {
  test('is named as what would explain the weight', async () => {
    const visit = await house.visit(PHONE);
    const job = await ring(visit, '4.12', { work: 'polish' });
    await fill(visit, `${job}/write/piece_weighed`, { state: 'polished', 'weight.text': '4.33' });
    await says(visit).toMatch(/4\.33 g was read and 4\.12 g is expected/);
    expect(await shown(visit)).toMatch(/slip of the pen:[^.]*string tag/);
    await visit.check();
    await visit.close();
  });
});

describe('a stone out unweighed', () => {
  test('leaves the sum open, and says so', async () => {
    const visit = await house.visit(DESK);
    const job = await ring(visit, '4.12', { work: 're-tip', stones: '1' });
    await fill(visit, `${job}/write/stone_unset`, {
      stones: '1',
      condition: 'sound',
      stone: await fresh(visit, job, 'stone_unset', 'stone'),
    });
    await fill(visit, `${job}/write/piece_weighed`, { state: 'stones out', 'weight.text': '3.92' });
    await visit.open(job);
    const said = await shown(visit);
    expect(said).toContain('not weighed');
    expect(said).not.toMatch(/does not agree|accounts for all/);
    await visit.check();
    await visit.close();
  });
});

describe('a piece cleaned before work', () => {
  test('has two first weights, and the customer is told both', async () => {
    const visit = await house.visit(PHONE);
    const job = await ring(visit, '5.38', { work: 'polish' });
    await fill(visit, `${job}/write/piece_cleaned`, { how: 'steam', dry: 'dry', 'weight.text': '5.35' });
    await visit.open(`${job}/letter`);
    await says(visit).toContain('Your ring weighed 5.38 g at the counter, 5.35 g once cleaned');
    await visit.check();
    await visit.close();
  });
});

/** The name that a form offers for a thing that begins with it. */
async function fresh({ page }: Visit, job: string, type: string, name: string): Promise<string> {
  await page.goto(`${job}/write/${type}`);
  return page.locator(`[name="new.${name}"]`).inputValue();
}
