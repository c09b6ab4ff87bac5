// Every screen of a shop with something on each, in a real browser: at a counter's width and a phone's, light and dark, checked with axe.
// Pictures of each go into the folder that SCREENSHOTS names.
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type House, openHouse, PIN, type Visit } from './harness.ts';

let house: House;
let visitor: Visit;
const made: Record<string, string> = {};

beforeAll(async () => {
  house = await openHouse();
  visitor = await house.visit();
  await furnish();
});
afterAll(async () => {
  await visitor.close();
  await house.close();
});

type Fields = Readonly<Record<string, string | readonly string[]>>;

/** Writes one entry through its own form, as a program would: what the form hides is sent back with what is filled in. */
async function write(
  path: string,
  fields: Fields | ((hidden: Readonly<Record<string, string>>) => Fields),
): Promise<Record<string, string>> {
  const { request } = visitor.page;
  const headers = { accept: 'application/json', origin: house.url };
  const { hidden } = (await (await request.get(path, { headers })).json()) as { hidden: Record<string, string> };
  const answer = await request.post(path, {
    data: { ...hidden, ...(typeof fields === 'function' ? fields(hidden) : fields), pin: PIN },
    headers,
  });
  if (answer.status() !== 201) throw new Error(`${path}: ${await answer.text()}`);
  return hidden;
}

async function photograph(path: string, about: string, shows: string, background: string): Promise<void> {
  const { request } = visitor.page;
  const headers = { accept: 'application/json', origin: house.url };
  const { hidden } = (await (await request.get(path, { headers })).json()) as { hidden: Record<string, string> };
  const ring = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="600"><rect width="900" height="600" fill="${background}"/><circle cx="450" cy="330" r="150" fill="none" stroke="#b98d2a" stroke-width="34"/><circle cx="450" cy="170" r="44" fill="#27408b"/></svg>`,
  );
  const buffer = await sharp({ create: { width: 900, height: 600, channels: 3, background } })
    .composite([{ input: ring }])
    .jpeg()
    .toBuffer();
  const photo = { name: 'ring.jpg', mimeType: 'image/jpeg', buffer };
  const answer = await request.post(path, { multipart: { ...hidden, about, shows, photo }, headers });
  if (answer.status() !== 201) throw new Error(`${path}: ${await answer.text()}`);
}

async function takeIn(name: string, description: string, promise: string): Promise<{ job: string; bag: string; piece: string }> {
  const { customer = '' } = await write('/write/customer_met', { name, phone: '07700 900123' });
  const { job = '', bag = '' } = await write('/write/job_opened', {
    customer,
    broughtBy: 'customer',
    owner: 'customer',
    channel: 'counter',
  });
  const at = `/jobs/${job}/write`;
  const { piece = '' } = await write(`${at}/piece_received`, {
    kind: 'ring',
    description,
    'parts.0.part': 'shank',
    'parts.0.metal': 'gold-750',
    stones: '3',
    'weight.text': '6.82',
    'weight.balance': made.balance ?? '',
  });
  const agreed = {
    steps: ['re-tip'],
    priceKind: 'fixed',
    price: '85',
    promise,
    dust: 'shop',
    cutMetal: 'customer',
    oldParts: 'customer',
    agreedBy: 'signature',
  };
  await write(`${at}/work_agreed`, agreed);
  return { job, bag, piece };
}

const day = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

async function furnish(): Promise<void> {
  const setup = (await (await visitor.page.request.get('/setup', { headers: { accept: 'application/json' } })).json()) as {
    sections: { title: string; rows: { href: string }[] }[];
  };
  const idIn = (title: string) =>
    setup.sections
      .find((section) => section.title === title)
      ?.rows[0]?.href.split('/')
      .at(-1) ?? '';
  made.balance = idIn('Balances');
  const safe = idIn('Places, trays and boxes');
  const { container: tray = '' } = await write('/write/container_named', { name: 'Blue tray', kind: 'tray', inside: safe });
  const { lot = '' } = await write('/write/lot_opened', { name: '18Y-4', metal: 'gold-750' });
  const ring = await takeIn('Ruth Abara', 'Three-stone ring, middle claw worn', day(3));
  const brooch = await takeIn('Odile Marchetti', 'Bar brooch', day(1));
  const signet = await takeIn('Moyo Adeyemi', 'Signet ring with crest', day(9));
  const at = `/jobs/${ring.job}/write`;
  await write(`${at}/taken`, { of: ring.job });
  await photograph(`${at}/photo_added`, ring.piece, 'pan', '#dfe5e2');
  const noted = { piece: ring.piece, backing: 'open', state: 'sound', sizeMm: '5.1' };
  const stones: Record<string, string> = {};
  for (const [seat, species, cut] of [
    ['middle', 'sapphire', 'oval'],
    ['left', 'diamond', 'round'],
    ['right', 'diamond', 'step'],
  ] as const) {
    const hidden = await write(`${at}/setting_noted`, (shown) => ({ ...noted, stone: shown['new.stone'] ?? '', seat, species, cut }));
    stones[seat] = hidden['new.stone'] ?? '';
  }
  await write(`${at}/setting_noted`, { ...noted, seat: 'gallery', species: 'unknown', state: 'empty' });
  await write(`${at}/stone_unset`, {
    piece: ring.piece,
    stone: stones.middle ?? '',
    stones: '1',
    condition: 'sound',
    'weight.text': '0.24',
    'weight.balance': made.balance,
  });
  await write(`${at}/stone_unset`, { piece: ring.piece, stone: stones.left ?? '', stones: '1', condition: 'sound' });
  await write(`${at}/stone_set`, { piece: ring.piece, stone: stones.left ?? '', stones: '1' });
  await write(`${at}/metal_cut`, {
    piece: ring.piece,
    metal: 'gold-750',
    lot,
    part: 'worn claws',
    'weight.text': '0.41',
    'weight.balance': made.balance,
  });
  await photograph(`${at}/photo_added`, ring.piece, 'whole', '#cfd9d5');
  await write(`/jobs/${signet.job}/write/moved`, { of: signet.job, to: tray });
  await write(`/jobs/${brooch.job}/write/piece_checked`, { piece: brooch.piece, stones: '2', seats: 'loose', marks: 'readable' });
  Object.assign(made, { job: ring.job, bag: ring.bag, odd: brooch.job, tray, signet: signet.bag, brooch: brooch.bag });
}

const SCREENS: Readonly<Record<string, () => string>> = {
  counter: () => '/',
  bench: () => '/bench',
  safe: () => '/safe',
  whose: () => '/whose?what=piece&weight.basis=estimate&weight.text=6.82',
  count: () => `/safe/count/${made.tray}?code=${made.brooch}`,
  'count-refused': () => `/safe/count/${made.tray}?code=nonsense&found=${made.signet}`,
  job: () => `/jobs/${made.job}`,
  'job-turned': () => `/jobs/${made.job}?face=customer`,
  stones: () => `/jobs/${made.job}/stones`,
  'stones-odd': () => `/jobs/${made.odd}/stones`,
  letter: () => `/jobs/${made.job}/letter`,
  'letter-asks': () => `/jobs/${made.odd}/letter`,
  owner: () => '/owner',
  reckoning: () => `/jobs/${made.job}/reckoning`,
  'reckoning-odd': () => `/jobs/${made.odd}/reckoning`,
  loss: () => '/loss',
  weights: () => '/owner/weights',
  flow: () => '/flow',
  trail: () => '/trail',
  find: () => '/find?q=ring',
  'find-nothing': () => '/find?q=nothing',
  setup: () => '/setup',
};

describe.each([
  { width: 1200, dark: false },
  { width: 390, dark: false },
  { width: 1200, dark: true },
  { width: 390, dark: true },
])('at $width px, dark: $dark', ({ width, dark }) => {
  test('every screen reads, fits and has no fault', async () => {
    const visit = await house.visit({ width, dark });
    for (const [name, path] of Object.entries(SCREENS)) {
      await visit.open(path());
      const folder = process.env.SCREENSHOTS;
      if (folder) await visit.page.screenshot({ path: join(folder, `${name}-${width}-${dark ? 'dark' : 'light'}.png`), fullPage: true });
      await visit.check();
    }
    await visit.close();
  });
});

test('a tray is counted by scanning, without scripts too', async () => {
  for (const scripts of [true, false]) {
    const visit = await house.visit({ scripts });
    await visit.open(`/safe/count/${made.tray}`);
    await visit.enter('Scan or type the next bag', made.signet ?? '');
    await visit.heading('Count Blue tray');
    expect(await visit.page.getByRole('status').first().textContent()).toContain('1 of 1 found');
    await visit.close();
  }
});

test('a letter is one file that opens without the shop', async () => {
  const visit = await house.visit({ width: 1200 });
  await visit.open(`/jobs/${made.job}/letter`);
  const [download] = await Promise.all([
    visit.page.waitForEvent('download'),
    visit.page.getByRole('link', { name: 'Download the letter' }).click(),
  ]);
  const path = join(house.dir, 'letter.html');
  await download.saveAs(path);
  const asked: string[] = [];
  visit.page.on('request', (request) => {
    if (!request.url().startsWith('file:') && !request.url().startsWith('data:')) asked.push(request.url());
  });
  await visit.page.goto(`file://${path}`);
  expect(await visit.page.getByText('NOT CHECKED').count()).toBe(1);
  expect(asked).toEqual([]);
  const folder = process.env.SCREENSHOTS;
  if (folder) await visit.page.screenshot({ path: join(folder, 'letter-file.png'), fullPage: true });
  await visit.close();
});
