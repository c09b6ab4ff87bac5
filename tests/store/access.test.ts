// PINs and passwords: how many tries are verified, who waits for whom, and what ends a session; with clocks that only the test moves.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Access, openAccess } from '../../src/store/access.ts';
import { instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import { openShop, type Shop } from '../shop.ts';

const YEAR = 366 * 86_400_000;
let shop: Shop;
let access: Access;
let ada: Ref<'person'>;
let bo: Ref<'person'>;
let elapsed: number;
beforeEach(async () => {
  elapsed = 1000;
  shop = await openShop();
  access = open();
  [ada, bo] = [shop.owner, shop.newRef('person')];
  for (const person of [ada, bo]) await access.setCredential(person, 'pin', '4417');
  await access.setCredential(ada, 'password', 'four words will do');
});
afterEach(() => shop.close());

/** As a start of the program opens it: what is kept in the file, nothing of what ran before. */
const open = () =>
  openAccess(
    shop.store.access,
    shop.store.pepper,
    () => shop.clock.now,
    shop.random,
    () => elapsed,
  );
const pin = async (person: Ref<'person'>, secret: string, token: string | null = null) =>
  (await access.tryCredential(person, token, 'pin', secret)).is;
const wrong = async (person: Ref<'person'>, times: number, token: string | null = null) => {
  for (let n = 0; n < times; n++) await pin(person, '0000', token);
};

describe('tries at a PIN', () => {
  it('of which many come at once are verified no more than the free ones, the right one among them or not', async () => {
    const tried = await Promise.all(Array.from({ length: 2000 }, (_, n) => pin(ada, n === 1999 ? '4417' : '0000')));
    expect(tried.filter((is) => is === 'wrong')).toHaveLength(3);
    expect(tried.filter((is) => is === 'not tried')).toHaveLength(1997);
  });
  it('that are right and come at once are all right', async () => {
    await wrong(ada, 2);
    expect(await Promise.all(Array.from({ length: 10 }, () => pin(ada, '4417')))).toEqual(Array(10).fill('right'));
  });
  it('are counted before they are verified, so that a program killed between has counted them', async () => {
    const counted = async () => Number((await shop.store.access.read('SELECT failures FROM attempt WHERE person = ?', [ada]))[0]?.failures);
    let isOver = false;
    const trying = access.tryCredential(ada, null, 'pin', '4417').then(() => {
      isOver = true;
    });
    let most = 0;
    while (!isOver) {
      most = Math.max(most, (await counted()) || 0);
      await new Promise(setImmediate);
    }
    await trying;
    expect(most).toBe(1);
    expect(await counted()).toBeNaN();
  });
  it('wait longer after each wrong one, five minutes at most, and no longer once the right one came', async () => {
    const waits: number[] = [];
    for (let n = 0; n < 12; n++) {
      const tried = await access.tryCredential(ada, null, 'pin', '0000');
      if (tried.is === 'wrong') waits.push(tried.waitMs / 1000);
      elapsed += 'waitMs' in tried ? tried.waitMs : 0;
    }
    expect(waits).toEqual([0, 0, 30, 60, 120, 240, 300, 300, 300, 300, 300, 300]);
    expect(await pin(ada, '4417')).toBe('right');
    await wrong(ada, 2);
    expect(await pin(ada, '4417')).toBe('right');
  });
  it('wait in elapsed time: a clock that is years ahead, or put back, changes nothing', async () => {
    shop.clock.now = instant(shop.clock.now + 4 * YEAR);
    await wrong(ada, 4);
    shop.clock.now = instant(shop.clock.now - 4 * YEAR);
    const waiting = await access.tryCredential(ada, null, 'pin', '4417');
    expect(waiting.is === 'not tried' && waiting.waitMs).toBeLessThanOrEqual(300_000);
    elapsed += 29_999;
    expect(await pin(ada, '4417')).toBe('not tried');
    elapsed += 1;
    expect(await pin(ada, '4417')).toBe('right');
  });
  it('wait again after a new start of the program, and then no more', async () => {
    await wrong(ada, 3);
    elapsed = 0;
    access = open();
    expect(await pin(ada, '4417')).toBe('not tried');
    elapsed = 30_000;
    expect(await pin(ada, '4417')).toBe('right');
  });
  it('are limited for a person, at however many screens they are made', async () => {
    const tried = await Promise.all(Array.from({ length: 50 }, (_, n) => pin(ada, '0000', `screen ${n}`)));
    expect(tried.filter((is) => is === 'wrong')).toHaveLength(3);
  });
});

describe('a colleague’s mistakes', () => {
  it('never stop whoever types right at their own screen or in their own session, nor anybody else', async () => {
    expect(await pin(ada, '4417', 'her screen')).toBe('right');
    const session = await access.beginSession(ada, 'this-pc');
    await wrong(ada, 20);
    await wrong(ada, 20, 'another screen');
    expect(await pin(ada, '4417')).toBe('not tried');
    expect(await pin(ada, '4417', 'her screen')).toBe('right');
    expect(await pin(ada, '4417', session)).toBe('right');
    expect(await pin(bo, '4417')).toBe('right');
  });
  it('make no screen theirs, and no session of theirs is hers', async () => {
    const his = await access.beginSession(bo, 'this-pc');
    await wrong(ada, 3, his);
    expect(await pin(ada, '0000', 'his screen')).toBe('not tried');
    expect(await pin(ada, '4417', his)).toBe('not tried');
  });
  it('at her own screen make her wait there, and nowhere else of hers', async () => {
    await pin(ada, '4417', 'her screen');
    await pin(ada, '4417', 'her other screen');
    await wrong(ada, 3, 'her screen');
    expect(await pin(ada, '4417', 'her screen')).toBe('not tried');
    expect(await pin(ada, '4417', 'her other screen')).toBe('right');
  });
  it('are cleared at once by the owner, PINs alone', async () => {
    await wrong(bo, 5);
    await access.tryCredential(ada, null, 'password', 'guessed');
    expect(await access.wrongPins()).toEqual(new Map([[bo, 3]]));
    await access.clearPins(bo);
    expect(await access.wrongPins()).toEqual(new Map());
    expect(await pin(bo, '4417')).toBe('right');
    const rows = await shop.store.access.read("SELECT failures FROM attempt WHERE kind = 'password'");
    expect(rows).toHaveLength(1);
  });
});

describe('a password', () => {
  it('is tried apart from the PIN: a right PIN gives no more guesses at it', async () => {
    const session = await access.beginSession(ada, 'this-pc');
    const guesses: string[] = [];
    for (let n = 0; n < 6; n++) {
      guesses.push((await access.tryCredential(ada, session, 'password', `guess ${n}`)).is);
      expect(await pin(ada, '4417', session)).toBe('right');
    }
    expect(guesses).toEqual(['wrong', 'wrong', 'wrong', 'not tried', 'not tried', 'not tried']);
  });
  it('of somebody who has none is never right', async () => {
    expect((await access.tryCredential(bo, null, 'password', '')).is).toBe('wrong');
    expect((await access.tryCredential(bo, null, 'password', '4417')).is).toBe('wrong');
  });
});

describe('a session', () => {
  it('ends at once with a new PIN or password, on every screen; a colleague’s goes on', async () => {
    for (const kind of ['pin', 'password'] as const) {
      const [here, there] = [await access.beginSession(ada, 'bench'), await access.beginSession(ada, 'counter')];
      const his = await access.beginSession(bo, 'bench');
      await access.setCredential(ada, kind, '771144 and more');
      expect([await access.session(here), await access.session(there)]).toEqual([null, null]);
      expect(await access.session(his)).toMatchObject({ person: bo });
    }
  });
  it('locks after ten idle minutes and is over after twelve hours', async () => {
    const token = await access.beginSession(ada, 'bench');
    shop.clock.now = instant(shop.clock.now + 10 * 60_000);
    expect(await access.session(token, true)).toMatchObject({ lockedAt: null });
    shop.clock.now = instant(shop.clock.now + 1);
    expect((await access.session(token))?.lockedAt).toBe(shop.clock.now);
    shop.clock.now = instant(shop.clock.now + 12 * 3_600_000);
    expect(await access.session(token)).toBeNull();
  });
  it('begun by a clock that was ahead is none once the clock is right, and a link made then opens nothing', async () => {
    shop.clock.now = instant(shop.clock.now + 4 * YEAR);
    const token = await access.beginSession(ada, 'bench');
    const setup = await access.makeSetupLink();
    const screen = await access.makeEnrolLink({ name: 'Tablet', kind: 'bench', by: ada });
    expect(await access.session(token)).not.toBeNull();
    shop.clock.now = instant(shop.clock.now - 4 * YEAR);
    expect(await access.session(token)).toBeNull();
    expect(await access.checkSetupLink(setup)).toBe(false);
    expect([await access.enrolLink(screen), await access.enrol(screen, 'place_x')]).toEqual([null, null]);
  });
  it('goes on as long as somebody is there: a page that only watches for news is nobody', async () => {
    const token = await access.beginSession(ada, 'bench');
    const lockedAfter = async (minutes: number, isWatching?: boolean) => {
      shop.clock.now = instant(shop.clock.now + minutes * 60_000);
      return (await access.session(token, isWatching))?.lockedAt;
    };
    expect([await lockedAfter(9), await lockedAfter(9), await lockedAfter(9, true)]).toEqual([null, null, null]);
    expect(await lockedAfter(1.5, true)).toBe(shop.clock.now);
  });
  it('stays locked from when it was locked, whoever asks later', async () => {
    const token = await access.beginSession(ada, 'bench');
    shop.clock.now = instant(shop.clock.now + 11 * 60_000);
    const lockedAt = (await access.session(token))?.lockedAt;
    shop.clock.now = instant(shop.clock.now + 60_000);
    expect((await access.session(token))?.lockedAt).toBe(lockedAt);
    expect(lockedAt).not.toBeNull();
  });
  it('notes a sign of life once in half a minute, not at every request', async () => {
    const begun = shop.clock.now;
    const token = await access.beginSession(ada, 'bench');
    const seenAfter = async (ms: number) => {
      shop.clock.now = instant(begun + ms);
      await access.session(token);
      return Number((await shop.store.access.read('SELECT seen_at FROM session WHERE person = ?', [ada]))[0]?.seen_at) - begun;
    };
    expect([await seenAfter(30_000), await seenAfter(30_001), await seenAfter(50_000)]).toEqual([0, 30_001, 30_001]);
  });
  it('is there at its twelfth hour and not after it, nor where the clock is put back by more than a minute', async () => {
    const begun = shop.clock.now;
    const token = await access.beginSession(ada, 'bench');
    const isThereAt = async (ms: number) => {
      shop.clock.now = instant(begun + ms);
      return (await access.session(token)) !== null;
    };
    const TWELVE = 12 * 3_600_000;
    expect([await isThereAt(TWELVE), await isThereAt(TWELVE + 1)]).toEqual([true, false]);
    expect([await isThereAt(-60_000), await isThereAt(-60_001)]).toEqual([true, false]);
  });
  it('that is over is forgotten when the next one begins, and one that is not stays', async () => {
    const kept = async () => (await shop.store.access.read('SELECT device FROM session ORDER BY begun_at')).map(({ device }) => device);
    await access.beginSession(ada, 'yesterday');
    shop.clock.now = instant(shop.clock.now + 3_600_001);
    await access.beginSession(bo, 'this morning');
    shop.clock.now = instant(shop.clock.now + 11 * 3_600_000);
    await access.beginSession(ada, 'now');
    expect(await kept()).toEqual(['this morning', 'now']);
  });
  it('is ended alone, and with it what was tried in it', async () => {
    const [here, there] = [await access.beginSession(ada, 'bench'), await access.beginSession(ada, 'counter')];
    for (const token of [here, there]) await pin(ada, '0000', token);
    await access.endSession(here);
    expect([await access.session(here), (await access.session(there))?.device]).toEqual([null, 'counter']);
    expect(await shop.store.access.read('SELECT failures FROM attempt')).toHaveLength(1);
  });
});

describe('a link for the first run', () => {
  it('is good for half an hour, by its own token, and for nobody once it was used', async () => {
    const token = await access.makeSetupLink();
    const made = shop.clock.now;
    const isGoodAfter = (ms: number) => {
      shop.clock.now = instant(made + ms);
      return access.checkSetupLink(token);
    };
    expect([await isGoodAfter(0), await isGoodAfter(30 * 60_000), await isGoodAfter(30 * 60_000 + 1)]).toEqual([true, true, false]);
    expect([await isGoodAfter(-60_000), await isGoodAfter(-60_001)]).toEqual([true, false]);
    expect(await access.checkSetupLink(`${token}x`)).toBe(false);
    shop.clock.now = made;
    await access.useSetupLinks();
    expect(await access.checkSetupLink(token)).toBe(false);
  });
});

describe('whether somebody has a PIN or a password', () => {
  it('is told apart', async () => {
    const has = (person: Ref<'person'>) => Promise.all([access.hasCredential(person), access.hasCredential(person, 'password')]);
    expect([await has(ada), await has(bo), await has(shop.newRef('person'))]).toEqual([
      [true, true],
      [true, false],
      [false, false],
    ]);
  });
});
