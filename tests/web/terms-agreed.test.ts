// What both agree on at the counter are the terms that were read back: changed meanwhile, nothing is written and nothing typed is lost.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { termsName } from '../../src/book/terms.ts';
import { hex, utf8 } from '../../src/log/bytes.ts';
import { sha256 } from '../../src/store/crypto.ts';
import { termsLine } from '../../src/web/setup/terms.ts';
import { type Fields, inputsOf, openSite, PIN, type Site, type Visitor } from './site.ts';

let site: Site;
let owner: Visitor;
beforeAll(async () => {
  site = await openSite();
  owner = await site.as('owner');
});
afterAll(() => site.close());

let texts = 0;
/** Sets terms that were never in force before; answers their name. */
async function setTerms(): Promise<string> {
  const text = `Terms of a new kind, ${texts++}.`;
  await site.shop.write(termsLine(site.shop.shop, text));
  return termsName(hex(sha256(utf8(text))));
}
const agreements = async () =>
  (await site.shop.store.read("SELECT leaf FROM entry WHERE type = 'work_agreed' ORDER BY seq")).map(
    ({ leaf }) => (JSON.parse(new TextDecoder().decode(leaf as ArrayBuffer)) as { data: { terms: string } }).data.terms,
  );

const SMALL = {
  kind: 'ring',
  metal: 'gold-750',
  stonesSeen: 'none',
  'weight.text': '5.00',
  price: '20',
  priceKind: 'fixed',
  steps: ['polish'],
};
const FORMS: readonly (readonly [path: string, said: Fields])[] = [
  ['/ticket', { ...SMALL, name: 'Odile Quince', promise: '2026-12-08' }],
  ['/wait', { ...SMALL, stonesOut: '0', marksNow: 'readable' }],
  [
    '/take-in',
    {
      ...{ name: 'Odile Quince', kind: 'ring', description: 'Plain band', stones: '0', 'weight.text': '5.00', price: '20' },
      ...{ 'parts.0.part': 'shank', 'parts.0.metal': 'gold-750', steps: ['polish'], details: 'leave the marks', promise: '2026-12-08' },
    },
  ],
];

/** The form of a page, filled in. */
async function filled(path: string, said: Fields): Promise<Fields> {
  const page = await (await owner.get(path)).text();
  const at = page.indexOf('<form class="sheet"');
  return { ...inputsOf(`<main${page.slice(at)}`), ...said, 'weight.balance': site.shop.balance };
}

describe.each(FORMS)('%s', (path, said) => {
  it('stops where terms were set since the read-back, and says them', async () => {
    const before = await agreements();
    const readBack = await (await owner.post(path, await filled(path, said))).text();
    const agreed = { ...inputsOf(readBack), steps: ['polish'], agreed: 'yes', pin: PIN };
    const name = await setTerms();
    const stopped = await owner.post(path, agreed);
    expect(stopped.status).toBe(422);
    const again = await stopped.text();
    expect(again).toContain('terms were changed since');
    expect(again).toContain(`Our terms apply (${name})`);
    const kept: Fields = inputsOf(again);
    expect({ ...kept, termsRead: '' }).toEqual({ ...inputsOf(readBack), termsRead: '' });
    expect(await agreements()).toEqual(before);
    const sent = { ...kept, steps: ['polish'], agreed: 'yes', pin: PIN };
    const done = await owner.post(path, sent);
    expect(done.status).toBe(303);
    expect(await agreements()).toEqual([...before, name]);
    // The same form sent twice is answered the same, whatever was set since.
    await setTerms();
    expect((await owner.post(path, sent)).status).toBe(303);
    expect(await agreements()).toEqual([...before, name]);
  });

  it('is read back before it is agreed: as JSON too, no agreement without its terms', async () => {
    const before = await agreements();
    const name = await setTerms();
    const form = await filled(path, said);
    const unread = await owner.postJson(path, { ...form, agreed: 'yes', pin: PIN });
    expect([unread.status, await unread.json()]).toEqual([200, expect.objectContaining({ termsRead: name })]);
    expect(await agreements()).toEqual(before);
    const done = await owner.postJson(path, { ...form, agreed: 'yes', pin: PIN, termsRead: name });
    expect([done.status, await done.json()]).toEqual([201, expect.anything()]);
    expect(await agreements()).toEqual([...before, name]);
  });
});

it('the ledger itself takes no agreement under terms that are no longer in force', async () => {
  const { store, owner: by, newRef } = site.shop;
  const place = { type: 'place_named', data: { place: newRef('place'), name: 'Tray', kind: 'tray' } };
  const command = { by, auth: 'password', device: 'test', seen: {}, lines: [place] } as const;
  const [old, now] = [await setTerms(), await setTerms()];
  expect(await store.record({ ...command, id: 'under-old', terms: old })).toMatchObject({ answer: 'refused', code: 'terms_changed' });
  expect(await store.record({ ...command, id: 'under-now', terms: now })).toMatchObject({ answer: 'written' });
});
