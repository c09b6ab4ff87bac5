// A shop of as many entries as asked, written through `record` as people would: 94 short tickets in a hundred, the others with stones out and in.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Line } from '../../src/ledger/leaf.ts';
import { ROOT } from '../../src/machine.ts';
import { openAccess } from '../../src/store/access.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { type Instant, instant } from '../../src/units/dates.ts';
import { bagCode, type Ref, type RefKind, refFromBytes } from '../../src/units/ids.ts';
import { massNg } from '../../src/units/mass.ts';
import { line, seededBytes } from '../shop.ts';

export const PIN = '4417';
const DAY_MS = 86_400_000;
const JOBS_A_DAY = 25;
const ENTRIES_A_JOB = 13;
const OPEN_AT_THE_END = 60;
const AT_ONCE = 32;
const LAST = Date.UTC(2026, 10, 20, 17);

/** A shop written to disk, and what a visitor needs to find his way in it. */
export interface BenchShop {
  readonly dir: string;
  readonly owner: string;
  readonly balance: string;
}

interface Maker {
  readonly store: Store;
  readonly clock: { now: Instant };
  readonly owner: Ref<'person'>;
  readonly shop: Ref<'shop'>;
  readonly balance: Ref<'balance'>;
  readonly carats: Ref<'balance'>;
  readonly stock: Ref<'stock'>;
  readonly lot: Ref<'lot'>;
  readonly bags: Set<string>;
  ref<K extends Exclude<RefKind, 'bag' | 'entry'>>(kind: K): Ref<K>;
  /** A whole number from 0 up to but not including `below`. */
  pick(below: number): number;
  write(seen: Readonly<Record<string, number>>, ...lines: readonly Line[]): Promise<void>;
}

/** Opens the shop in `dir`, made first where it is not there; `progress` is told how many entries stand. */
export async function benchShop(dir: string, size: number, progress: (entries: number) => void): Promise<BenchShop> {
  const mark = join(dir, 'bench-shop.json');
  if (!existsSync(mark)) {
    mkdirSync(dir, { recursive: true });
    const made = await make(dir, size, progress);
    writeFileSync(mark, JSON.stringify(made));
  }
  const { default: known } = (await import(mark, { with: { type: 'json' } })) as { default: Omit<BenchShop, 'dir'> };
  return { ...known, dir };
}

async function make(dir: string, size: number, progress: (entries: number) => void): Promise<Omit<BenchShop, 'dir'>> {
  const jobs = Math.ceil(size / ENTRIES_A_JOB);
  const days = Math.ceil(jobs / JOBS_A_DAY);
  const maker = await begin(dir, instant(LAST - days * DAY_MS));
  let entries = 0;
  for (let day = 0, job = 0; entries < size; day++) {
    maker.clock.now = instant(LAST - (days - day) * DAY_MS);
    await morning(maker, day);
    const today = Array.from({ length: JOBS_A_DAY }, () => job++);
    for (let at = 0; at < today.length; at += AT_ONCE) await Promise.all(today.slice(at, at + AT_ONCE).map((n) => oneJob(maker, n, true)));
    entries = Number((await maker.store.read('SELECT COALESCE(MAX(seq) + 1, 0) AS n FROM entry'))[0]?.n);
    if (day % 20 === 0) progress(entries);
  }
  for (let n = 0; n < OPEN_AT_THE_END; n++) await oneJob(maker, n, false);
  const access = openAccess(maker.store.access, maker.store.pepper, () => maker.clock.now, seededBytes(7));
  await access.setCredential(maker.owner, 'pin', PIN);
  await maker.store.close();
  return { owner: maker.owner, balance: maker.balance };
}

async function begin(dir: string, from: Instant): Promise<Maker> {
  const clock = { now: from };
  const random = seededBytes(size32(dir));
  const store = await openStore({ dir, sqlDir: join(ROOT, 'drizzle'), clock: () => clock.now, random });
  const ref = <K extends Exclude<RefKind, 'bag' | 'entry'>>(kind: K) => refFromBytes(kind, random(16));
  const pick = (below: number) => {
    const [a = 0, b = 0, c = 0] = random(3);
    return (a * 65536 + b * 256 + c) % below;
  };
  const of = {
    owner: ref('person'),
    shop: ref('shop'),
    balance: ref('balance'),
    carats: ref('balance'),
    stock: ref('stock'),
    lot: ref('lot'),
  };
  let commands = 0;
  const write: Maker['write'] = async (seen, ...lines) => {
    const answer = await store.record({ id: `bench-${commands++}`, by: of.owner, auth: 'password', device: 'bench', seen, lines });
    if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
  };
  const maker = { ...of, store, clock, bags: new Set<string>(), ref, pick, write };
  const { shop, owner, balance, carats, stock, lot } = of;
  await write({}, line('ledger_started', { shop, owner, shopName: 'Wren & Daughter', ownerName: 'Ada Wren' }));
  await write(
    { [shop]: 1 },
    line('policy_set', { shop, zone: 'Europe/London', country: 'GB', currency: 'GBP', staffing: 'alone', words: 'uk' }),
    line('balance_put_in_service', { balance, name: 'Bench balance', unit: 'g', class: 'II', ranges: [{ max: '400', step: '0.01' }] }),
    line('balance_put_in_service', {
      balance: carats,
      name: 'Carat balance',
      unit: 'ct',
      class: 'II',
      ranges: [{ max: '200', step: '0.001' }],
    }),
    line('metal_received', { stock, name: '18ct yellow wire', metal: 'gold-750', weight: grams(maker, 39_000) }),
    line('lot_opened', { lot, name: '18ct yellow', metal: 'gold-750' }),
  );
  return maker;
}

/** Seeds differ by the shop's name, so that two sizes are not one history cut short. */
const size32 = (text: string): number =>
  createHash('sha256')
    .update(text.split('/').at(-1) ?? '')
    .digest()
    .readUInt32BE(0);

/** A day begins with a check of the bench balance; every month wire is bought. */
async function morning(maker: Maker, day: number): Promise<void> {
  const { balance, stock } = maker;
  await maker.write(
    await seenOf(maker, maker.shop),
    line('balance_checked', { balance, nominal: '100 g', certifiedG: '100.0002', shown: grams(maker, 10_000 + maker.pick(2)) }),
  );
  if (day % 30 === 29) await maker.write({}, line('metal_received', { stock, metal: 'gold-750', weight: grams(maker, 20_000) }));
}

const seenOf = async ({ store }: Maker, stream: string) => ({
  [stream]: Number((await store.read('SELECT COALESCE(MAX(n) + 1, 0) AS n FROM entry_link WHERE stream = ?', [stream]))[0]?.n),
});

const NAMES = [
  'Ash',
  'Birch',
  'Cole',
  'Dane',
  'Elder',
  'Frost',
  'Glade',
  'Heath',
  'Ives',
  'Jory',
  'Kemp',
  'Lark',
  'Marsh',
  'North',
  'Oakes',
];

async function oneJob(maker: Maker, n: number, finished: boolean): Promise<void> {
  const { ref, pick, balance: _, stock, lot } = maker;
  const [customer, job, piece, stone] = [ref('customer'), ref('job'), ref('piece'), ref('stone')];
  const isShort = n % 100 >= 6;
  const centigrams = 250 + pick(900);
  const name = `${NAMES[pick(NAMES.length)]} ${NAMES[pick(NAMES.length)]}${pick(400)}`;
  const promise = new Date(maker.clock.now + 5 * DAY_MS).toISOString().slice(0, 10);
  const terms = { priceKind: 'free', promise, dust: 'shop', cutMetal: 'shop', oldParts: 'shop', terms: '1', agreedBy: 'signature' };
  const ring = { kind: 'ring', description: 'Plain wedding ring', parts: [{ part: 'shank', metal: 'gold-750' }] };
  await maker.write(
    {},
    line('customer_met', { customer, name, phone: `07700 ${900_000 + pick(100_000)}` }),
    line('job_opened', { job, bag: bagOf(maker), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, ...ring, stones: isShort ? 0 : 1, weight: grams(maker, centigrams) }),
    line('value_stated', { piece, band: 'to-500', statedBy: 'customer' }),
    line('work_agreed', { job, steps: isShort ? ['size-up'] : ['re-tip', 'polish'], ...terms }),
  );
  if (!finished) return;
  const at = (seen: number) => ({ [job]: seen });
  const added = 10 + pick(20);
  const after = centigrams + added - pick(2);
  if (isShort) {
    await maker.write(
      at(4),
      line('taken', { of: job }),
      line('metal_added', { piece, stock, metal: 'gold-750', weight: grams(maker, added), what: 'wire' }),
      line('piece_sized', { piece, method: 'insert', from: 'L', to: 'N' }),
      line('piece_weighed', { piece, state: 'finished', weight: grams(maker, after) }),
      line('piece_checked', { piece, stones: 0, seats: 'none', marks: 'readable' }),
      line('work_finished', { job }),
    );
  } else {
    const points = 300 + pick(700);
    const loose = points * 0.02;
    await maker.write(
      at(4),
      line('taken', { of: job }),
      line('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: carats(maker, points) }),
      line('piece_weighed', { piece, state: 'stones out', weight: grams(maker, Math.round(centigrams - loose)) }),
      line('metal_cut', { piece, lot, metal: 'gold-750', weight: grams(maker, 60) }),
      line('metal_added', { piece, stock, metal: 'gold-750', weight: grams(maker, 60 + added), what: 'wire' }),
      line('stone_set', { piece, stone, stones: 1, weight: carats(maker, points) }),
      line('piece_weighed', { piece, state: 'finished', weight: grams(maker, after) }),
      line('piece_checked', { piece, stones: 1, seats: 'tight', marks: 'readable' }),
      line('work_finished', { job }),
    );
  }
  const written = isShort ? 10 : 13;
  await maker.write(
    at(written),
    line('piece_returned', {
      piece,
      stones: isShort ? 0 : 1,
      to: 'customer',
      taker: name,
      shown: 'the collection slip',
      signed: 'signature',
    }),
    line('job_closed', { job }),
  );
}

function bagOf({ bags, pick }: Maker): Ref<'bag'> {
  for (;;) {
    const code = bagCode(
      Uint8Array.from({ length: 5 }, () => pick(256)),
      5,
    );
    if (bags.has(code)) continue;
    bags.add(code);
    return code;
  }
}

const grams = ({ balance }: Pick<Maker, 'balance'>, centigrams: number) => ({
  ...({ text: (centigrams / 100).toFixed(2), unit: 'g', ng: massNg(centigrams * 10_000_000), basis: 'weighed', balance } as const),
  stepNg: massNg(10_000_000),
});
const carats = ({ carats: balance }: Pick<Maker, 'carats'>, points: number) => ({
  ...({ text: (points / 1000).toFixed(3), unit: 'ct', ng: massNg(points * 200_000), basis: 'weighed', balance } as const),
  stepNg: massNg(200_000),
});
