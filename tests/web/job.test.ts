// One job on screen: what it tells, the screen turned to the customer, its photographs, and what others wrote meanwhile.
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
import { keepPhoto } from '../../src/store/photos.ts';
import { instant } from '../../src/units/dates.ts';
import { line } from '../shop.ts';
import { takeRingIn } from './job-in-house.ts';
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
const write = (...lines: readonly Line[]) => site.shop.write(...lines);

async function correct(seq: number, field: string, was: unknown, is: unknown): Promise<void> {
  const [row] = await site.shop.store.read('SELECT leaf_hash FROM entry WHERE seq = ?', [seq]);
  const target = Buffer.from(row?.leaf_hash as ArrayBuffer).toString('base64url');
  await write(line('corrected', { target, seq, field, was, is, reason: 'digits swapped' }));
}

describe('a job', () => {
  it('strikes what was corrected and joins the correction with what stands now', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const [was, is] = [site.shop.grams('6.80'), site.shop.grams('6.81')];
    const seq = await write(line('piece_weighed', { piece, state: 'cleaned and dry', weight: was }));
    await correct(seq, 'weight', was, is);
    const html = await page(`/jobs/${job}`);
    expect(html).toMatch(/<li class="struck"><b><s>Weighed, cleaned and dry: 6\.80\u00a0g<\/s><\/b>/);
    expect(html).toMatch(/<li class="joined"><b>Corrected entry \d+, weight: digits swapped<\/b><span class="num">6\.81\u00a0g<\/span>/);
  });

  it('offers an auditor nothing to write', async () => {
    const { job } = await takeRingIn(site.shop);
    const auditor = await site.as('auditor');
    for (const path of [`/jobs/${job}`, `/jobs/${job}/stones`]) {
      expect(await page(path)).toContain('/write/');
      expect(await (await auditor.get(path)).text()).not.toContain('/write/');
    }
  });

  it('shows its photographs, and each with its entry', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    expect(await page(`/jobs/${job}`)).toContain('No photograph yet.');
    const hash = await photograph();
    await write(line('photo_added', { about: piece, photo: hash, shows: 'pan' }));
    expect(await page(`/jobs/${job}`)).toContain(`<img src="/photos/${hash}" alt="on the pan"`);
    const answer = await owner.get(`/photos/${hash}`);
    expect([answer.headers.get('content-type'), (await sharp(await answer.arrayBuffer()).metadata()).format]).toEqual([
      'image/webp',
      'webp',
    ]);
    expect((await owner.get(`/photos/${'0'.repeat(64)}`)).status).toBe(404);
    expect((await site.nobody.get(`/photos/${hash}`)).status).toBe(303);
  });

  it('takes no photograph that is not here, by whatever its hash', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const path = `/jobs/${job}/write/photo_added`;
    const fields = { ...(await owner.form(path)), about: piece, shows: 'whole' };
    const refused = await owner.post(path, { ...fields, photo: 'a'.repeat(64) });
    expect([refused.status, (await refused.text()).includes('This photograph is not here.')]).toEqual([422, true]);
    expect((await owner.post(path, { ...fields, photo: await photograph() })).status).toBe(303);
  });

  it('takes a photograph from a form, and says beside the field what is no photograph', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const path = `/jobs/${job}/write/photo_added`;
    const fields = { ...(await owner.form(path)), about: piece, shows: 'whole' };
    const refused = await owner.post(path, { ...fields, photo: new File(['not a picture'], 'a.jpg', { type: 'image/jpeg' }) as never });
    expect([refused.status, (await refused.text()).includes('This is not a photograph that can be read.')]).toEqual([422, true]);
    const image = new File([new Uint8Array(await png())], 'a.png', { type: 'image/png' });
    expect((await owner.post(path, { ...fields, photo: image as never })).status).toBe(303);
    expect(await page(`/jobs/${job}`)).toMatch(/<img src="\/photos\/[0-9a-f]{64}" alt="the whole"/);
  });
});

describe('the screen turned to the customer', () => {
  it('hides names, prices and other customers', async () => {
    await takeRingIn(site.shop, { name: 'Odile Marchetti', description: 'Signet' });
    const { job } = await takeRingIn(site.shop);
    const main = (await page(`/jobs/${job}?face=customer`)).replace(/^[\s\S]*<main/, '');
    expect(main).toContain('Your ring weighed 6.82\u00a0g at the counter.');
    for (const word of ['Odile', 'Signet', 'Ada Wren', '£', '85.00', 'Ruth']) expect(main, word).not.toContain(word);
  });

  it('says that weights are being checked, and no figure, where they do not agree', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const lot = site.shop.newRef('lot');
    await write(line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }));
    await write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: site.shop.grams('1.43') }));
    await write(line('piece_weighed', { piece, state: 'cut', weight: site.shop.grams('4.85', { repeats: ['4.85'], because: 'as read' }) }));
    expect(await page(`/jobs/${job}`)).toContain('class="beam off"');
    const turned = await page(`/jobs/${job}?face=customer`);
    expect(turned).toContain('The weights are being checked.');
    expect(turned).not.toContain('class="beam off"');
  });
});

describe('news of a job', () => {
  it('is nothing until somebody writes, then says which entry', async () => {
    const { job } = await takeRingIn(site.shop);
    const first = await owner.get(`/jobs/${job}/news?after=3`);
    expect([first.status, await first.text()]).toEqual([200, '']);
    const tag = first.headers.get('etag') ?? '';
    expect((await owner.get(`/jobs/${job}/news?after=3`, { 'if-none-match': tag })).status).toBe(304);
    const seq = await write(line('taken', { of: job }));
    const later = await owner.get(`/jobs/${job}/news?after=3`, { 'if-none-match': tag });
    expect(await later.text()).toContain(`entry ${seq}`);
    expect((await owner.get('/jobs/nothing/news')).status).toBe(404);
  });

  it('does not keep a bench session awake, and sends no page away that is locked', async () => {
    const { job } = await takeRingIn(site.shop);
    const ask = () => owner.get(`/jobs/${job}/news?after=3`, { 'hx-request': 'true' });
    for (let minute = 0; minute < 9; minute++) {
      site.shop.clock.now = instant(site.shop.clock.now + 60_000);
      expect((await ask()).status).toBe(200);
    }
    site.shop.clock.now = instant(site.shop.clock.now + 2 * 60_000);
    expect((await ask()).status).toBe(204);
    expect((await owner.get(`/jobs/${job}`)).status).toBe(303);
  });
});

const png = () =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: '#aa8' } })
    .png()
    .toBuffer();

async function photograph(): Promise<string> {
  const kept = await keepPhoto(site.web.photosDir, await png());
  return 'hash' in kept ? kept.hash : '';
}
