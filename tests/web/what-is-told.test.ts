// Sentences that would be false of histories whose masses are known: each page and paper says of them only what its entries know.
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
const page = async (path: string) => (await (await owner.get(path)).text()).replace(/<[^>]*>/g, ' ').replace(/[ \u00a0\n]+/g, ' ');
/** A second reading and a reason stand beside it, so that no weight is asked about. */
const grams = (text: string, more = {}) => shop.grams(text, { repeats: [text], because: 'as read', ...more });
const weighed = (piece: string, text: string, more = {}) =>
  write(line('piece_weighed', { piece, state: 'finished', weight: grams(text, more) }));
const checked = (piece: string, stones: number) => write(line('piece_checked', { piece, stones, seats: 'tight', marks: 'readable' }));
const handedBack = (piece: string, stones: number, more = {}) =>
  write(line('piece_returned', { piece, stones, to: 'customer', shown: 'slip', signed: 'signature', ...more }));

/** 6.82 g with three stones, of which the middle one of 1.204 ct (0.2408 g) is taken out: 6.58 g stay. */
async function middleOut() {
  const ring = await takeRingIn(shop);
  const { piece } = ring;
  const stone = shop.newRef('stone');
  await write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: shop.carats('1.204') }));
  await weighed(piece, '6.58');
  return { ...ring, stone };
}

/** A diamond of 0.250 ct (0.05 g) that was not in the ring is set in it: 6.82 + 0.05 = 6.87. */
async function diamondSupplied() {
  const ring = await takeRingIn(shop);
  const { piece } = ring;
  const stone = shop.newRef('stone');
  const told = { origin: 'natural', whose: 'shop', told: '2026-12-01' };
  await write(line('stone_supplied', { piece, stone, species: 'diamond', ...told, weight: shop.carats('0.250') }));
  await write(line('stone_weighed', { of: stone, state: 'loose', weight: shop.carats('0.250') }));
  await write(line('stone_set', { piece, stone, stones: 1 }));
  await weighed(piece, '6.87');
  return ring;
}

describe('what the customer is told, on the reckoning', () => {
  it('calls no stone that is out metal cut away, and is the sentence of the letter', async () => {
    const { job } = await middleOut();
    const reckoning = await page(`/jobs/${job}/reckoning`);
    const said = 'We weighed 6.82 g in. What was weighed accounts for all of it to within';
    expect(reckoning).toContain(said);
    expect(await page(`/jobs/${job}/letter`)).toContain(said);
    expect(reckoning).not.toContain('cut away');
  });

  it('calls no stone that was supplied metal that was added', async () => {
    const { job } = await diamondSupplied();
    expect(await page(`/jobs/${job}/reckoning`)).not.toContain('of metal was added');
  });

  it('says how much metal is theirs only where no stone sits in it', async () => {
    const { job } = await middleOut();
    expect(await page(`/jobs/${job}/reckoning`)).not.toContain('of metal in the piece');
    const band = await postedBand({ stones: 0 });
    await weighed(band.piece, '4.10');
    expect(await page(`/jobs/${band.job}/reckoning`)).toContain('Of the 4.10 g of metal in the piece, 4.10 g');
  });
});

/** A band that came by post: nobody stood at the counter. */
async function postedBand({ stones }: { readonly stones: number }) {
  const [customer, job, piece] = [shop.newRef('customer'), shop.newRef('job'), shop.newRef('piece')];
  const parts = [{ part: 'shank', metal: 'gold-750' }];
  await write(
    line('customer_met', { customer, name: 'Ines Holt', phone: '07700 900321' }),
    line('job_opened', { job, bag: shop.newBag(), customer, broughtBy: 'carrier', owner: 'customer', channel: 'post' }),
    line('piece_received', { job, piece, kind: 'ring', description: 'Band', parts, stones, weight: shop.grams('4.10') }),
  );
  return { job, piece };
}

describe('why a job is on the full path', () => {
  it('is that a stone came out only where one did, not where the shop supplied one', async () => {
    const supplied = await page(`/jobs/${(await diamondSupplied()).job}`);
    expect(supplied).toContain('a stone is supplied');
    expect(supplied).not.toContain('a stone came out');
    const out = await page(`/jobs/${(await middleOut()).job}`);
    expect(out).toContain('a stone came out');
    expect(out).not.toContain('a stone is supplied');
  });
});

describe('a letter', () => {
  it('says of a stone that was supplied that it was set, not that it was taken out', async () => {
    const { job } = await diamondSupplied();
    const letter = await page(`/jobs/${job}/letter`);
    expect(letter).toContain('set in the piece');
    expect(letter).not.toContain('set again');
    expect(await page(`/jobs/${job}/reckoning`)).toMatch(/diamond: 1 supplied, 1 set\. The stone weighed 0\.250 ct in/);
  });

  it('of two pieces of which one has gone says that neither sum went home', async () => {
    const { job, piece } = await takeRingIn(shop);
    const band = shop.newRef('piece');
    const parts = [{ part: 'shank', metal: 'gold-750' }];
    const more = { kind: 'ring', description: 'Band', parts, stones: 0, weight: shop.grams('4.10') };
    await write(line('piece_received', { job, piece: band, ...more }));
    await weighed(piece, '6.81');
    await weighed(band, '4.10');
    await checked(piece, 3);
    await write(line('work_finished', { job }));
    await handedBack(piece, 3);
    const letter = await page(`/jobs/${job}/letter`);
    expect(letter).toContain('Your pieces weighed 10.92 g at the counter, and 10.91 g when they were weighed last, by Tue 1 Dec 2026.');
    await checked(band, 0);
    await handedBack(band, 0);
    expect(await page(`/jobs/${job}/letter`)).not.toContain('went home at');
  });

  it('says that a piece went home at a weight only where it was weighed as it went', async () => {
    const { job, piece } = await takeRingIn(shop);
    await weighed(piece, '6.81');
    await checked(piece, 3);
    await write(line('work_finished', { job }));
    await handedBack(piece, 3, { weight: grams('6.80') });
    expect(await page(`/jobs/${job}/letter`)).toContain('and went home at 6.80 g.');
  });

  it('speaks of no counter and of nobody who was there where it came by post', async () => {
    const { job } = await postedBand({ stones: 2 });
    const letter = await page(`/jobs/${job}/letter`);
    expect(letter).toContain('Your ring weighed 4.10 g as it came in. 2 stones counted as it came in; by our entries 2 in it now.');
    expect(letter).not.toContain('with you');
  });

  it('says of old parts that were posted that they were sent, not that they are home', async () => {
    const { job, piece } = await takeRingIn(shop);
    const packet = shop.newRef('packet');
    await write(line('metal_cut', { piece, packet, metal: 'gold-750', part: 'old shank', weight: shop.grams('1.20') }));
    await write(line('old_parts_returned', { packet, to: 'post', signed: 'receipt' }));
    expect(await page(`/jobs/${job}/letter`)).toContain('1.20 g sent to you by post');
  });

  it('tells whoever takes a piece home without one of its stones that it is not what it was', async () => {
    const { job, piece } = await middleOut();
    await checked(piece, 2);
    expect(await page(`/jobs/${job}/letter`)).not.toContain('not what it was');
    await write(line('work_finished', { job }));
    const exception = 'One stone stays here for the valuer';
    await write(line('returned_with_exception', { piece, stones: 2, exception, to: 'customer', shown: 'slip', signed: true }));
    expect(await page(`/jobs/${job}/letter`)).toContain('not what it was');
  });

  it('calls what rounds to nothing no gain', async () => {
    const { job } = await middleOut();
    expect(await page(`/jobs/${job}/letter`)).not.toContain('more than came in');
  });
});

describe('a reading that was perhaps wet', () => {
  it('adds nothing at the hand-back, and is not said to be no weighing', async () => {
    const { job, piece } = await takeRingIn(shop);
    await weighed(piece, '6.90', { dry: 'unsure' });
    await checked(piece, 3);
    await write(line('work_finished', { job }));
    expect(await page(`/jobs/${job}/hand-back`)).toContain('It was not weighed dry both in and out.');
    expect(await page(`/jobs/${job}/letter`)).not.toContain('not been weighed');
    expect(await page(`/jobs/${job}/reckoning`)).not.toContain('not been weighed');
  });

  it('leaves the weights of a hand-back as they were read: heavier or lighter, not added or taken', async () => {
    const { job, piece } = await takeRingIn(shop);
    await weighed(piece, '6.79');
    await write(line('work_finished', { job }));
    expect(await page(`/jobs/${job}/hand-back`)).toContain('6.82 g in, 6.79 g out, 0.03 g less.');
  });
});

it('a sum that begins from the cleaned weight calls it that, and never what came in', async () => {
  const { job, piece } = await takeRingIn(shop);
  await write(line('piece_cleaned', { piece, how: ['steam'], dry: 'dry', weight: grams('6.80') }));
  await write(line('metal_cut', { piece, packet: shop.newRef('packet'), metal: 'gold-750', part: 'claws', weight: shop.grams('0.40') }));
  const { reckoned } = (await owner.json(`/jobs/${job}`)) as { reckoned: { weights: { began: string; pans: { words: string }[] } } };
  expect([reckoned.weights.began, reckoned.weights.pans[0]?.words]).toEqual(['once cleaned', 'once cleaned']);
  const told = await page(`/jobs/${job}/reckoning`);
  expect(told).toMatch(/Once cleaned 6\.80/);
  expect(told).toContain('6.80 g once cleaned.');
  expect(told).not.toMatch(/6\.80 g came in|Came in 6\.80/);
});

it('of what went off unweighed no pan holds a sum', async () => {
  const { job, piece } = await takeRingIn(shop, { grams: '12.00' });
  const [lot, packet] = [shop.newRef('lot'), shop.newRef('packet')];
  await write(line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }));
  await write(line('metal_cut', { piece, lot, metal: 'gold-750', part: 'claws', weight: shop.grams('2.00') }));
  await write(line('metal_cut', { piece, packet, metal: 'gold-750', part: 'old head' }));
  await weighed(piece, '9.50');
  const { reckoned } = (await owner.json(`/jobs/${job}`)) as { reckoned: { weights: { pans: { words: string; value: string }[] } } };
  const [left, right] = reckoned.weights.pans;
  expect([left?.words, left?.value?.replace('\u00a0', ' ')]).toEqual(['came in', '12.00 g']);
  expect(right?.words).toMatch(/^in the piece, by reckoning/);
  expect(right?.value?.replace('\u00a0', ' ')).toBe('9.50 g');
});

describe('what was not weighed by itself', () => {
  it('is no agreement where it was had from the weight out: any loss beside it would have been taken for less let in', async () => {
    const { job, piece } = await takeRingIn(shop, { grams: '4.12' });
    const [stock, weight] = [shop.newRef('stock'), { text: '0.17', unit: 'g', ng: 170_000_000, basis: 'difference' }];
    await write(line('metal_received', { stock, name: 'Sheet', metal: 'gold-750', weight: shop.grams('20.00') }));
    await write(
      line('metal_added', { piece, stock, metal: 'gold-750', what: 'shank', weight }),
      line('piece_weighed', { piece, state: 'finished', weight: grams('4.29') }),
    );
    for (const path of ['', '/reckoning', '/letter', '?face=customer']) {
      const said = await page(`/jobs/${job}${path}`);
      expect(said, path).toMatch(/not checked by weight/i);
      expect(said, path).not.toMatch(/agrees|accounts for all|would have shown/);
    }
  });

  it('is checked as ever where the coil it came from was weighed before and after', async () => {
    const { job, piece } = await takeRingIn(shop, { grams: '4.12' });
    const [stock, weight] = [shop.newRef('stock'), { text: '0.17', unit: 'g', ng: 170_000_000, basis: 'difference' }];
    await write(line('metal_received', { stock, name: 'Coil', metal: 'gold-750', weight: shop.grams('20.00') }));
    await write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'shank', weight }));
    shop.clock.now = (shop.clock.now + 60_000) as typeof shop.clock.now;
    await weighed(piece, '4.29');
    expect(await page(`/jobs/${job}/reckoning`)).toContain('It agrees, as far as the balance can tell');
  });

  it('of a guess too wide to tell no heading says that it agrees', async () => {
    const { job, piece } = await takeRingIn(shop, { grams: '4.12' });
    const guess = { text: '4', unit: 'g', ng: 4e9, basis: 'estimate', repeats: ['4'], because: 'by eye' };
    await write(line('piece_weighed', { piece, state: 'finished', weight: guess }));
    const said = await page(`/jobs/${job}/reckoning`);
    expect(said).toContain('These weighings are too wide to tell');
    expect(said).not.toContain('It agrees');
    expect(await page(`/jobs/${job}/letter`)).toContain('and weighs now 4.00 g by estimate.');
  });

  it('came in at no weight, however it weighed once it was worked on', async () => {
    const { job, piece } = await takeRingIn(shop, { grams: '4.12' });
    const other = shop.newRef('piece');
    const parts = [{ part: 'shank', metal: 'gold-750' }];
    await write(
      line('piece_received', { job, piece: other, kind: 'ring', description: 'Band', parts, stones: 0 }),
      line('weight_not_taken', { piece: other, reason: 'declined' }),
    );
    await weighed(piece, '4.12');
    await weighed(other, '5.00');
    expect(await page(`/jobs/${job}/letter`)).toContain('Your pieces were not all weighed at the counter.');
    expect(await page(`/jobs/${job}/letter`)).not.toContain('It was not weighed');
    expect(await page(`/jobs/${job}`)).toContain('Not weighed as it came in: nothing can be checked by weight.');
  });
});

it('the weights of a period hold every finished job that was checked, whether its work leaves dust or not', async () => {
  const { job, piece } = await takeRingIn(shop);
  const terms = { priceKind: 'free', promise: '2026-12-08', dust: 'shop', cutMetal: 'shop', oldParts: 'shop' };
  await write(line('work_agreed', { job, steps: ['set'], ...terms, terms: '1', agreedBy: 'signature' }));
  await weighed(piece, '5.82');
  await checked(piece, 3);
  await write(line('work_finished', { job }));
  const period = await page('/owner/weights?from=2026-12-01&to=2026-12-01');
  expect(period).toMatch(/1 checked; .*; 1 did not\./);
  expect(await page('/loss')).toContain('The 0 finished jobs of work that leaves dust');
});
