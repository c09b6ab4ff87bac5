// The record letter: what it says, what it never says, and that what it carries can be checked by the published rules alone.
import { createHash, createPublicKey, verify } from 'node:crypto';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
import { keepPhoto } from '../../src/store/photos.ts';
import { line } from '../shop.ts';
import { nameSafe, type RingJob, takeRingIn } from './job-in-house.ts';
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

async function photograph(red: number): Promise<string> {
  const image = await sharp({ create: { width: 60, height: 40, channels: 3, background: { r: red, g: 90, b: 90 } } })
    .png()
    .toBuffer();
  const kept = await keepPhoto(site.web.photosDir, image);
  return 'hash' in kept ? kept.hash : '';
}

/** A ring with one stone out and in, worn metal cut, metal added and weighed last; 6.82 − 0.41 + 0.38 = 6.79. */
async function repaired({ last = '6.79' } = {}): Promise<RingJob> {
  const ring = await takeRingIn(site.shop);
  const { job, piece } = ring;
  const { safe } = await nameSafe(site.shop);
  const [stone, lot, stock] = [site.shop.newRef('stone'), site.shop.newRef('lot'), site.shop.newRef('stock')];
  await write(line('photo_added', { about: piece, photo: await photograph(10), shows: 'pan' }));
  await write(line('value_stated', { piece, value: { minor: 777_700, currency: 'GBP' }, statedBy: 'customer' }));
  await write(line('moved', { of: job, to: safe }));
  await write(line('setting_noted', { piece, stone, seat: 'middle', species: 'sapphire', backing: 'open', state: 'sound' }));
  await write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: site.shop.carats('1.204') }));
  await write(line('stone_set', { piece, stone, stones: 1 }));
  await write(line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }));
  await write(line('metal_received', { stock, name: 'Sheet from Baird', metal: 'gold-750', weight: site.shop.grams('20.00') }));
  await write(line('metal_cut', { piece, lot, metal: 'gold-750', part: 'worn claws', weight: site.shop.grams('0.41') }));
  await write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'claw', weight: site.shop.grams('0.38') }));
  await write(line('note_added', { about: job, text: 'Ask Mr Quill about the estate' }));
  await write(line('photo_added', { about: piece, photo: await photograph(200), shows: 'whole' }));
  await write(line('piece_weighed', { piece, state: 'finished', weight: site.shop.grams(last, { repeats: [last], because: 'as read' }) }));
  await write(line('piece_checked', { piece, stones: 3, seats: 'tight', marks: 'readable' }));
  return ring;
}

describe('a record letter', () => {
  it('begins with one sentence of weights and stones', async () => {
    const { job } = await repaired();
    const html = await page(`/jobs/${job}/letter`);
    expect(html).toContain(
      'Your ring weighed 6.82\u00a0g at the counter, and weighs now 6.79\u00a0g. 3 stones counted as it came in, 3 counted last.',
    );
  });

  it('shows the first day beside the last, what was removed and added and where it went', async () => {
    const { job } = await repaired();
    const html = await page(`/jobs/${job}/letter`);
    expect(html.match(/<img src="\/photos\/[0-9a-f]{64}"/g)).toHaveLength(2);
    expect(html).toContain('Worn metal removed: worn claws, 18ct gold · 750');
    expect(html).toContain('0.41\u00a0g');
    expect(html).toContain('kept by the shop; agreed was that it comes back to you');
    expect(html).toContain('have it valued again');
  });

  it('uses none of the words it may not use', async () => {
    const { job } = await repaired();
    const text = (await page(`/jobs/${job}/letter`)).replace(/^[\s\S]*<article/, '').replace(/<[^>]*>/g, ' ');
    expect(text).not.toMatch(/\b(proof|prove|proves|certificate|certified|certify|scrap|loss|exact|all yours|guarantee)/i);
  });

  it('shows a correction beside what it corrects', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const seq = await write(line('piece_weighed', { piece, state: 'cleaned and dry', weight: site.shop.grams('6.81') }));
    const [row] = await site.shop.store.read('SELECT leaf_hash FROM entry WHERE seq = ?', [seq]);
    const target = Buffer.from(row?.leaf_hash as ArrayBuffer).toString('base64url');
    const [was, is] = [site.shop.grams('6.81'), site.shop.grams('6.80')];
    await write(line('corrected', { target, seq, field: 'weight', was, is, reason: 'misread' }));
    const html = await page(`/jobs/${job}/letter`);
    expect(html).toContain(`corrected by entry ${seq + 1}`);
    expect(html).toContain('One entry was corrected afterwards');
    expect(html).toMatch(/<s>[^<]*6\.81\u00a0g[^<]*<\/s>[^<]*6\.80\u00a0g/);
  });

  it('of a job that was only just taken in has no empty parts', async () => {
    const { job } = await takeRingIn(site.shop);
    const html = await page(`/jobs/${job}/letter`);
    expect(html).toContain('Your ring weighed 6.82\u00a0g at the counter.');
    expect(html).toContain('No metal is entered as removed or added.');
    expect(html).toContain('Counted: 3 stones');
  });

  it('names the weight at the counter and the one once cleaned', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    await write(line('piece_cleaned', { piece, how: ['steam'], dry: 'dry', weight: site.shop.grams('6.79') }));
    expect(await page(`/jobs/${job}/letter`)).toContain('Your ring weighed 6.82\u00a0g at the counter, 6.79\u00a0g once cleaned.');
  });

  it('advises on insurance only where the piece is not what it was', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    await write(line('piece_weighed', { piece, state: 'polished', weight: site.shop.grams('6.81') }));
    expect(await page(`/jobs/${job}/letter`)).not.toContain('insurance');
  });

  it('has every stone that was counted, and no packet of gold among them', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    const [stone, packet] = [site.shop.newRef('stone'), site.shop.newRef('packet')];
    await write(line('setting_noted', { piece, stone, seat: 'middle', species: 'sapphire', backing: 'open', state: 'sound' }));
    await write(line('metal_cut', { piece, packet, metal: 'gold-750', part: 'old shank', weight: site.shop.grams('1.20') }));
    await write(line('old_parts_returned', { packet, to: 'customer', signed: 'signature' }));
    const text = (await page(`/jobs/${job}/letter`)).replace(/<[^>]*>/g, ' ').replace(/ +/g, ' ');
    expect(text).toContain('middle: sapphire');
    expect(text).toContain('Counted: 2 stones more');
    expect(text).not.toContain('not known');
    expect(text).toContain('went home with you');
  });

  it('says that what was weighed agrees, not what is returned, while the piece is with somebody outside', async () => {
    const { job, piece } = await repaired();
    await write(line('released', { of: piece, purpose: 'plating', count: 1 }));
    await write(line('accepted', { of: piece, evidence: 'sheet', sealState: 'none', count: 1 }));
    const html = await page(`/jobs/${job}/letter`);
    expect(html).toContain('What was weighed accounts for all of it');
    expect(html).not.toContain('What we return');
  });

  it('is in US words where the shop uses them, and leaves what somebody typed as it was typed', async () => {
    const { job } = await takeRingIn(site.shop, { description: 'Ring, 1ct diamond in claws' });
    await write(line('policy_set', { shop: site.shop.shop, words: 'us' }));
    const html = await page(`/jobs/${job}/letter`);
    expect(html).toContain('Received: Ring, 1ct diamond in claws, 3 stones');
    expect(html).toContain('Agreed: retip prongs');
    expect(html).not.toMatch(/[\uE0F0\uE0F1]/);
  });

  it('is of a job that exists, and for those who work here', async () => {
    expect((await owner.get('/jobs/nothing/letter')).status).toBe(404);
    expect((await owner.get('/jobs/nothing/letter.html')).status).toBe(404);
    const { job } = await takeRingIn(site.shop);
    expect((await (await site.as('auditor')).get(`/jobs/${job}/letter`)).status).toBe(403);
  });
});

describe('a letter that would say that something does not agree', () => {
  it('asks first whether the insurer knows, and then goes out', async () => {
    const { job } = await repaired({ last: '6.19' });
    const html = await page(`/jobs/${job}/letter`);
    expect(html).toContain('Tell your insurer first');
    expect(html).not.toContain('What was done, and when');
    expect((await owner.get(`/jobs/${job}/letter.html`)).status).toBe(303);
    expect(await page(`/jobs/${job}/letter?told=yes`)).toContain('What was done, and when');
    expect((await owner.get(`/jobs/${job}/letter.html?told=yes`)).status).toBe(200);
  });

  it('asks where a count of stones differs too', async () => {
    const { job, piece } = await takeRingIn(site.shop);
    await write(line('piece_checked', { piece, stones: 2, seats: 'tight', marks: 'readable' }));
    expect((await owner.json(`/jobs/${job}/letter`)).tellInsurerFirst).toEqual(['2 stones counted, 3 expected.']);
  });
});

describe('the file that goes home', () => {
  it('is one file that needs nothing from elsewhere and says that it has not been checked', async () => {
    const { job, bag } = await repaired();
    const answer = await owner.get(`/jobs/${job}/letter.html`);
    expect(answer.headers.get('content-disposition')).toBe(`attachment; filename="record-letter-${bag}.html"`);
    const html = await answer.text();
    expect(html).toContain('NOT CHECKED');
    expect(html.match(/(?:src|href)="(?!data:)/g)).toBeNull();
    expect(html.match(/src="data:image\/webp;base64,/g)).toHaveLength(2);
    expect(html.replace(/data:image[^"]*/g, '').length).toBeLessThan(100_000);
  });

  it('holds no byte of another job, another customer, a name of staff, a place or a value', async () => {
    const other = await takeRingIn(site.shop, {
      name: 'Odile Marchetti',
      phone: '020 7946 0999',
      description: 'Signet with crest',
      grams: '9.31',
    });
    const { job } = await repaired();
    const html = await page(`/jobs/${job}/letter.html`);
    const carried = check(html).entries.map(({ leaf }) => Buffer.from(leaf, 'base64').toString());
    const bytes = html + carried.join('\n');
    const never = ['Odile', 'Marchetti', '0999', 'Signet', '9.31', other.bag, other.job, other.customer, other.piece];
    const staff = ['Ada Wren', 'A bench', 'A counter'];
    for (const word of [...never, ...staff, 'Old safe', 'Blue tray', '7777', 'Quill', 'Ruth', '07700', '18Y-4', 'Baird']) {
      expect(bytes, word).not.toContain(word);
    }
  });

  it('can be checked by RFC 9162 and the signed checkpoint, with Node’s own digests', async () => {
    await takeRingIn(site.shop);
    const { job } = await repaired();
    const found = check(await page(`/jobs/${job}/letter.html`));
    const root = signedRoot(found);
    expect(found.entries.length).toBe(15);
    for (const { seq, leaf, path } of found.entries) {
      const leafHash = sha(Buffer.concat([Buffer.of(0), Buffer.from(leaf, 'base64')]));
      const proof = path.map((at) => Buffer.from(found.hashes[at] ?? '', 'base64'));
      expect(climb(leafHash, seq, found.size, proof)).toEqual(root);
    }
    const streams = found.entries.map(
      ({ leaf }) => JSON.parse(Buffer.from(leaf, 'base64').toString()).links.find(({ s }: { s: string }) => s === job).n,
    );
    expect(streams).toEqual(found.entries.map((_, n) => n));
  });

  it('carries the checkpoint of the collection slip as the beginning of its own', async () => {
    const ring = await takeRingIn(site.shop);
    await write(line('ticket_issued', { job: ring.job, kind: 'slip', checkpoint: '9' }));
    const { slips } = check(await page(`/jobs/${ring.job}/letter.html`));
    expect(slips.map(({ size }) => size)).toEqual([9]);
  });
});

interface Found {
  readonly checkpoint: string;
  readonly key: string;
  readonly size: number;
  readonly hashes: readonly string[];
  readonly entries: readonly { readonly seq: number; readonly leaf: string; readonly path: readonly number[] }[];
  readonly slips: readonly { readonly size: number }[];
}
const check = (html: string): Found => JSON.parse(/id="check-data">([\s\S]*?)<\/script>/.exec(html)?.[1] ?? '{}');
const sha = (bytes: Buffer) => createHash('sha256').update(bytes).digest();

/** The root of an inclusion path, by the steps of RFC 9162, section 2.1.3.2. */
function climb(leaf: Buffer, index: number, size: number, proof: readonly Buffer[]): Buffer {
  let [fn, sn, r] = [index, size - 1, leaf];
  for (const p of proof) {
    if (fn % 2 === 1 || fn === sn) {
      r = sha(Buffer.concat([Buffer.of(1), p, r]));
      while (fn % 2 === 0 && fn !== 0) [fn, sn] = [Math.floor(fn / 2), Math.floor(sn / 2)];
    } else r = sha(Buffer.concat([Buffer.of(1), r, p]));
    [fn, sn] = [Math.floor(fn / 2), Math.floor(sn / 2)];
  }
  expect(sn).toBe(0);
  return r;
}

/** The root in the note, after its Ed25519 signature was verified (C2SP signed-note and tlog-checkpoint). */
function signedRoot({ checkpoint, key, size }: Found): Buffer {
  const [body = '', signatures = ''] = checkpoint.split('\n\n');
  const publicKey = Buffer.from(key.split('+').slice(2).join('+'), 'base64').subarray(1);
  const spki = Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), publicKey]);
  const signature = Buffer.from(signatures.trim().split(' ').at(-1) ?? '', 'base64').subarray(4);
  expect(verify(null, Buffer.from(`${body}\n`), createPublicKey({ key: spki, format: 'der', type: 'spki' }), signature)).toBe(true);
  const [, signedSize, root = ''] = body.split('\n');
  expect(Number(signedSize)).toBe(size);
  return Buffer.from(root, 'base64');
}
