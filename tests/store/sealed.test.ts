// Sealed values: open for whoever holds the key, gone with it; a correction stays sealed; only keys.db links a job to its customer.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Remembered, States } from '../../src/book/holding.ts';
import { anyStaff } from '../../src/book/may.ts';
import { readCorrected } from '../../src/ledger/corrections.ts';
import { draft } from '../../src/ledger/decide.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { entriesOf } from '../../src/queries/entries.ts';
import { sha256 } from '../../src/store/crypto.ts';
import type { Store } from '../../src/store/open.ts';
import { keptOf } from '../../src/store/shelf.ts';
import { instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import { line, openShop, type Shop } from '../shop.ts';
import { day, THINGS } from '../vectors/samples.ts';
import { audited } from './audited.ts';

let shop: Shop;
let customer: Ref<'customer'>;
let job: Ref<'job'>;
beforeEach(async () => {
  shop = await openShop();
  customer = shop.newRef('customer');
  job = shop.newRef('job');
  await shop.write(
    line('customer_met', { customer, name: 'Ruth Abara', phone: '07700 900123' }),
    line('job_opened', { job, bag: shop.newBag(), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece: shop.newRef('piece'), kind: 'ring', description: 'Ring', stones: 3 },
      parts: [{ part: 'shank', metal: 'gold-750' }],
    }),
    line('note_added', { about: job, text: 'Mrs Abara rings before nine.' }),
  );
});
afterEach(() => shop.close());

const openedOf = async ({ read, keys }: Store, type: string) => {
  const rows = await read('SELECT seq, leaf, leaf_hash FROM entry WHERE type = ?', [type]);
  return (await Promise.all(rows.map((row) => keptOf(read, keys, row)))).map(({ opened }) => opened);
};
/** Every byte of every file of the data directory, the write-ahead logs too. */
const allBytes = () =>
  Buffer.concat(
    readdirSync(shop.dir)
      .filter((name) => name.includes('.db'))
      .map((name) => readFileSync(join(shop.dir, name))),
  );

describe('sealed values', () => {
  it('are in no file as they were typed, and open for whoever holds the key', async () => {
    expect(await openedOf(shop.store, 'customer_met')).toEqual([{ name: 'Ruth Abara', phone: '07700 900123' }]);
    expect(await openedOf(shop.store, 'note_added')).toEqual([{ text: 'Mrs Abara rings before nine.' }]);
    for (const words of ['Abara', '900123', 'before nine']) expect(allBytes().includes(words)).toBe(false);
  });

  it('do not open once the key is gone, here or at the next start, and the log is as whole as before', async () => {
    const rows = await shop.store.read('SELECT COUNT(*) AS n FROM sealed');
    const [held] = [await shop.store.keys.keyOf(customer)];
    expect(held).toHaveLength(32);
    await shop.store.keys.destroy(customer);
    for (const type of ['customer_met', 'job_opened', 'note_added']) expect(await openedOf(shop.store, type)).toEqual([{}]);
    expect(await shop.store.keys.keyOf(job)).toBeNull();
    expect(allBytes().includes(Buffer.from(held ?? []))).toBe(false);
    expect(await shop.store.read('SELECT COUNT(*) AS n FROM sealed')).toEqual(rows);
    expect(await audited(shop.store)).not.toHaveProperty('bad');
    expect((await openedOf(shop.store, 'ledger_started'))[0]).toEqual({ ownerName: 'Ada Wren' });
  });

  it('stay sealed when they are corrected', () => {
    const field: Remembered = { name: 'text', correctable: true, sealed: 'shop', says: () => true, takes: () => true };
    const written = { seq: 7, at: instant(1), type: 'note_added', by: THINGS.owner, may: anyStaff, afterHandBack: false };
    const target: States['entry'] = { kind: 'entry', ...written, fields: [field] };
    const said = { target: THINGS.entry, seq: 7, field: 'text', was: 'Mrs Abara', is: 'Mrs Abena', reason: 'misheard' };
    const stamp = { at: instant(2), occurredAt: instant(2), by: THINGS.owner, auth: 'pin', device: 'dev-1' } as const;
    const writer = {
      ...stamp,
      log: 'lemel/x/1',
      seq: 8,
      shop: THINGS.shop,
      today: day('2026-12-08'),
      alone: true,
      sha256,
      random: shop.random,
    };
    const placed = { links: [{ s: THINGS.job, n: 3, p: THINGS.entry }], part: [0, 1], command: 'c' } as const;
    const { kept, bytes, sealed } = draft(entryType('corrected'), said, { target }, stamp, placed, writer);
    expect(Object.keys(kept.leaf.sealed ?? {})).toEqual(['was', 'is']);
    expect(new TextDecoder().decode(bytes)).not.toMatch(/Ab[ea]/);
    expect(sealed.map(({ value }) => value)).toEqual(['Mrs Abara', 'Mrs Abena']);
    const noted = { ...kept, seq: 7, hash: THINGS.entry };
    expect(readCorrected([noted, kept]).map(({ isCorrected }) => isCorrected)).toEqual([false, false]);
  });

  it('that were said and not observed are not corrected, and nothing of the attempt is written', async () => {
    const [row] = await shop.store.read("SELECT seq, leaf, leaf_hash FROM entry WHERE type = 'note_added'");
    const { hash: target, seq } = await keptOf(shop.store.read, shop.store.keys, row ?? {});
    const [was, is] = ['Mrs Abara rings before nine.', 'Mrs Abara rings after six.'];
    const answer = await shop.tell([line('corrected', { target, seq, field: 'text', was, is, reason: 'misheard' })]);
    expect(answer).toMatchObject({ answer: 'refused', code: 'not_correctable' });
    expect(allBytes().includes('after six')).toBe(false);
  });

  it('link a job to its customer in keys.db alone', async () => {
    const ledger = await shop.store.read('SELECT subject FROM sealed');
    expect(new Set(ledger.map(({ subject }) => subject))).toEqual(new Set([shop.owner, customer, job]));
    const [opened] = await openedOf(shop.store, 'job_opened');
    expect(opened).toEqual({ customer });
    const leaves = (await entriesOf(shop.store, job)).map(({ leaf }) => JSON.stringify(leaf));
    expect(leaves.filter((text) => text.includes(customer))).toEqual([]);
    const keys = createClient({ url: `file:${join(shop.dir, 'keys.db')}`, concurrency: 1 });
    const { rows } = await keys.execute('SELECT subject, wrapped_by FROM subject_key WHERE wrapped_by IS NOT NULL');
    keys.close();
    expect(rows).toEqual([{ subject: job, wrapped_by: customer }]);
  });
});
