// Bench, safe, stones and what the owner must decide, asked as pages and as JSON.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
import { instant } from '../../src/units/dates.ts';
import { line } from '../shop.ts';
import { nameSafe, takeRingIn } from './job-in-house.ts';
import { openSite, type Site, type Visitor } from './site.ts';

let site: Site;
let owner: Visitor;
beforeEach(async () => {
  site = await openSite();
  owner = await site.as('owner');
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const page = async (path: string) => (await owner.get(path)).text();
const writesOf = (...lines: readonly Line[]) => site.shop.write(...lines);
const bags = (rows: unknown) => (rows as { bag: string }[]).map(({ bag }) => bag);

describe('the bench', () => {
  it('is clear on the first morning', async () => {
    expect(await page('/bench')).toContain('Bench clear.');
    expect(await owner.json('/bench')).toMatchObject({ inHand: null, next: [], late: [], waiting: [] });
  });

  it('puts what was taken last in the hand, and the rest by the day it is promised for', async () => {
    const [first, second, third] = [
      await takeRingIn(site.shop, { promise: '2026-12-20' }),
      await takeRingIn(site.shop, { promise: '2026-12-04' }),
      await takeRingIn(site.shop, { promise: '2026-12-09' }),
    ];
    for (const { job } of [second, third, first]) await writesOf(line('taken', { of: job }));
    const found = await owner.json('/bench');
    expect((found.inHand as { bag: string }).bag).toBe(first.bag);
    expect(bags(found.next)).toEqual([second.bag, third.bag]);
  });

  it('says what waits in the safe, and takes it off the bench of whoever put it there', async () => {
    const { tray } = await nameSafe(site.shop);
    const ring = await takeRingIn(site.shop);
    await writesOf(line('moved', { of: ring.job, to: tray }));
    expect(await page('/bench')).toContain('Bench clear. One job waits in the safe.');
    expect(bags((await owner.json('/bench')).waiting)).toEqual([ring.bag]);
    await writesOf(line('taken', { of: ring.job, from: tray }));
    expect((await owner.json('/bench')).waiting).toEqual([]);
  });

  it('shows what is late on somebody else’s bench', async () => {
    const ring = await takeRingIn(site.shop);
    site.shop.clock.now = instant(site.shop.clock.now + 14 * 86_400_000);
    const bench = await site.as('bench');
    expect(bags((await bench.json('/bench')).late)).toEqual([ring.bag]);
  });
});

describe('the safe', () => {
  it('says so when no safe is named, and when one is empty', async () => {
    expect(await page('/safe')).toContain('No safe is named yet.');
    await nameSafe(site.shop);
    expect(await page('/safe')).toContain('Empty as of Tue 1 Dec 2026, 09:00.');
  });

  it('lists what is in it by tray, and what is out with whom', async () => {
    const { tray } = await nameSafe(site.shop);
    const [inside, outside] = [await takeRingIn(site.shop), await takeRingIn(site.shop)];
    await writesOf(line('moved', { of: inside.job, to: tray }));
    const { shelves, out } = (await owner.json('/safe')) as { shelves: { name: string; jobs: unknown }[]; out: { where: string }[] };
    expect(shelves.map(({ name, jobs }) => [name, bags(jobs)])).toEqual([
      ['Old safe', []],
      ['Blue tray', [inside.bag]],
    ]);
    expect(out.map((row) => [bags([row])[0], row.where])).toEqual([[outside.bag, 'with Ada Wren']]);
  });

  it('counts a tray by its bags: found, missing, and what should be elsewhere', async () => {
    const { tray } = await nameSafe(site.shop);
    const [a, b, c] = [await takeRingIn(site.shop), await takeRingIn(site.shop), await takeRingIn(site.shop)];
    for (const { job } of [a, b]) await writesOf(line('moved', { of: job, to: tray }));
    const typed = `${a.bag.slice(0, 2).toLowerCase()} ${a.bag.slice(2).toLowerCase()}`;
    const counted = await owner.json(`/safe/count/${tray}?code=${encodeURIComponent(typed)}&found=${c.bag}`);
    expect([bags(counted.found), bags(counted.missing)]).toEqual([[a.bag], [b.bag]]);
    expect(counted.extra).toMatchObject([{ code: c.bag, job: { id: c.job } }]);
    const form = await owner.form(`/safe/count/${tray}?code=${a.bag}`);
    expect(form.found).toBe(a.bag);
  });

  it('refuses a code whose check character is wrong, and keeps what was counted', async () => {
    const { tray } = await nameSafe(site.shop);
    const ring = await takeRingIn(site.shop);
    await writesOf(line('moved', { of: ring.job, to: tray }));
    const wrong = `${ring.bag.slice(0, -1)}${ring.bag.endsWith('2') ? '3' : '2'}`;
    const answer = await owner.get(`/safe/count/${tray}?found=${ring.bag}&code=${wrong}`);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('1 of 1 found');
  });

  it('counts no place that is not a safe', async () => {
    const bench = site.shop.newRef('place');
    await writesOf(line('place_named', { place: bench, name: 'Bench 2', kind: 'bench' }));
    expect((await owner.get(`/safe/count/${bench}`)).status).toBe(404);
    expect((await owner.get('/safe/count/nothing')).status).toBe(404);
  });
});

describe('the stones of a job', () => {
  const seats = async (job: string) =>
    (await owner.json(`/jobs/${job}/stones`)) as { seats: { letter: string; where: string }[]; trouble: { say: string }[] };

  it('begin without a seat', async () => {
    const { job } = await takeRingIn(site.shop);
    const html = await page(`/jobs/${job}/stones`);
    expect(html).toContain('No seats are noted yet.');
    expect(html).toContain('3 stones in the piece, none out.');
  });

  it('are noted, out in their papers, and set again', async () => {
    const { job, piece, bag } = await takeRingIn(site.shop);
    const [middle, left] = [site.shop.newRef('stone'), site.shop.newRef('stone')];
    const noted = { piece, species: 'sapphire', cut: 'oval', sizeMm: '6.2', backing: 'open', state: 'sound' };
    await writesOf(
      line('setting_noted', { ...noted, stone: middle, seat: 'middle' }),
      line('setting_noted', { ...noted, stone: left, seat: 'left' }),
    );
    await writesOf(line('setting_noted', { piece, seat: 'gallery', species: 'unknown', backing: 'not seen', state: 'empty' }));
    await writesOf(line('stone_unset', { piece, stone: middle, stones: 1, weight: site.shop.carats('1.204'), condition: 'sound' }));
    await writesOf(line('stone_unset', { piece, stone: left, stones: 1, condition: 'sound' }));
    await writesOf(line('stone_set', { piece, stone: left, stones: 1, seat: 'left' }));
    expect((await seats(job)).seats.map(({ letter, where }) => [letter, where])).toEqual([
      ['A', 'out'],
      ['B', 'set'],
      ['', 'empty'],
    ]);
    const html = await page(`/jobs/${job}/stones`);
    expect(html).toContain(`out, in paper ${bag}-A`);
    expect(html).toContain('taken out, 1.204\u00a0ct');
    expect(html).toContain('2 stones in the piece, 1 stone out.');
  });

  it('say of each that was weighed twice what its weights tell, and which papers weight could not sort out', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const { carats, newRef } = site.shop;
    const stones = ['1.004', '0.502', '0.500'].map((ct) => ({ ct, stone: newRef('stone') }));
    for (const { ct, stone } of stones) {
      await writesOf(
        line('setting_noted', { piece, stone, seat: `seat of ${ct}`, species: 'sapphire', backing: 'open', state: 'sound' }),
        line('stone_unset', { piece, stone, stones: 1, weight: carats(ct), condition: 'sound' }),
      );
    }
    const once = await page(`/jobs/${job}/stones`);
    expect(once).not.toContain('the two weights');
    expect(once).toContain('these weights could not tell B, C apart: draw or photograph them. They would tell A.');
    await writesOf(line('stone_weighed', { of: stones[0]?.stone, state: 'loose', weight: carats('1.003') }));
    const html = await page(`/jobs/${job}/stones`);
    expect(html).toMatch(/1\.004\sct, then 1\.003\sct: the two weights agree; about \d of 100 other stones of that size would agree too\./);
    expect(html).not.toContain('same stone');
  });

  it('of a group are told apart, here and to the customer, while some are set and some are out', async () => {
    const { job, piece, bag } = await takeRingIn(site.shop);
    const packet = site.shop.newRef('packet');
    await writesOf(line('stone_unset', { piece, packet, stones: 3, weight: site.shop.carats('0.300'), condition: 'sound' }));
    await writesOf(line('stone_set', { piece, packet, stones: 2, left: 1, weight: site.shop.carats('0.200') }));
    const html = await page(`/jobs/${job}/stones`);
    expect(html).toContain(`1 of 3 out, in paper ${bag}-A`);
    expect(html).toContain('2 set, 0.200\u00a0ct');
    const told = (await page(`/jobs/${job}?face=customer`)).replaceAll(/<[^>]*>/g, ' ');
    expect(told).toContain('0.300\u00a0ct, then 2 of them 0.200\u00a0ct');
    expect(told).toContain('1 of 3 out of the piece now');
  });

  it('name the seats when a count does not agree', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const stone = site.shop.newRef('stone');
    await writesOf(line('setting_noted', { piece, stone, seat: 'middle', species: 'ruby', backing: 'open', state: 'sound' }));
    await writesOf(line('stone_unset', { piece, stone, stones: 1, condition: 'sound' }));
    await writesOf(line('piece_checked', { piece, stones: 2, seats: 'tight', marks: 'readable' }));
    expect((await seats(job)).trouble).toEqual([]);
    await writesOf(line('piece_checked', { piece, stones: 1, seats: 'tight', marks: 'readable' }));
    expect((await seats(job)).trouble).toMatchObject([{ say: '1 stone counted, 2 expected. Out by what was written: middle.' }]);
  });

  it('are of a job that exists', async () => {
    expect((await owner.get('/jobs/nothing/stones')).status).toBe(404);
  });
});

describe('for the owner', () => {
  const heaps = async () =>
    ((await owner.json('/owner')).heaps as { title: string; rows: { bag: string }[] }[]).map(({ title, rows }) => [title, bags(rows)]);

  it('nothing is to be decided in a shop where all is well', async () => {
    await takeRingIn(site.shop);
    expect(await page('/owner')).toContain('Nothing to decide today.');
    expect(await page('/owner')).toContain('<p class="ways"><a href="/loss">');
    expect(await heaps()).toEqual([]);
  });

  it('is for the owner alone', async () => {
    const bench = await site.as('bench');
    expect((await bench.get('/owner')).status).toBe(403);
    expect(await (await bench.get('/bench')).text()).not.toContain('For the owner');
  });

  it('brings up what is late, out past its day, finished and not collected, and a count that differs', async () => {
    const [late, out, done, short] = [
      await takeRingIn(site.shop),
      await takeRingIn(site.shop),
      await takeRingIn(site.shop),
      await takeRingIn(site.shop, { promise: '2027-02-01' }),
    ];
    await writesOf(line('promise_moved', { job: out.job, promise: '2027-02-01', why: 'setter', told: 'phone' }));
    await writesOf(line('released', { of: out.piece, outworker: 'A setter', purpose: 'setting', dueBack: '2026-12-03' }));
    await writesOf(line('piece_checked', { piece: done.piece, stones: 3, seats: 'tight', marks: 'readable' }));
    await writesOf(line('work_finished', { job: done.job }));
    await writesOf(line('piece_checked', { piece: short.piece, stones: 2, seats: 'loose', marks: 'readable' }));
    site.shop.clock.now = instant(site.shop.clock.now + 14 * 86_400_000);
    owner = await site.as('owner');
    expect(await heaps()).toEqual([
      ['Stone counts that differ', [short.bag]],
      ['Out too long', [out.bag]],
      ['Promised, and late', [late.bag]],
      ['Finished, and not collected', [done.bag]],
    ]);
  });

  it('brings up weights that do not agree until a correction explains them', async () => {
    const { piece, bag } = await takeRingIn(site.shop);
    const lot = site.shop.newRef('lot');
    await writesOf(line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }));
    const cut = await writesOf(line('metal_cut', { piece, lot, metal: 'gold-750', weight: site.shop.grams('1.43') }));
    await writesOf(
      line('piece_weighed', { piece, state: 'cut', weight: site.shop.grams('5.85', { repeats: ['5.85'], because: 'as read' }) }),
    );
    expect(await heaps()).toEqual([['Weights that do not agree', [bag]]]);
    const [row] = await site.shop.store.read('SELECT leaf_hash FROM entry WHERE seq = ?', [cut]);
    const target = Buffer.from(row?.leaf_hash as ArrayBuffer).toString('base64url');
    const was = site.shop.grams('1.43');
    const is = site.shop.grams('0.97');
    await writesOf(line('corrected', { target, seq: cut, field: 'weight', was, is, reason: 'misread' }));
    expect(await heaps()).toEqual([]);
  });
});

describe('a setting noted on its form', () => {
  it('is one stone, a group, or an empty seat: nothing begins that was not chosen', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const path = `/jobs/${job}/write/setting_noted`;
    const form = await owner.form(path);
    expect([form.stone, form.packet]).toEqual(['', '']);
    const empty = { ...form, piece, seat: 'gallery', species: 'unknown', backing: 'not seen', state: 'empty' };
    expect((await owner.post(path, empty)).status).toBe(303);
    const again = await owner.form(path);
    const one = { ...again, piece, stone: again['new.stone'] ?? '', seat: 'middle', species: 'ruby', backing: 'open', state: 'sound' };
    expect((await owner.post(path, one)).status).toBe(303);
    expect(((await owner.json(`/jobs/${job}/stones`)).seats as { where: string }[]).map(({ where }) => where)).toEqual([
      'in the piece',
      'empty',
    ]);
  });
});
