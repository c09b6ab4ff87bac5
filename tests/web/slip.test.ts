// The collection slip: its code is read back by a decoder that did not draw it, and the note in it is opened with the shop's key.
import { createHash } from 'node:crypto';
import { createRequire } from 'node:module';
import type { QRCode } from 'jsqr';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCheckpoint } from '../../src/log/checkpoint.ts';
import { openNote, parseVerifierKey } from '../../src/log/note.ts';
import { Qr } from '../../views/parts/qr.tsx';
import { nobleVerify, sha256, toHex } from '../log/crypto.ts';
import { line } from '../shop.ts';
import { type RingJob, takeRingIn } from './job-in-house.ts';
import { inputsOf, openSite, PASSWORD, type Site, type Visitor } from './site.ts';

/** The decoder is CommonJS whose types name its default export. */
const jsQR = createRequire(import.meta.url)('jsqr') as (pixels: Uint8ClampedArray, width: number, height: number) => QRCode | null;

let site: Site;
let owner: Visitor;
let ring: RingJob;
beforeAll(async () => {
  site = await openSite();
  owner = await site.as('owner');
  ring = await takeRingIn(site.shop);
});
afterAll(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const SCALE = 4;
const QUIET = 4;

interface Drawn {
  /** Modules a side, without the quiet zone. */
  readonly side: number;
  readonly path: string;
}

/** The bytes a decoder finds in a code drawn from its path, square by square. */
function decoded({ side, path }: Drawn): Uint8Array {
  const width = (side + 2 * QUIET) * SCALE;
  const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y, length] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let row = 0; row < SCALE; row++)
      for (let column = 0; column < Number(length) * SCALE; column++) {
        const at = ((Number(y) + QUIET) * SCALE + row) * width + (Number(x) + QUIET) * SCALE + column;
        pixels.fill(0, at * 4, at * 4 + 3);
      }
  }
  return Uint8Array.from(jsQR(pixels, width, width)?.binaryData ?? []);
}

/** The codes drawn on a page, in their order. */
const codesOn = (html: string): readonly Drawn[] =>
  [...html.matchAll(/viewBox="-4 -4 (\d+) \d+"[^>]*><rect[^>]*\/?>(?:<\/rect>)?<path d="([^"]+)"/g)].map(([, side, path]) => ({
    side: Number(side) - 2 * QUIET,
    path: path ?? '',
  }));
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** The customer's part, and its words alone. */
const partOf = (html: string) => html.slice(html.indexOf('<section class="slip"'), html.indexOf('counterfoil'));
const textIn = (html: string) =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&amp;', '&')
    .replace(/ +/g, ' ');

async function slipPage(): Promise<{ readonly path: string; readonly html: string }> {
  const issued = await owner.post(`/jobs/${ring.job}/slip`, {});
  const path = issued.headers.get('location') ?? '';
  return { path, html: await (await owner.get(path)).text() };
}

describe('a code', () => {
  it.each(['7N4K', 'naïve — “claw” 18ct', 'x'.repeat(400)])('is read back byte for byte: %s', (text) => {
    expect(textOf(decoded(codesOn(String(Qr({ text, label: '' })))[0] as Drawn))).toBe(text);
  });
});

describe('a collection slip', () => {
  it('carries the whole signed note, which the shop’s key opens, for the record as it stood', async () => {
    const { path, html } = await slipPage();
    const said = (await owner.json(path)) as { note: string; size: number; vkey: string; fingerprint: string };
    const [code] = codesOn(html);
    const note = textOf(decoded(code as Drawn));
    expect(note).toBe(said.note);
    const key = parseVerifierKey(sha256, said.vkey, 1);
    if ('refused' in key) throw new Error(key.say);
    const opened = openNote(note, [key], nobleVerify);
    if ('refused' in opened) throw new Error(opened.say);
    const checkpoint = parseCheckpoint(opened.text);
    if ('refused' in checkpoint) throw new Error(checkpoint.say);
    expect(checkpoint.size).toBe(said.size);
    expect(said.fingerprint.replaceAll(' ', '')).toBe(toHex(sha256(new TextEncoder().encode(said.vkey))).slice(0, 16));
    expect(html).toContain(said.fingerprint);
  });

  it('is itself an entry that names the size of the record', async () => {
    const { path } = await slipPage();
    const { entries } = (await owner.json(`/jobs/${ring.job}`)) as { entries: { type: string; said: string }[] };
    const issued = entries.filter(({ type }) => type === 'ticket_issued').at(-1);
    expect(issued?.said).toContain(`at ${path.split('/').at(-1)} entries`);
  });

  it('is said to be printed by printing it alone: no form claims one', async () => {
    expect((await owner.get(`/jobs/${ring.job}/write/ticket_issued`)).status).toBe(404);
    expect((await owner.post(`/jobs/${ring.job}/write/ticket_issued`, { job: ring.job, kind: 'slip', checkpoint: '99' })).status).toBe(404);
  });

  it('has a bag label whose code opens the bag', async () => {
    const { html } = await slipPage();
    const label = textOf(decoded(codesOn(html)[1] as Drawn));
    expect(new URL(label).pathname).toBe(`/b/${ring.bag}`);
    const scanned = await owner.get(new URL(label).pathname);
    expect((await owner.get(scanned.headers.get('location') ?? '')).headers.get('location')).toBe(`/jobs/${ring.job}/finish`);
  });

  it('says no name, no value and no place on the customer’s part', async () => {
    const hers = partOf((await slipPage()).html);
    expect(hers).toContain(ring.bag);
    for (const word of ['Abara', 'Safe', '7,777', '7777']) expect(hers).not.toContain(word);
  });

  it('answers alone whose shop it is, what was left and when, how much, what is done, and what becomes of the metal', async () => {
    await site.shop.write(
      line('shop_described', { shop: site.shop.shop, address: '9 Wren Row\nBirmingham B18 6NF', phone: '0121 496 0018' }),
    );
    const hers = textIn(partOf((await slipPage()).html));
    for (const words of ['Wren & Daughter', '9 Wren Row', '0121 496 0018', 'left Tue 1 Dec 2026, 09:00']) expect(hers).toContain(words);
    expect(hers).toContain('Three-stone ring, 18ct gold · 750, 3 stones; 6.82\u00a0g');
    for (const words of ['Re-tip claws', '£85.00', 'Tue 8 Dec 2026']) expect(hers).toContain(words);
    expect(hers).toContain('Worn metal that we take out comes back to you. Dust and filings: what we can gather stays with the shop.');
    expect(hers).toContain('We count the stones out with you.');
  });

  it('says that no stones were counted where there were none, and price to follow where none was agreed', async () => {
    const [job, piece] = [site.shop.newRef('job'), site.shop.newRef('piece')];
    const parts = [{ part: 'links', metal: 'gold-375' }];
    await site.shop.write(
      line('job_opened', { job, bag: site.shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      line('piece_received', { job, piece, kind: 'chain', description: 'chain', parts, stones: 0, weight: site.shop.grams('11.47') }),
    );
    const { headers } = await owner.post(`/jobs/${job}/slip`, {});
    const hers = textIn(partOf(await (await owner.get(headers.get('location') ?? '')).text()));
    expect(hers).toContain('Chain, 9ct gold · 375, no stones; 11.47\u00a0g');
    expect(hers).toContain('price to follow');
    expect(hers).not.toContain('We count the stones');
  });

  it('prints the terms that the job was agreed under, in words, whatever was set since', async () => {
    const set = (text: string) =>
      owner.form('/setup/terms').then((form) => owner.post('/setup/terms', { ...form, text, password: PASSWORD }));
    await set('We take care.\nYou bring the slip.');
    const first = createHash('sha256').update('We take care.\nYou bring the slip.').digest('hex').slice(0, 12);
    const page = await (await owner.get('/ticket')).text();
    const form = inputsOf(`<main${page.slice(page.indexOf('<form class="sheet"'))}`);
    const said = {
      name: 'Odile Quince',
      kind: 'brooch',
      metal: 'gold-750',
      stonesSeen: 'none',
      'weight.text': '5.00',
      price: '20',
      priceKind: 'fixed',
      promise: '2026-12-08',
    };
    const sent = { ...form, ...said, 'weight.balance': site.shop.balance, steps: ['polish'] };
    const read = await (await owner.post('/ticket', sent)).text();
    expect(textIn(read)).toContain(`Our terms apply (${first})`);
    expect(read).toContain('You bring the slip.');
    const path = (await owner.post('/ticket', { ...sent, ...inputsOf(read), agreed: 'yes' })).headers.get('location') ?? '';
    await set('Other terms altogether.');
    const hers = textIn(partOf(await (await owner.get(path)).text()));
    expect(hers).toContain(`Our terms ${first}`);
    expect(hers).toContain('You bring the slip.');
    expect(hers).not.toContain('Other terms');
  });

  it('is a claim check where the shop uses US words', async () => {
    await site.shop.write(line('policy_set', { shop: site.shop.shop, words: 'us' }));
    const { html } = await slipPage();
    expect(html).toContain('Claim check');
    expect(html).not.toContain('Collection slip');
    expect(textIn(partOf(html))).toContain('Three-stone ring, 18K gold · 750, 3 stones');
    expect(textIn(partOf(html))).toContain('Retip prongs');
    await site.shop.write(line('policy_set', { shop: site.shop.shop, words: 'uk' }));
  });

  it('is not issued for a size at which nothing was signed', async () => {
    expect((await owner.get(`/jobs/${ring.job}/slip/999999`)).status).toBe(404);
    expect((await owner.get(`/jobs/${ring.job}/slip/x`)).status).toBe(404);
  });
});
