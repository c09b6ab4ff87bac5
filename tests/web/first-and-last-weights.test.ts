// What a piece weighed as it came and as it went: a weight that was not read dry, or came late, is said as what it was on every page and paper.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
import { line, type Shop } from '../shop.ts';
import { takeRingIn } from './job-in-house.ts';
import { openSite, type Site, type Visitor } from './site.ts';

let site: Site;
let shop: Shop;
let owner: Visitor;
beforeEach(async () => {
  site = await openSite();
  shop = site.shop;
  owner = await site.as('owner');
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const write = (...lines: readonly Line[]) => shop.write(...lines);
const plain = (text: string) => text.replace(/<[^>]*>/g, ' ').replace(/[ \u00a0\n]+/g, ' ');
const page = async (path: string) => plain(await (await owner.get(path)).text());
const grams = (text: string, more = {}) => shop.grams(text, { repeats: [text], because: 'as read', ...more });
const weighed = (piece: string, state: string, text: string, more = {}) =>
  write(line('piece_weighed', { piece, state, weight: grams(text, more) }));
const finished = (job: string, piece: string, stones = 3) =>
  write(line('piece_checked', { piece, stones, seats: 'tight', marks: 'readable' }), line('work_finished', { job }));
const handedBack = (piece: string, more = {}, stones = 3) =>
  write(line('piece_returned', { piece, stones, to: 'customer', shown: 'slip', signed: 'signature', ...more }));
const daysLater = async (days: number) => {
  shop.clock.now = (shop.clock.now + days * 86_400_000) as typeof shop.clock.now;
  owner = await site.as('owner');
};

/** A band that nobody weighed at the counter; 4.10 g is its weight. */
async function unweighedBand() {
  const [customer, job, piece] = [shop.newRef('customer'), shop.newRef('job'), shop.newRef('piece')];
  const parts = [{ part: 'shank', metal: 'gold-750' }];
  await write(
    line('customer_met', { customer, name: 'Ines Holt', phone: '07700 900321' }),
    line('job_opened', { job, bag: shop.newBag(), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, kind: 'ring', description: 'Band', parts, stones: 0 }),
  );
  await daysLater(2);
  return { job, piece };
}

describe('a piece that was not dry as it went home', () => {
  for (const [dry, words] of [
    ['no', 'not dry'],
    ['unsure', 'perhaps not dry'],
  ] as const) {
    it(`is not said to have gone home at the dry weight before (${words})`, async () => {
      const { job, piece } = await takeRingIn(shop);
      await weighed(piece, 'finished', '6.81');
      await daysLater(3);
      await finished(job, piece);
      const returned = await handedBack(piece, { weight: grams('6.95', { dry }) });
      const went = `and 6.81 g when it was weighed last, finished, on Tue 1 Dec 2026. As it went home 6.95 g ${words} was read, which is not its weight alone.`;
      for (const path of ['/letter', '/letter.html', '?face=customer']) {
        const said = await page(`/jobs/${job}${path}`);
        expect(said, path).toContain(went);
        expect(said, path).not.toContain('went home at');
      }
      const { letter } = (await owner.json(`/jobs/${job}/letter`)) as { letter: { sentence: string } };
      expect(plain(letter.sentence)).toContain(went);
      const reckoning = await page(`/jobs/${job}/reckoning`);
      expect(reckoning).toContain(`Entry ${returned}, Fri 4 Dec 2026, returned: 6.95 g ${words} on`);
      expect(reckoning).toContain(`Perhaps not dry, or with something of unknown weight, and in no sum: entry ${returned}.`);
      expect(reckoning).not.toContain('Everything was weighed.');
    });
  }

  it('has no weight out at the hand-back: the last dry one stands there with its state and its day', async () => {
    const { job, piece } = await takeRingIn(shop);
    await weighed(piece, 'polished', '6.81');
    await daysLater(3);
    await weighed(piece, 'finished', '6.95', { dry: 'no' });
    await finished(job, piece);
    const said = '6.82 g in; it was not weighed dry on its way out. Weighed last, polished, on Tue 1 Dec 2026: 6.81 g.';
    expect(await page(`/jobs/${job}/hand-back`)).toContain(said);
  });

  it('has none either where it was last weighed before the work', async () => {
    const { job, piece } = await takeRingIn(shop);
    await write(line('piece_cleaned', { piece, how: ['steam'], dry: 'dry', weight: grams('6.80') }));
    await finished(job, piece);
    expect(await page(`/jobs/${job}/hand-back`)).toContain('It was not weighed dry both in and out.');
  });
});

describe('a piece that was not weighed as it came in', () => {
  for (const [state, words] of [
    ['cleaned and dry', 'cleaned and dry'],
    ['as received', 'as received'],
  ] as const) {
    it(`is said to have been weighed first when it was, ${words}`, async () => {
      const { job, piece } = await unweighedBand();
      await weighed(piece, state, '4.10');
      const said = `Your ring was not weighed at the counter; it was first weighed on Thu 3 Dec 2026, ${words}: 4.10 g.`;
      const letter = await page(`/jobs/${job}/letter`);
      expect(letter).toContain(said);
      expect(letter).not.toContain('once cleaned');
      expect(await page(`/jobs/${job}/reckoning`)).toContain('4.10 g first weighed.');
    });
  }

  it('came in at no weight of its own where it was wet, and nothing dries out of it as a loss', async () => {
    const [customer, job, piece] = [shop.newRef('customer'), shop.newRef('job'), shop.newRef('piece')];
    const more = { kind: 'ring', description: 'Band', parts: [{ part: 'shank', metal: 'gold-750' }], stones: 0 };
    await write(
      line('customer_met', { customer, name: 'Ines Holt', phone: '07700 900321' }),
      line('job_opened', { job, bag: shop.newBag(), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      line('piece_received', { job, piece, ...more, weight: grams('4.60', { dry: 'no' }) }),
    );
    await weighed(piece, 'finished', '4.10');
    const letter = await page(`/jobs/${job}/letter`);
    expect(letter).toContain(
      'Your ring read 4.60 g not dry at the counter, which is not its weight alone. No stones counted as it came in.',
    );
    expect(letter).not.toContain('missing');
    const { headers } = await owner.post(`/jobs/${job}/slip`, {});
    expect(await page(headers.get('location') ?? '')).toContain('Band, 18ct gold · 750, no stones; 4.60 g not dry');
    expect(await page(`/jobs/${job}`)).toContain('Not weighed dry as it came in: nothing can be checked by weight.');
    expect(await page(`/jobs/${job}/hand-back`)).toContain('It was not weighed dry both in and out.');
  });
});

describe('a difference that is nothing to the step', () => {
  it('lies on no side: not at the hand-back, read on a finer balance, and not in the picture of the weights', async () => {
    const { job, piece } = await takeRingIn(shop);
    const balance = shop.newRef('balance');
    const ranges = [{ max: '400', step: '0.001' }];
    await write(line('balance_put_in_service', { balance, name: 'Fine', unit: 'g', class: 'I', ranges }));
    await weighed(piece, 'finished', '6.823', { balance, stepNg: 1_000_000 });
    await finished(job, piece);
    expect(await page(`/jobs/${job}/hand-back`)).toContain('6.82 g in, 6.82 g out, no difference to 0.01 g.');
    const reckoning = await page(`/jobs/${job}/reckoning`);
    expect(reckoning).toContain('No difference to 0.01 g, ± ');
    expect(reckoning).toMatch(/No difference to 0\.01 g \(± 0\.0\d g\): agrees/);
    expect(reckoning).not.toMatch(/Missing|Too much|Gain 0|Loss 0/);
  });

  it('stands in the picture as what is not known where something was not weighed, with its entry', async () => {
    const { job, piece } = await takeRingIn(shop);
    const packet = shop.newRef('packet');
    const cut = await write(line('metal_cut', { piece, packet, metal: 'gold-750', part: 'old head' }));
    await weighed(piece, 'finished', '6.20');
    const reckoning = await page(`/jobs/${job}/reckoning`);
    expect(reckoning).toContain(`Not weighed not known entry ${cut} `);
    expect(reckoning).not.toMatch(/Missing|Too much|No difference/);
  });
});

describe('a figure that was corrected', () => {
  const correct = async (seq: number, field: string, was: unknown, is: unknown) => {
    const [row] = await shop.store.read('SELECT leaf_hash AS hash FROM entry WHERE seq = ?', [seq]);
    const target = Buffer.from(row?.hash as Uint8Array).toString('base64url');
    return write(line('corrected', { target, seq, field, was, is, reason: 'misread' }));
  };

  it('is told with both figures wherever the sum that rests on it is told', async () => {
    const { job, piece } = await takeRingIn(shop);
    await weighed(piece, 'finished', '6.81');
    await finished(job, piece);
    const returned = await handedBack(piece, { weight: grams('6.18') });
    await correct(returned, 'weight', grams('6.18'), grams('6.81'));
    const both = `Corrected after it was written: entry ${returned}, first 6.18 g and now 6.81 g.`;
    for (const path of ['', '/reckoning', '/letter', '/letter.html', '?face=customer']) {
      expect(await page(`/jobs/${job}${path}`), path).toContain(both);
    }
    const { reckoned } = (await owner.json(`/jobs/${job}`)) as { reckoned: { corrected: unknown } };
    expect(reckoned.corrected).toEqual([{ seq: returned, first: '6.18\u00a0g', now: '6.81\u00a0g' }]);
  });

  it('is told on a slip, at the hand-back and of a count as well', async () => {
    const { job, piece } = await takeRingIn(shop);
    const [row] = await shop.store.read("SELECT max(seq) AS seq FROM entry WHERE type = 'piece_received'");
    const seq = Number(row?.seq);
    await correct(seq, 'stones', 3, 4);
    await weighed(piece, 'finished', '6.81');
    await write(line('piece_checked', { piece, stones: 4, seats: 'tight', marks: 'readable' }), line('work_finished', { job }));
    const both = `entry ${seq}, first 3 stones and now 4 stones.`;
    expect(await page(`/jobs/${job}/hand-back`)).toContain(both);
    expect(await page(`/jobs/${job}/letter`)).toContain(both);
    const { headers } = await owner.post(`/jobs/${job}/slip`, {});
    expect(await page(headers.get('location') ?? '')).toContain('4 stones; 6.82 g (corrected; first written: 3 stones)');
  });

  it('makes no check of a sum that was had from the figure that was wrong', async () => {
    const { job, piece } = await takeRingIn(shop, { grams: '4.12' });
    const [stock, weight] = [shop.newRef('stock'), { text: '0.17', unit: 'g', ng: 170_000_000, basis: 'difference' }];
    await write(line('metal_received', { stock, name: 'Sheet', metal: 'gold-750', weight: shop.grams('20.00') }));
    const added = await write(
      line('metal_added', { piece, stock, metal: 'gold-750', what: 'shank', weight }),
      line('piece_weighed', { piece, state: 'finished', weight: grams('4.29') }),
    );
    await correct(added + 1, 'weight', grams('4.29'), grams('4.28'));
    for (const path of ['', '/reckoning', '/letter']) {
      const said = await page(`/jobs/${job}${path}`);
      expect(said, path).toMatch(/not checked by weight/i);
      expect(said, path).not.toMatch(/agrees|accounts for all|would have shown/);
    }
  });
});
