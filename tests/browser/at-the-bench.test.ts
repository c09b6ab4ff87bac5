// The bench's own tools in a real browser: the calculator without scripts, a half-typed form through a reload and a lock, the balance's pages.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type House, openHouse, PIN, type Visit } from './harness.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const SCREENS = [
  { width: 390, dark: false },
  { width: 1200, dark: true },
] as const;
const main = (visit: Visit) => visit.page.locator('main');
const shown = async (visit: Visit) => ((await main(visit).textContent()) ?? '').replaceAll('\u00a0', ' ');

const HALF_SHANK = '/calculator/shank?metal=18K+yellow&section=halfRound&width=2%2C5&thickness=1.5&system=uk&size=M&share=half';

describe('the calculator', () => {
  it('reckons a half-shank of 2.5 × 1.5 mm half-round 18ct in size M with scripts off, and keeps it in its address', async () => {
    const visit = await house.visit({ scripts: false });
    await visit.open('/calculator');
    await visit.tap('Shank');
    await visit.page.locator('#f-width').fill('2,5');
    await visit.page.locator('#f-thickness').fill('1.5');
    await visit.page.locator('#f-size').fill('M');
    await visit.tap('half-shank');
    await visit.tap('Calculate', main(visit));
    // By hand: π/4 × 2.5 × 1.5 mm² × (52.5 + π × 1.5) ÷ 2 mm × 15.58 g/cm³ = 1.3126 g
    expect(await shown(visit)).toContain('1.313 g ± 0.131 g');
    expect(visit.page.url()).toContain('size=M');
    await visit.page.locator('#f-size').fill('QQ');
    await visit.tap('Calculate', main(visit));
    expect(await shown(visit)).toContain('UK has no size QQ');
    await visit.close();
  });
  it.each(SCREENS)('has nothing that axe finds, asked, answered and refused, at $width px', async (screen) => {
    const visit = await house.visit(screen);
    for (const path of ['/calculator', '/calculator/stone', HALF_SHANK, HALF_SHANK.replace('size=M', 'size=QQ'), '/devices']) {
      await visit.open(path);
      await visit.check();
    }
    await visit.close();
  });
});

describe('a half-typed form', () => {
  const PATH = '/write/place_named';
  it('survives a reload', async () => {
    const visit = await house.visit();
    await visit.open(PATH);
    await visit.page.locator('#f-name').pressSequentially('Window tray');
    await visit.page.waitForResponse((answer) => new URL(answer.url()).pathname === '/drafts');
    await visit.page.reload();
    expect(await visit.page.locator('.who').textContent()).toContain('1 not written yet');
    await visit.tap('1 not written yet');
    await visit.check();
    await visit.page.locator('.unwritten a').first().click();
    expect(await visit.page.locator('#f-name').inputValue()).toBe('Window tray');
    await visit.close();
  });
  it('survives being left at once, and the lock', async () => {
    const visit = await house.visit();
    await visit.open(PATH);
    await visit.page.locator('#f-name').pressSequentially('Back safe');
    await visit.tap('Lock');
    await visit.page.waitForURL('**/sign-in');
    await visit.page.fill('#f-pin', PIN);
    await visit.tap('Sign in', main(visit));
    await visit.open('/drafts');
    expect(await shown(visit)).toContain('Name a place');
    await visit.page.locator('.unwritten a').first().click();
    expect(await visit.page.locator('#f-name').inputValue()).toBe('Back safe');
    await visit.close();
  });
  it('waits behind the sign-in after ten idle minutes', async () => {
    const visit = await house.visit();
    await visit.page.clock.install();
    await visit.open(PATH);
    await visit.page.locator('#f-name').fill('Top drawer');
    await visit.page.clock.runFor(605_000);
    await visit.page.waitForURL('**/sign-in?back=**');
    await visit.page.fill('#f-pin', PIN);
    await visit.tap('Sign in', main(visit));
    await visit.page.waitForURL('**/write/place_named?draft=**');
    expect(await visit.page.locator('#f-name').inputValue()).toBe('Top drawer');
    await visit.close();
  });
  it('says that nothing was written when the connection is gone, and keeps what is on the screen', async () => {
    const visit = await house.visit();
    await visit.open(PATH);
    await visit.page.locator('#f-name').fill('Far tray');
    await visit.page.context().setOffline(true);
    await visit.page.locator('main form.sheet .act button').first().click();
    await visit.page.waitForFunction('!document.getElementById("alert").hidden');
    expect(await visit.page.locator('#f-name').inputValue()).toBe('Far tray');
    await visit.page.context().setOffline(false);
    await visit.close();
  });
});

describe('a balance', () => {
  it.each(SCREENS)('is checked in the morning, and read ten times, at $width px', async (screen) => {
    const visit = await house.visit(screen);
    await visit.open('/setup');
    await visit.tap('Bench balance', main(visit));
    await visit.check();
    await visit.tap('Daily check');
    await visit.check();
    await visit.page.locator('#f-nominal').fill('200 g');
    await visit.page.locator('#f-certifiedG').fill('200.0001');
    await visit.page.locator('#f-shown-text').fill('200.01');
    await visit.page.locator('main form.sheet .act button').first().click();
    await visit.page.waitForURL(/\/balances\/\w+$/);
    expect(await shown(visit)).toContain('Last check passed');
    await visit.tap('Ten readings');
    for (let row = 0; row < 10; row++) await visit.page.locator(`[name="readings.${row}"]`).fill(row % 2 === 0 ? '50.00' : '50.01');
    await visit.page.locator('main form.sheet .act button').first().click();
    await visit.page.locator('button[name="agreed"]').first().waitFor();
    // By hand: ten readings 5 mg either side of their mean: √(10 × 25 ÷ 9) = 5.27 mg
    expect(await shown(visit)).toContain('s = 0.0053 g');
    await visit.check();
    await visit.page.fill('#f-pin', PIN);
    await visit.page.locator('button[name="agreed"]').first().click();
    await visit.page.waitForURL(/\/balances\/\w+$/);
    expect(await shown(visit)).toContain('0.0053 g, from 10 readings');
    await visit.check();
    await visit.close();
  });
});
