// Weights that follow from others: each that does not is asked about while the thing is in the hand. Masses are invented; what work
// usually loses is the table's own (common practice, no source), so each case lies far to one side of it.
import { beforeEach, describe, expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
import type { Ref } from '../../src/units/ids.ts';
import { massNg } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
let piece: Ref<'piece'>;
let job: Ref<'job'>;
beforeEach(async () => {
  shop = await openShop();
  return () => shop.close();
});

async function ring(grams: string, steps: readonly string[] = ['size-up']): Promise<void> {
  [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  const parts = [{ part: 'whole', metal: 'gold-750' }];
  await shop.write(
    line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, kind: 'ring', description: 'Ring', parts, stones: 1, weight: shop.grams(grams) }),
    line('work_agreed', {
      ...{ job, steps, priceKind: 'free', promise: '2026-12-08', dust: 'shop', cutMetal: 'customer' },
      ...{ oldParts: 'customer', terms: '1', agreedBy: 'signature' },
    }),
  );
}
const weighed = (text: string, more: Partial<Reading> = {}, state = 'finished') =>
  line('piece_weighed', { piece, state, weight: shop.grams(text, more) });
const told = async (...lines: readonly Line[]) => {
  const answer = await shop.tell(lines);
  return 'code' in answer ? { code: answer.code, say: answer.say } : { code: answer.answer, say: '' };
};

describe('a weight below what is expected', () => {
  it.each([
    ['12.00', '11.45', 'not_expected'],
    ['12.00', '11.95', 'written'],
    ['4.12', '3.98', 'not_expected'],
    ['4.12', '4.10', 'written'],
  ])('of %s g and then %s g at a sizing: %s', async (came, now, code) => {
    await ring(came);
    expect((await told(weighed(now))).code).toBe(code);
  });
  it('is asked about at once where the work loses nothing', async () => {
    await ring('12.00', ['check']);
    expect((await told(weighed('11.95'))).code).toBe('not_expected');
  });
  it('says how much is usual, and is written once it was read again', async () => {
    await ring('12.00');
    expect((await told(weighed('11.45'))).say).toMatch(
      /12\.00\u00a0g is expected, give or take 0\.0\d\u00a0g\. Up to 0\.1\d\u00a0g is usual as dust/,
    );
    expect((await told(weighed('11.45', { repeats: ['11.45'], because: 'the shank was filed thin' }))).code).toBe('written');
  });
  it('may be the dirt of its first cleaning, and no second one', async () => {
    await ring('5.38', ['check']);
    expect((await told(weighed('5.31', {}, 'cleaned and dry'))).code).toBe('written');
    expect((await told(weighed('5.24', {}, 'cleaned and dry'))).code).toBe('not_expected');
  });
});

describe('a loose stone', () => {
  const out = async () => {
    const stone = shop.newRef('stone');
    await ring('5.00');
    await shop.write(line('setting_noted', { piece, stone, seat: 'middle', species: 'ruby', backing: 'open', state: 'sound' }));
    await shop.write(line('stone_unset', { piece, stone, stones: 1, weight: shop.carats('1.204'), condition: 'sound' }));
    return (text: string, state: string) => line('stone_weighed', { of: stone, state, weight: shop.carats(text) });
  };
  it('that reads lighter than before is asked about at once, in carats', async () => {
    const again = await out();
    const answer = await told(again('1.190', 'loose'));
    expect(answer.code).toBe('not_expected');
    expect(answer.say).toContain('1.204\u00a0ct is expected');
    expect(answer.say).not.toMatch(/\d\u00a0g\b/);
  });
  it.each(['with glue', 'wet'])('%s is kept and becomes nothing that is expected', async (state) => {
    const again = await out();
    expect((await told(again('1.260', state))).code).toBe('written');
    expect((await told(again('1.204', 'loose'))).code).toBe('written');
  });
});

describe('a piece that may still be wet', () => {
  it('says nothing of what is expected, whichever way it was said', async () => {
    await ring('5.38', ['check']);
    expect((await told(line('piece_cleaned', { piece, how: ['steam'], dry: 'unsure', weight: shop.grams('5.60') }))).code).toBe('written');
    expect((await told(weighed('5.61', { dry: 'unsure' }))).code).toBe('written');
    expect((await told(weighed('5.38'))).code).toBe('written');
  });
});

describe('a tare that leaves nothing', () => {
  it.each(['10.00', '5.00'])('is refused: %s g on the pan with a tray of 10 g', async (text) => {
    await ring('12.00');
    await shop.write(line('tare_listed', { shop: shop.shop, thing: 'tray', weight: shop.grams('10.00'), from: 'weighed' }));
    const answer = await told(weighed(text, { onPan: [{ thing: 'tray', tareNg: massNg(10_000_000_000) }] }));
    expect(answer.code).toBe('nothing_left');
    expect(answer.say).toContain('tray');
  });
});
