// An entry corrected through its own form: sealed values stay sealed and reach the people's list, and what the entry would not take the correction does not.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { takeRingIn } from './job-in-house.ts';
import { openSite, PIN, type Site, type Visitor } from './site.ts';

let site: Site;
let bench: Visitor;
beforeEach(async () => {
  site = await openSite();
  bench = await site.as('bench');
});
afterEach(() => site.close());

const seqOf = async (type: string) =>
  Number((await site.shop.store.read('SELECT MAX(seq) AS seq FROM entry WHERE type = ?', [type]))[0]?.seq);
const written = async () => Number((await site.shop.store.read('SELECT COUNT(*) AS n FROM entry'))[0]?.n);
const correct = async (seq: number, field: string, fields: Record<string, string>) => {
  const path = `/entries/${seq}/correct/${field}`;
  return bench.post(path, { ...(await bench.form(path)), reason: 'misheard', ...fields });
};

describe('a mistyped phone', () => {
  it('is corrected, sealed, and found under its right number', async () => {
    const { customer } = await takeRingIn(site.shop, { phone: '07700 900123' });
    await site.web.directory.settled();
    const seq = await seqOf('customer_met');
    expect(await bench.form(`/entries/${seq}/correct/phone`)).toMatchObject({ phone: '07700 900123' });
    expect((await correct(seq, 'phone', { phone: '07700 900124', pin: PIN })).status).toBe(303);
    await site.web.directory.settled();
    expect(site.web.directory.search('07700 900124', 5)).toEqual([customer]);
    expect(site.web.directory.search('07700 900123', 5)).toEqual([]);
    expect(await (await bench.get(`/entries/${seq}`)).text()).toContain('07700 900124');
    for (const file of ['ledger.db', 'ledger.db-wal']) {
      expect(readFileSync(join(site.shop.dir, file)).includes('07700 90012'), file).toBe(false);
    }
  });
  it('is corrected once more from what it says by then', async () => {
    await takeRingIn(site.shop, { phone: '07700 900123' });
    const seq = await seqOf('customer_met');
    await correct(seq, 'phone', { phone: '07700 900124', pin: PIN });
    expect(await bench.form(`/entries/${seq}/correct/phone`)).toMatchObject({ phone: '07700 900124' });
    expect((await correct(seq, 'phone', { phone: '07700 900125', pin: PIN })).status).toBe(303);
  });
});

describe('a weight', () => {
  it('is shown with the name of the balance it was read on', async () => {
    await takeRingIn(site.shop);
    const html = await (await bench.get(`/entries/${await seqOf('piece_received')}`)).text();
    expect(html).toContain('on Bench balance');
    expect(html).not.toContain(`on ${site.shop.balance}`);
  });
  it('over the largest load is refused beside its field, and nothing is written', async () => {
    await takeRingIn(site.shop);
    const seq = await seqOf('piece_received');
    const before = await written();
    const answer = await correct(seq, 'weight', { 'weight.text': '900', pin: PIN });
    expect([answer.status, await written()]).toEqual([422, before]);
    expect(await answer.text()).toContain('value="900"');
    expect((await correct(seq, 'weight', { 'weight.text': '6.83', pin: PIN })).status).toBe(303);
  });
});

describe('somebody else’s entry', () => {
  it('asks for a PIN on its form, and is not corrected without', async () => {
    await takeRingIn(site.shop);
    const seq = await seqOf('piece_received');
    expect(await bench.form(`/entries/${seq}/correct/stones`)).toHaveProperty('pin');
    const before = await written();
    expect((await correct(seq, 'stones', { stones: '2' })).status).toBe(422);
    expect(await written()).toBe(before);
  });
});
