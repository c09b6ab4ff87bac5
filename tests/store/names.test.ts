// Names opened into memory: what is said last holds, a search is the same as looking at everybody, and a reading that fails once is no end.
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StorageFault } from '../../src/store/connection.ts';
import { openFinder } from '../../src/store/find-names.ts';
import { openDirectory } from '../../src/store/names.ts';
import type { Store } from '../../src/store/open.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
beforeEach(async () => {
  shop = await openShop();
});
afterEach(() => shop.close());

const meet = async (name: string, more: object = {}) => {
  const customer = shop.newRef('customer');
  await shop.write(line('customer_met', { customer, name, ...more }));
  return customer;
};

describe('the directory', () => {
  it('knows those who were met before it was opened and those who come after, and whose jobs are whose', async () => {
    const ruth = await meet('Ruth Abara', { phone: '07700 900123' });
    const open = async (customer: string) => {
      const job = shop.newRef('job');
      await shop.write(
        line('job_opened', { job, bag: shop.newBag(), customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      );
      return job;
    };
    const first = await open(ruth);
    const directory = await openDirectory(shop.store);
    expect([directory.nameOf(ruth), directory.nameOf(shop.owner), directory.customerOf(first)]).toEqual(['Ruth Abara', 'Ada Wren', ruth]);
    const second = await open(ruth);
    const sam = await meet('Sam Obi');
    await directory.settled();
    expect([directory.nameOf(sam), directory.jobsOf(ruth), directory.jobsOf(sam)]).toEqual(['Sam Obi', [first, second], []]);
    expect(directory.nameOf(shop.newRef('customer'))).toBeUndefined();
  });

  it('answers no more than asked for, those met last first', async () => {
    const all = [await meet('Ann Moss'), await meet('Ben Moss'), await meet('Cid Moss')];
    const directory = await openDirectory(shop.store);
    expect(directory.search('moss', 2)).toEqual([all[2], all[1]]);
    expect(directory.search('moss', 9)).toEqual(all.toReversed());
    expect(directory.search(' ', 9)).toEqual([]);
  });

  it('reads on after a reading that failed, at the next page or the next commit, and nothing is left unhandled', async () => {
    let broken = false;
    const read: Store['read'] = (sql, args) => (broken ? Promise.reject(new StorageFault('SQLITE_IOERR')) : shop.store.read(sql, args));
    const unhandled: unknown[] = [];
    const note = (error: unknown) => unhandled.push(error);
    process.on('unhandledRejection', note);
    const directory = await openDirectory({ ...shop.store, read });
    broken = true;
    const missed = await meet('Mia Frost');
    await expect(directory.settled()).rejects.toBeInstanceOf(StorageFault);
    broken = false;
    await directory.settled();
    expect(directory.nameOf(missed)).toBe('Mia Frost');
    broken = true;
    const again = await meet('Noa Frost');
    broken = false;
    const later = await meet('Oda Frost');
    await directory.settled();
    expect([directory.nameOf(again), directory.nameOf(later)]).toEqual(['Noa Frost', 'Oda Frost']);
    await new Promise((resolve) => setImmediate(resolve));
    process.off('unhandledRejection', note);
    expect(unhandled).toEqual([]);
  });

  it('opens one value for each field of somebody, however many entries the ledger has', async () => {
    const customers = await Promise.all(['Eve Ash', 'Kit Ash'].map((name) => meet(name, { phone: '020 7946 0999' })));
    const job = shop.newRef('job');
    await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
    for (let n = 0; n < 5; n++) await shop.write(line('note_added', { about: job, text: `note ${n}` }));
    const asked: string[] = [];
    const keys: Store['keys'] = {
      ...shop.store.keys,
      keysOf(ids) {
        asked.push(...ids);
        return shop.store.keys.keysOf(ids);
      },
    };
    await openDirectory({ ...shop.store, keys });
    expect(asked.sort()).toEqual([shop.owner, ...customers, ...customers].sort());
  });
});

describe('a search', () => {
  const name = fc.string({ unit: fc.constantFrom(...'abAB é\n'), maxLength: 5 });
  const phone = fc.string({ unit: fc.constantFrom(...'0124+ '), maxLength: 12 });
  const digitsOf = (text: string) => text.replace(/\D/g, '');
  const nationalOf = (text: string) => digitsOf(text).replace(/^0+/, '');

  it('finds exactly those who would be found by looking at everybody, by what is known of them last', () => {
    const known = fc.array(fc.record({ who: fc.integer({ min: 0, max: 4 }), name, phone }), { maxLength: 12 });
    fc.assert(
      fc.property(known, fc.oneof(name, phone), (said, typed) => {
        const finder = openFinder();
        const last = new Map<string, { name: string; phone: string }>();
        for (const one of said) {
          const before = last.get(`${one.who}`);
          const now = { name: one.name, phone: one.phone.trim() || (before?.phone ?? '') };
          last.set(`${one.who}`, now);
          finder.know(`${one.who}`, now.name, now.phone);
        }
        const part = typed.toLowerCase().replaceAll('\n', ' ');
        const digits = /^[\d\s()+./-]+$/.test(typed) ? nationalOf(typed) : '';
        const isCalled = ({ name: whole }: { name: string }) => whole.toLowerCase().replaceAll('\n', ' ').includes(part);
        const hasPhone = (number: string) =>
          digits.length >= 3 &&
          (digitsOf(number).includes(digits) || (digitsOf(number).length >= 7 && digits.endsWith(nationalOf(number))));
        const right = [...last].filter(([, of]) => typed.trim() !== '' && (isCalled(of) || hasPhone(of.phone)));
        expect([...finder.search(typed, 99)].sort()).toEqual(right.map(([id]) => id).sort());
      }),
      { endOnFailure: true, numRuns: 500 },
    );
  });
});
