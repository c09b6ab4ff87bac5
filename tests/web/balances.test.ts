// A balance's own pages: what it may be out by, ten readings, the daily check, and the weighings that a failed check puts in doubt.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { bytesOf } from '../../src/store/keys.ts';
import { instant } from '../../src/units/dates.ts';
import { takeRingIn } from './job-in-house.ts';
import { inputsOf, openSite, PIN, type Site, type Visitor } from './site.ts';

let site: Site;
let bench: Visitor;
beforeEach(async () => {
  site = await openSite();
  bench = await site.as('bench');
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const at = () => `/balances/${site.shop.balance}`;
const page = async (path = at()) => (await (await bench.get(path)).text()).replaceAll('\u00a0', ' ');
const pass = (minutes: number) => {
  site.shop.clock.now = instant(site.shop.clock.now + minutes * 60_000);
};
const check = async (shown: string) => {
  pass(5);
  const form = await bench.form(`${at()}/check`);
  const answer = await bench.post(`${at()}/check`, { ...form, nominal: '200 g', certifiedG: '200.0000', 'shown.text': shown });
  expect(answer.status).toBe(303);
  pass(5);
};
describe('the daily check', () => {
  it('begins with the weight of the last check of this balance, and with no figure of what it shows', async () => {
    const form = () => bench.form(`${at()}/check`);
    expect([(await form()).nominal, (await form()).certifiedG]).toEqual(['', '']);
    await check('200.00');
    const next = await form();
    expect([next.nominal, next.certifiedG, next['shown.balance'], next['shown.text']]).toEqual([
      '200 g',
      '200.0000',
      site.shop.balance,
      '',
    ]);
  });
});
const results = async () => ((await bench.json(at())).checks as { result: string }[]).map(({ result }) => result);

describe('what a balance may be out by', () => {
  it('is told in e at its loads: class II, e = 0.01 g, at 400 g one and a half e when verified, three e in use (SI 1995/1907 Sch. 2 Table 3, para 4.2)', async () => {
    const text = await page();
    expect(text).toContain('± 0.0150 g');
    expect(text).toContain('± 0.0300 g');
    expect(text).toContain('400 g, by d = 0.01 g');
    expect(text).toContain('assumed: one step');
    expect(text).toContain('Usual caution');
  });
  it('has its page in place of a bare list of entries', async () => {
    expect((await bench.get(`/things/${site.shop.balance}`)).headers.get('location')).toBe(at());
    expect((await bench.get('/balances/nothing')).status).toBe(404);
  });
});

describe('ten readings of one weight', () => {
  const TEN = ['50.00', '50.01', '50.00', '50,00', '50.01', '50.00', '49.99', '50.00', '50.01', '50.00'];
  const rows = Object.fromEntries(TEN.map((text, row) => [`readings.${row}`, text]));

  it('have ten rows, are read back with s, and stand on the balance’s page (s by hand: √40 mg)', async () => {
    const form = await bench.form(`${at()}/repeatability`);
    expect(Object.keys(form).filter((name) => /^readings\.\d$/.test(name))).toHaveLength(10);
    const readBack = (await (await bench.post(`${at()}/repeatability`, { ...form, ...rows })).text()).replaceAll('\u00a0', ' ');
    expect(readBack).toContain('s = 0.0063 g');
    expect((await bench.post(`${at()}/repeatability`, { ...inputsOf(readBack), agreed: 'yes', pin: PIN })).headers.get('location')).toBe(
      at(),
    );
    expect(await page()).toContain('0.0063 g, from 10 readings');
  });
  it('are refused beside what is wrong with them', async () => {
    const form = await bench.form(`${at()}/repeatability`);
    const few = await bench.post(`${at()}/repeatability`, { ...form, 'readings.0': '50.00', 'readings.1': '50.01' });
    expect([few.status, (await few.text()).includes('at least 5 times')]).toEqual([422, true]);
    const words = await bench.post(`${at()}/repeatability`, { ...form, ...rows, 'readings.3': 'fifty' });
    expect(words.status).toBe(422);
  });
});

describe('the daily check with a certified 200 g: 0.03 g allowed in use', () => {
  it('passes, warns beyond half, fails beyond all of it, and stores no verdict', async () => {
    for (const shown of ['200.01', '199.98', '200.04']) await check(shown);
    expect(await results()).toEqual(['fail', 'warn', 'pass']);
    const [row] = await site.shop.store.read("SELECT leaf FROM entry WHERE type = 'balance_checked' ORDER BY seq DESC LIMIT 1");
    expect(new TextDecoder().decode(bytesOf(row?.leaf))).not.toMatch(/pass|fail|warn/);
  });
  it('is found by whoever may write it, from the bench', async () => {
    expect(await page('/bench')).toContain('<small>not checked yet</small>');
    expect(await page('/bench')).toContain(`href="${at()}/check"`);
    await check('200.00');
    expect(await page('/bench')).toContain('<small>last checked ');
  });
  it('that fails puts every weighing since the last pass in doubt, on the balance’s page and on their own, until it passes again', async () => {
    const before = await takeRingIn(site.shop, { description: 'Signet' });
    await check('200.00');
    const between = await takeRingIn(site.shop, { description: 'Three-stone ring' });
    await check('200.05');
    const failed = await page();
    expect(failed).toContain('It failed its last check');
    expect(await page('/bench')).toMatch(/Bench balance<\/a> <b>failed its check /);
    const doubted = (await bench.json(at())).doubted as { said: string; seq: number }[];
    expect(doubted).toHaveLength(1);
    expect(doubted[0]?.said).toContain('Three-stone ring');
    expect(await page(`/entries/${doubted[0]?.seq}`)).toContain('In doubt');
    await check('200.00');
    pass(5);
    const after = await takeRingIn(site.shop, { description: 'Bangle' });
    expect(await page()).not.toContain('It failed its last check');
    expect((await bench.json(at())).doubted).toHaveLength(1);
    for (const { job } of [before, after]) {
      const entries = (await bench.json(`/jobs/${job}`)).entries as { seq: number; type: string }[];
      expect(await page(`/entries/${entries.find(({ type }) => type === 'piece_received')?.seq}`)).not.toContain('In doubt');
    }
    expect(between.job).not.toBe(after.job);
  });
  it('is of this balance and no other', async () => {
    const form = await bench.form(`${at()}/check`);
    const other = { 'shown.balance': site.shop.caratBalance, 'shown.text': '200.000' };
    const answer = await bench.post(`${at()}/check`, { ...form, nominal: '200 ct', certifiedG: '40', ...other });
    expect(answer.status).toBe(422);
  });
});
