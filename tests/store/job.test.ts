// One job through the real store: written, folded, checked, rebuilt, exported and imported.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sumOf, type Thing } from '../../src/ledger/thing.ts';
import { openStore } from '../../src/store/open.ts';
import { rebuild } from '../../src/store/replay.ts';
import { thingOf } from '../../src/store/shelf.ts';
import { exportLines, importLines } from '../../src/store/transfer.ts';
import { line, openShop, type Shop, SQL_DIR } from '../shop.ts';

let shop: Shop;
beforeEach(async () => {
  shop = await openShop();
});
afterEach(() => shop.close());

const thing = async (id: string): Promise<Thing | undefined> => {
  const [row] = await shop.store.read('SELECT state FROM thing WHERE id = ?', [id]);
  return row && thingOf(row);
};
const audit = () => shop.store.check();

/** A ring with three stones taken in and agreed. */
async function takeIn() {
  const [customer, job, piece] = [shop.newRef('customer'), shop.newRef('job'), shop.newRef('piece')];
  await shop.write(
    line('customer_met', { customer, name: 'Ruth Abara', phone: '07700 900123' }),
    line('job_opened', { job, bag: shop.newBag(), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      job,
      piece,
      kind: 'ring',
      description: 'Three-stone ring',
      parts: [{ part: 'shank', metal: 'gold-750' }],
      stones: 3,
      weight: shop.grams('6.82'),
    }),
    line('work_agreed', {
      job,
      steps: ['re-tip'],
      priceKind: 'fixed',
      price: { minor: 8500, currency: 'GBP' },
      promise: '2026-12-08',
      dust: 'shop',
      cutMetal: 'customer',
      oldParts: 'customer',
      terms: '2026-1',
      agreedBy: 'signature',
    }),
  );
  return { customer, job, piece };
}

describe('a job in the ledger', () => {
  it('follows the weight of a ring whose stone comes out unweighed and goes back whole', async () => {
    const { piece } = await takeIn();
    const stone = shop.newRef('stone');
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound' }));
    expect(sumOf((await thing(piece))?.posted ?? { ng: 0, open: {} })).toEqual({ unknownSince: 8 });
    await shop.write(line('stone_set', { piece, stone, stones: 1 }));
    const after = await thing(piece);
    expect(after?.stones).toBe(3);
    expect(sumOf(after?.posted ?? { ng: 0, open: {} })).toEqual({ ng: 6_820_000_000 });
  });

  it('is whole under the check of the log, and the same after a rebuild', async () => {
    const { piece } = await takeIn();
    const [lot, stone] = [shop.newRef('lot'), shop.newRef('stone')];
    await shop.write(line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }));
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: shop.carats('0.412') }));
    const cut = await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.43') }));
    const [row] = await shop.store.read('SELECT leaf_hash FROM entry WHERE seq = ?', [cut]);
    const target = Buffer.from(row?.leaf_hash as ArrayBuffer).toString('base64url');
    await shop.write(
      line('corrected', { target, seq: cut, field: 'weight', was: shop.grams('1.43'), is: shop.grams('1.34'), reason: 'digits swapped' }),
    );
    expect(sumOf((await thing(lot))?.posted ?? { ng: 0, open: {} })).toEqual({ ng: 1_340_000_000 });
    expect(sumOf((await thing(piece))?.posted ?? { ng: 0, open: {} })).toEqual({ ng: 6_820_000_000 - 82_400_000 - 1_340_000_000 });
    const found = await audit();
    expect(found).toMatchObject({ size: 12, signatures: expect.any(Number) });
    const before = await shop.store.read('SELECT id, state, words, status FROM thing ORDER BY id');
    await rebuild(shop.store.file, shop.store.keys);
    expect(await shop.store.read('SELECT id, state, words, status FROM thing ORDER BY id')).toEqual(before);
  });

  it('goes out and in as JSON Lines with the same root and checkpoints', async () => {
    await takeIn();
    const lines: string[] = [];
    for await (const one of exportLines(shop.store.read, shop.store.log)) lines.push(one);
    const dir = mkdtempSync(join(tmpdir(), 'lemel-'));
    cpSync(join(shop.dir, 'keys'), join(dir, 'keys'), { recursive: true });
    const other = await openStore({ dir, sqlDir: SQL_DIR, clock: () => shop.clock.now, random: shop.random, importing: true });
    async function* again() {
      yield* lines;
    }
    expect(await importLines(other.file, other.keys, again())).toBe(8);
    const out: string[] = [];
    for await (const one of exportLines(other.read, shop.store.log)) out.push(one);
    expect(out).toEqual(lines);
    expect(await other.read('SELECT state FROM thing ORDER BY id')).toEqual(await shop.store.read('SELECT state FROM thing ORDER BY id'));
    await other.close();
    rmSync(dir, { recursive: true });
  });

  it('answers the same form once, and another body under its id as a form reused', async () => {
    const place = shop.newRef('place');
    const safe = line('place_named', { place, name: 'Safe', kind: 'safe' });
    const first = await shop.tell([safe], { id: 'form-1' });
    expect(await shop.tell([safe], { id: 'form-1' })).toEqual(first);
    expect(await shop.tell([line('place_named', { place, name: 'Vault', kind: 'safe' })], { id: 'form-1' })).toEqual({
      answer: 'form reused',
      recorded: first,
    });
  });

  it('answers the same form from somebody else as a form reused', async () => {
    const person = shop.newRef('person');
    await shop.write(line('person_joined', { person, role: 'bench', name: 'Ben' }));
    const safe = line('place_named', { place: shop.newRef('place'), name: 'Safe', kind: 'safe' });
    const recorded = await shop.tell([safe], { id: 'form-1' });
    expect(await shop.tell([safe], { id: 'form-1', by: person })).toEqual({ answer: 'form reused', recorded });
    const form = { id: 'form-1', lines: [safe] };
    expect(await shop.store.recorded({ ...form, by: shop.owner })).toEqual(recorded);
    expect(await shop.store.recorded({ ...form, by: person })).toEqual({ answer: 'form reused', recorded });
  });

  it('keeps no memory of things after somebody else wrote to the file', async () => {
    const job = shop.newRef('job');
    await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
    const note = () => shop.tell([line('note_added', { about: job, text: 'Rings before nine.' })]);
    expect(await note()).toMatchObject({ answer: 'written' });
    await shop.store.file.write((tx) => tx.run('DELETE FROM thing WHERE id = ?', [job]));
    expect(await note()).toMatchObject({ answer: 'refused', code: 'not_found' });
    await rebuild(shop.store.file, shop.store.keys);
    expect(await note()).toMatchObject({ answer: 'written' });
  });
});
