// The notation of stories: days counted from today, names that become the same refs again, weights as text, and scenes that must end as they say.
import { afterEach, describe, expect, it } from 'vitest';
import { SMALL_JOBS } from '../../seed/bench-weeks.ts';
import { calendarAt } from '../../seed/calendar.ts';
import { PRIYA, theShop } from '../../seed/shop.ts';
import { clasp, sizing } from '../../seed/short-tickets.ts';
import { STORIES } from '../../seed/stories.ts';
import { at, refused, type Story, story, takesIn, tell } from '../../seed/story.ts';
import { instant } from '../../src/units/dates.ts';
import { type House, openHouse } from './house.ts';

const open: House[] = [];
afterEach(async () => {
  for (const house of open.splice(0)) await house.close();
});
async function houseOf(now: string, ...stories: readonly Story[]): Promise<House> {
  const house = await openHouse([theShop, ...stories], now);
  open.push(house);
  return house;
}
const TUESDAY = '2026-12-08T15:00:00Z';

describe('the calendar of a story', () => {
  const calendar = calendarAt(instant(Date.parse(TUESDAY)), 'Europe/London');
  it('counts the days on which a shop is open, and passes over Sundays', () => {
    // 8 December 2026 is a Tuesday, and 6 December a Sunday (ISO 8601 week 50).
    expect(['today', 'yesterday', '2 days ago', '8 days ago', 'in 4 days', 'in 5 days'].map(calendar.day)).toEqual([
      ...['2026-12-08', '2026-12-07', '2026-12-05', '2026-11-28', '2026-12-12', '2026-12-14'],
    ]);
  });
  it('tells the time of the shop, in summer as in winter', () => {
    expect(calendar.moment('yesterday 09:40')).toBe(Date.parse('2026-12-07T09:40:00Z'));
    // Clocks in the United Kingdom go back on 25 October 2026 (Summer Time Order 2002: the last Sunday of October).
    expect(calendar.moment('39 days ago 09:40')).toBe(Date.parse('2026-10-23T08:40:00Z'));
  });
  it('refuses words that are no day', () => {
    expect(() => calendar.day('next week')).toThrow();
    expect(() => calendar.moment('today')).toThrow();
  });
});

describe('a story', () => {
  it('told in two shops names the same things by the same refs', async () => {
    const [one, other] = [await houseOf(TUESDAY, sizing), await houseOf(TUESDAY, sizing)];
    for (const name of ['job', 'piece', 'bag', 'customer'])
      expect(one.told.ref('the sizing', name)).toBe(other.told.ref('the sizing', name));
  });

  it('reads a weight as a form does: balance, step, tare on the pan, second reading and reason', async () => {
    const weighed = tell('piece_weighed', { state: 'finished', weight: '19.05 g with bag tag, again 19.05: the tag would not come off' });
    const house = await houseOf(TUESDAY, { ...clasp, scenes: [...clasp.scenes, at('today 09:50', PRIYA, weighed)] });
    const [row] = await house.store.read('SELECT leaf FROM entry ORDER BY seq DESC LIMIT 1');
    const { data } = JSON.parse(Buffer.from(row?.leaf as ArrayBuffer).toString()) as { data: { weight: unknown } };
    expect(data.weight).toEqual({
      ...{ text: '19.05', unit: 'g', ng: 19_050_000_000, basis: 'weighed', stepNg: 10_000_000 },
      ...{ balance: house.told.ref('the shop', 'bench balance'), onPan: [{ thing: 'bag tag', tareNg: 420_000_000 }] },
      ...{ repeats: ['19.05'], because: 'the tag would not come off' },
    });
  });

  it('that does not end as it says stops the telling', async () => {
    const early = at('today 10:00', PRIYA, tell('piece_returned', { stones: 0, to: 'customer', shown: 'the slip', signed: 'signature' }));
    await expect(openHouse([theShop, { ...clasp, scenes: [...clasp.scenes, early] }], TUESDAY)).rejects.toThrow('work_not_finished');
    const wrongly = refused('on_hold', early);
    await expect(openHouse([theShop, { ...clasp, scenes: [...clasp.scenes, wrongly] }], TUESDAY)).rejects.toThrow('on_hold');
  });

  it('that names nothing it began stops the telling', async () => {
    const lost = story(
      'a lost packet',
      at('today 10:00', PRIYA, ...takenIn()),
      at('today 10:05', PRIYA, tell('moved', { of: 'the packet', to: 'tray A' })),
    );
    await expect(openHouse([theShop, lost], TUESDAY)).rejects.toThrow('the packet');
  });
});

const takenIn = () =>
  takesIn({
    customer: { name: 'Somebody' },
    piece: { kind: 'ring', description: 'Ring', parts: [{ part: 'shank', metal: 'gold-750' }], stones: 0, weight: '3.00 g' },
    work: { steps: ['polish'], price: '£10', promise: 'today' },
  });

/** The small jobs of the benches differ in nothing that the hour could change. */
const TALES = STORIES.filter(({ name }) => !SMALL_JOBS.some((one) => one.name === name));

describe('the whole of the stories', () => {
  it.each(['2026-12-07T00:05:00Z', '2026-12-06T12:00:00Z', '2026-03-29T00:30:00Z', '2026-02-28T23:59:00Z'])(
    'can be told at %s',
    async (now) => {
      const house = await openHouse(TALES, now);
      open.push(house);
      const [row] = await house.store.read("SELECT MAX(json_extract(CAST(leaf AS TEXT), '$.at')) AS at FROM entry");
      expect(Number(row?.at)).toBeLessThan(Date.parse(now));
    },
  );
});
