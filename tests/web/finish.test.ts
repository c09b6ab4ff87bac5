// The finish sheet: what it asks, what it stops, and that it writes nothing nobody said. A ring of 4.12 g going from L to N; two UK sizes
// are 2.5 mm of inside circumference (BS 6820), which of so light a ring is at most about 0.18 g.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Ref } from '../../src/units/ids.ts';
import { line } from '../shop.ts';
import { openSite, PIN, type Site, type Visitor } from './site.ts';

let site: Site;
let owner: Visitor;
let job: Ref<'job'>;
let piece: Ref<'piece'>;
let stock: Ref<'stock'>;
beforeEach(async () => {
  site = await openSite();
  owner = await site.as('owner');
  stock = site.shop.newRef('stock');
  await site.shop.write(
    line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: site.shop.grams('20.00') }),
    line('lot_opened', { lot: site.shop.newRef('lot'), name: 'Scrap', metal: 'gold-750' }),
  );
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

async function ring({
  steps = ['size-up'],
  sizes = 'size L to N',
  cutMetal = 'customer',
  stones = 0,
  metal = 'gold-750',
} = {}): Promise<void> {
  [job, piece] = [site.shop.newRef('job'), site.shop.newRef('piece')];
  const parts = [{ part: 'whole', metal }];
  await site.shop.write(
    line('job_opened', { job, bag: site.shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, kind: 'ring', description: 'ring', parts, stones, weight: site.shop.grams('4.12') }),
    line('work_agreed', {
      ...{ job, steps, details: sizes, priceKind: 'free', promise: '2026-12-08', dust: 'shop', cutMetal },
      ...{ oldParts: 'customer', terms: '1', agreedBy: 'signature' },
    }),
  );
}
const LOOKED = { stonesHold: 'yes', marksHold: 'yes' };
async function finish(said: Readonly<Record<string, string>>): Promise<{ readonly status: number; readonly html: string }> {
  const form = await owner.form(`/jobs/${job}/finish`);
  const answer = await owner.post(`/jobs/${job}/finish`, { ...form, ...LOOKED, ...said });
  return { status: answer.status, html: (await answer.text()).replaceAll(/<[^>]*>/g, ' ') };
}
const written = async () =>
  ((await owner.json(`/jobs/${job}`)) as { entries: { type: string; said: string; weight: string }[] }).entries.map(({ said }) => said);
const upTo = (weight: string, more = {}) => finish({ method: 'insert', to: 'N', 'weight.text': weight, ...more });

describe('an insert by difference', () => {
  it('goes in where the sizes explain it', async () => {
    await ring();
    expect((await upTo('4.29')).status).toBe(303);
    expect(await written()).toContain('Added: shank, 18ct gold · 750, 0.17\u00a0g by difference');
  });
  it.each(['5.29', '4.92', '3.12', '4.12'])('is asked about where they do not: %s g out, and nothing is written', async (weight) => {
    await ring();
    const { status, html } = await upTo(weight);
    expect(status).toBe(422);
    expect(html).toMatch(/From L to N at most about 0\.(2|3)\d\u00a0g is let in/);
    expect((await written()).join()).not.toMatch(/Added|Cut away|finished/);
  });
  it('goes in after a second reading and a reason', async () => {
    await ring();
    expect((await upTo('4.92', { 'weight.again': '4.92', 'weight.because': 'a heavy new back' })).status).toBe(303);
  });
  it('weighed by itself is held against the weight out like any other', async () => {
    await ring();
    const piece = { 'moved.text': '0.17', 'moved.basis': 'weighed' };
    expect((await upTo('5.29', piece)).html).toContain('4.29\u00a0g is expected');
    expect((await upTo('4.28', piece)).status).toBe(303);
    expect(await written()).toContain('Added: shank, 18ct gold · 750, 0.17\u00a0g');
  });
  it('is not invented a second time once it was entered', async () => {
    await ring();
    await site.shop.write(line('metal_added', { piece, stock, metal: 'gold-750', weight: site.shop.grams('0.18'), what: 'shank' }));
    expect((await upTo('4.10')).html).toContain('4.30\u00a0g is expected');
    expect((await upTo('4.26')).status).toBe(303);
    expect((await written()).filter((said) => /Added|Cut away/.test(said))).toHaveLength(1);
  });
});

describe('a method that moves no metal', () => {
  it('never makes a difference: half a gram more is asked about', async () => {
    await ring();
    const { status, html } = await finish({ method: 'stretched', to: 'N', 'weight.text': '4.62' });
    expect(status).toBe(422);
    expect(html).toContain('4.12\u00a0g is expected');
    expect((await finish({ method: 'stretched', to: 'N', 'weight.text': '4.11' })).status).toBe(303);
    expect((await written()).join()).not.toMatch(/Added|Cut away/);
  });
});

describe('worn metal', () => {
  const down = { steps: ['size-down'], sizes: 'size N to L' };
  it('that goes home goes into a packet, which goes home with the piece before the job closes', async () => {
    await ring(down);
    expect((await finish({ method: 'cut', to: 'L', 'weight.text': '3.95' })).status).toBe(303);
    const packets = await site.shop.store.read("SELECT id FROM thing WHERE kind = 'packet'");
    expect(packets).toHaveLength(1);
    const form = await owner.form(`/jobs/${job}/hand-back`);
    const said = { ...form, stones: '0', pin: PIN, agreed: 'yes' };
    await owner.post(`/jobs/${job}/hand-back`, { ...said, packets: 'yes' });
    const lines = await written();
    expect(lines.some((one) => one.startsWith('Old parts returned'))).toBe(true);
    expect(lines.at(-1)).toBe('Job closed');
  });
  it('keeps the job open while its packet is still here', async () => {
    await ring(down);
    await finish({ method: 'cut', to: 'L', 'weight.text': '3.95' });
    await owner.post(`/jobs/${job}/hand-back`, { ...(await owner.form(`/jobs/${job}/hand-back`)), stones: '0', pin: PIN, agreed: 'yes' });
    expect((await written()).at(-1)).toMatch(/^Returned/);
  });
  it('is asked which lot it went into only where the terms leave it here', async () => {
    await ring({ ...down, cutMetal: 'shop' });
    expect((await finish({ method: 'cut', to: 'L', 'weight.text': '3.95', lot: '' })).html).toContain('Say which lot it went into');
    expect((await finish({ method: 'cut', to: 'L', 'weight.text': '3.95' })).status).toBe(303);
    expect(await site.shop.store.read("SELECT id FROM thing WHERE kind = 'packet'")).toHaveLength(0);
  });
});

describe('what was agreed', () => {
  it.each([
    ['the size on the stick', { method: 'insert', to: 'P', 'weight.text': '4.36' }, 'N was agreed and P is on the stick'],
    ['the sizing itself', { method: '', 'weight.text': '4.12' }, 'A sizing was agreed'],
    ['the way of the method', { method: 'cut', to: 'N', 'weight.text': '4.12' }, 'does not lead from L to N'],
    ['a new shank without its entries', { method: 're-shank', to: 'N', 'weight.text': '4.30' }, 'moves metal both ways'],
  ])('and was not done stops the finish: %s', async (_, said, words) => {
    await ring();
    const { status, html } = await finish(said);
    expect(status).toBe(422);
    expect(html).toContain(words);
  });
  it('and was done otherwise goes through with a remark', async () => {
    await ring();
    expect((await finish({ method: 'insert', to: 'O', 'weight.text': '4.33', note: 'She asked for O on the day.' })).status).toBe(303);
  });
});

describe('what nobody looked at', () => {
  it('is not written: seats are said where the tick is not set', async () => {
    await ring({ stones: 3 });
    const { status, html } = await finish({ method: 'insert', to: 'N', 'weight.text': '4.29', stonesHold: '', stones: '3' });
    expect(status).toBe(422);
    expect(html).toContain('Look at the seats');
  });
});

describe('what is expected', () => {
  const expectedOn = async (path: string) =>
    /class="expect">\s*expected <b>([^<]*)/.exec(await (await owner.get(path)).text())?.[1] ?? null;
  it('of the whole piece stands beside no part of it', async () => {
    await ring({ stones: 1 });
    for (const part of ['metal_cut', 'metal_added', 'stone_unset', 'stone_set', 'stone_supplied']) {
      expect(await expectedOn(`/jobs/${job}/write/${part}`), part).toBeNull();
    }
    expect(await expectedOn(`/jobs/${job}/write/piece_weighed`)).toMatch(/^4\.12 ± 0\.0\d\u00a0g$/);
  });
  it('of a stone is said in carats', async () => {
    await ring({ stones: 1 });
    const stone = site.shop.newRef('stone');
    await site.shop.write(
      line('setting_noted', { piece, stone, seat: 'middle', species: 'ruby', backing: 'open', state: 'sound' }),
      line('stone_unset', { piece, stone, stones: 1, weight: site.shop.carats('1.204'), condition: 'sound' }),
    );
    expect(await expectedOn(`/jobs/${job}/write/stone_weighed`)).toMatch(/^1\.204 ± 0\.00\d\u00a0ct$/);
  });
});

describe('the finish sheet', () => {
  const page = async () => (await owner.get(`/jobs/${job}/finish`)).text();
  it('says that what is expected does not count the metal it asks about itself', async () => {
    await ring();
    expect(await page()).toContain('Expected before anything is let in or cut out.');
  });
  it('keeps what was weighed apart in sight when something else is wrong', async () => {
    await ring();
    const form = await owner.form(`/jobs/${job}/finish`);
    const html = await (
      await owner.post(`/jobs/${job}/finish`, { ...form, method: 'insert', to: 'N', 'moved.text': '0.17', 'weight.text': '4.29' })
    ).text();
    expect(html).toMatch(/<details class="step" open[^>]*><summary>The piece let in or cut out, weighed/);
    expect(await page()).toMatch(/<details class="step"><summary>The piece let in or cut out, weighed/);
  });
  it('leads to the metal it lacks, and begins it with that metal', async () => {
    await ring();
    expect(await page()).not.toContain('Receive metal');
    await ring({ metal: 'gold-585' });
    const to = /<a href="([^"]*)">Receive metal/.exec(await page())?.[1] ?? '';
    expect(await (await owner.get(to)).text()).toMatch(/<option value="gold-585" selected/);
  });
});
