// Find, the trail and setup: what is looked up, and what there is when there is nothing.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { line } from '../shop.ts';
import { takeRingIn } from './job-in-house.ts';
import { openSite, PASSWORD, type Site, type Visitor } from './site.ts';

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
const find = async (words: string) => {
  const answer = await owner.get(`/find?q=${encodeURIComponent(words)}`, { accept: 'application/json' });
  return answer.status === 303
    ? answer.headers.get('location')
    : (((await answer.json()) as { hits: { href: string }[] }).hits.map(({ href }) => href) as unknown);
};

describe('Find', () => {
  it('goes straight to the job of a bag, however its code is typed', async () => {
    const { bag, job } = await takeRingIn(site.shop);
    const spaced = `${bag.slice(0, 2)} ${bag.slice(2)}`.toLowerCase();
    for (const typed of [bag, spaced, ` ${bag}-`]) expect(await find(typed)).toBe(`/jobs/${job}`);
  });

  it.each(['07700 900123', '+44 7700 900123', '07700900123', '900123', '00 44 7700-900123'])(
    'finds a customer by the telephone typed as %s',
    async (typed) => {
      const { job } = await takeRingIn(site.shop, { phone: '07700 900123' });
      await takeRingIn(site.shop, { name: 'Somebody Else', phone: '020 7946 0999' });
      expect(await find(typed)).toEqual([`/jobs/${job}`]);
    },
  );

  it('finds a customer by a part of the name, a stone by what it is, and a mark as struck', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const stone = site.shop.newRef('stone');
    await site.shop.write(line('setting_noted', { piece, stone, seat: 'middle', species: 'sapphire', backing: 'open', state: 'sound' }));
    await site.shop.write(line('mark_read', { piece, kind: 'sponsor', where: 'inside', struck: 'RWQ', legible: 'clear' }));
    expect(await find('abar')).toEqual([`/jobs/${job}`]);
    expect(await find('sapph')).toEqual([`/things/${stone}`]);
    expect(await find('rwq')).toEqual([`/things/${piece}`]);
  });

  it('says when there is nothing, and what to type when nothing was typed', async () => {
    expect(await page('/find?q=nothing-here')).toContain('Nothing for “nothing-here”.');
    expect(await page('/find?q=')).toContain('Type or scan a bag');
  });
});

describe('the trail', () => {
  it('shows the entries of one person, or of one kind', async () => {
    await takeRingIn(site.shop);
    const seqs = async (query: string) =>
      ((await owner.json(`/trail?${query}`)).entries as { leaf: { type: string } }[]).map(({ leaf }) => leaf.type);
    expect(await seqs('type=piece_received')).toEqual(['piece_received']);
    expect(new Set(await seqs(`by=${site.shop.owner}`)).size).toBeGreaterThan(3);
    expect(await page(`/trail?by=${site.shop.newRef('person')}`)).toContain('No entry is like that.');
  });

  it('goes on from where a page ended, with the same choice', async () => {
    const { job } = await takeRingIn(site.shop);
    for (let n = 0; n < 120; n++) await site.shop.write(line('note_added', { about: job, text: `note ${n}` }));
    const html = await page('/trail?type=note_added');
    const older = /href="(\/trail\?[^"]*)">Earlier/.exec(html)?.[1]?.replaceAll('&amp;', '&') ?? '';
    const { entries, older: next } = await owner.json(older);
    expect([(entries as unknown[]).length, next]).toEqual([20, null]);
  });
});

describe('a lot', () => {
  it('shows its newest entries, and leads to those before them', async () => {
    const { shop } = site;
    const lot = shop.newRef('lot');
    await shop.write(line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }));
    for (let n = 0; n < 120; n++) await shop.write(line('note_added', { about: lot, text: `note ${n}` }));
    const { entries, older } = (await owner.json(`/things/${lot}`)) as { entries: unknown[]; older: number };
    expect(entries.length).toBe(100);
    const href = /href="(\/things\/[^"]*)">Earlier/.exec(await page(`/things/${lot}`))?.[1] ?? '';
    expect(href).toBe(`/things/${lot}?before=${older}`);
    expect((await owner.json(href)).entries as unknown[]).toHaveLength(21);
  });
});

describe('a correction', () => {
  it('is shown where its entry is shown, however many entries lie between', async () => {
    const { shop } = site;
    const { piece } = await takeRingIn(shop);
    const seq = await shop.write(line('piece_weighed', { piece, state: 'polished', weight: shop.grams('6.82') }));
    for (let n = 0; n < 120; n++) await shop.write(line('place_named', { place: shop.newRef('place'), name: `Tray ${n}`, kind: 'tray' }));
    const hash = String((await owner.json(`/entries/${seq}`)).hash);
    const said = { target: hash, seq, field: 'state', was: 'polished', is: 'as received', reason: 'not polished yet' };
    const by = await shop.write(line('corrected', said));
    expect(await page(`/entries/${seq}`)).toContain(`/entries/${by}`);
    expect(await page('/trail?type=piece_weighed')).toContain(`corrected by ${by}`);
    expect(await page(`/entries/${by}`)).toContain(`/entries/${seq}`);
  });
});

describe('setup', () => {
  it('says of each list what is missing and how to begin it', async () => {
    const html = await page('/setup');
    for (const words of ['No place is named yet.', 'No open lot.', 'No skin yet.', 'Nothing listed yet.']) expect(html).toContain(words);
    expect(html).toContain('no PIN yet');
  });

  it('gives somebody a PIN, and refuses one that is none', async () => {
    const form = { ...(await owner.form('/setup')), password: PASSWORD };
    const [bench] = (await site.shop.store.read("SELECT id FROM thing WHERE kind = 'person' ORDER BY n DESC LIMIT 1")).map(({ id }) =>
      String(id),
    );
    expect((await owner.post('/setup/pin', { ...form, person: bench ?? '', pin: '12' })).status).toBe(422);
    expect((await owner.post('/setup/pin', { ...form, person: '', pin: '1234' })).status).toBe(422);
    expect((await owner.post('/setup/pin', { ...form, person: bench ?? '', pin: '1234', password: 'guessed' })).status).toBe(422);
    expect((await owner.post('/setup/pin', { ...form, person: bench ?? '', pin: '1234' })).status).toBe(303);
  });
});
