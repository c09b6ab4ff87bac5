// Whole jobs reckoned from their leaves: what is compared, what cancels, what cannot be known, and which suspects are named.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { balancesIn } from '../../src/projections/balances.ts';
import { type Grounds, type JobReckoning, reckonJob } from '../../src/projections/job-reckoning.ts';
import { BAND } from '../../src/projections/job-weights.ts';
import { told } from '../../src/projections/told.ts';
import { whyOf } from '../../src/projections/why.ts';
import { shelfOn } from '../../src/store/shelf.ts';
import { instant } from '../../src/units/dates.ts';
import { massNg } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
beforeEach(async () => {
  shop = await openShop();
});
afterEach(() => shop.close());

async function reckoned(job: string, more: Partial<Grounds> = {}): Promise<JobReckoning> {
  const shelf = shelfOn(shop.store.read, shop.store.keys);
  const balances = balancesIn(told(await shelf.leaves(shop.shop)));
  return reckonJob(await shelf.leaves(job), { balances, size: 0, ...more });
}

/** A ring taken in and agreed, or another piece weighed as given. */
async function takeIn(weight: Reading | null, steps: readonly string[] = ['check'], stones = 3) {
  const [job, piece, lot, stock] = [shop.newRef('job'), shop.newRef('piece'), shop.newRef('lot'), shop.newRef('stock')];
  await shop.write(
    line('lot_opened', { lot, name: '18Y-4', metal: 'gold-750' }),
    line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('50.00') }),
    line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece, kind: 'ring', description: 'Ring', parts: [{ part: 'shank', metal: 'gold-750' }], stones },
      ...(weight ? { weight } : {}),
    }),
    line('work_agreed', {
      ...{ job, steps, priceKind: 'free', promise: '2026-12-08', dust: 'shop', cutMetal: 'shop', oldParts: 'shop' },
      ...{ terms: '1', agreedBy: 'signature' },
    }),
  );
  return { job, piece, lot, stock };
}
/** A reading that is written whatever is expected. */
const sure = (text: string) => shop.grams(text, { repeats: [text], because: 'as read' });
const weighed = (piece: string, state: string, text: string) => line('piece_weighed', { piece, state, weight: sure(text) });

describe('a job', () => {
  it('agrees when a stone comes out unweighed and goes back whole, wherever the ring was weighed between', async () => {
    const { job, piece } = await takeIn(shop.grams('6.82'));
    const stone = shop.newRef('stone');
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound' }));
    const out = await shop.write(weighed(piece, 'stones out', '6.74'));
    expect(await reckoned(job)).toMatchObject({ state: 'open', unknownSince: out - 1, closed: { verdict: 'not checked' } });
    await shop.write(line('stone_set', { piece, stone, stones: 1 }), weighed(piece, 'finished', '6.82'));
    expect(await reckoned(job)).toMatchObject({ state: 'level', unknownSince: null, closed: { verdict: 'agrees', lossNg: 0 } });
  });

  it('is reckoned in the order of writing through a clock that was set back, and in the order that was stated where one was', async () => {
    const { job, piece, lot } = await takeIn(shop.grams('11.10'));
    const cut = (at: number | null) => {
      const data = { piece, lot, metal: 'gold-750', part: 'shank', weight: sure('0.67') };
      return at === null ? line('metal_cut', data) : line('metal_cut', data, instant(at));
    };
    const noon = shop.clock.now;
    await shop.write(cut(null));
    shop.clock.now = instant(noon - 7_200_000);
    await shop.write(weighed(piece, 'polished', '10.31'));
    expect(await reckoned(job)).toMatchObject({ closed: { lossNg: 120_000_000 }, expected: { ng: 10_310_000_000 } });
    shop.clock.now = instant(noon + 7_200_000);
    await shop.write(weighed(piece, 'polished', '9.64'));
    await shop.write(cut(noon + 3_600_000));
    expect(await reckoned(job)).toMatchObject({ closed: { lossNg: 120_000_000 }, expected: { ng: 9_640_000_000 } });
  });

  it('closes over a stone that came out unweighed and was weighed loose after: what it weighs is accounted for', async () => {
    const { job, piece } = await takeIn(shop.grams('7.00'));
    const stone = shop.newRef('stone');
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound' }));
    await shop.write(line('stone_weighed', { of: stone, state: 'loose', weight: shop.carats('1.000') }));
    await shop.write(weighed(piece, 'stones out', '6.80'));
    const out = await reckoned(job);
    expect(out).toMatchObject({ state: 'level', closed: { verdict: 'agrees', lossNg: 0 }, removed: [{ ng: 200_000_000 }] });
    expect(out.network.total.residualNg).toBe(0);
    await shop.write(line('stone_set', { piece, stone, stones: 1 }), weighed(piece, 'finished', '7.00'));
    expect(await reckoned(job)).toMatchObject({ state: 'level', closed: { verdict: 'agrees', lossNg: 0 } });
  });

  it('does not agree where the piece weighs what it did with a stone that was weighed out of it', async () => {
    const { job, piece } = await takeIn(shop.grams('7.00'));
    const stone = shop.newRef('stone');
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound' }));
    await shop.write(line('stone_weighed', { of: stone, state: 'loose', weight: shop.carats('1.000') }));
    await shop.write(weighed(piece, 'stones out', '7.00'));
    const found = await reckoned(job);
    expect(found).toMatchObject({ state: 'off', closed: { verdict: 'does not agree', lossNg: -200_000_000 } });
    expect(found.network.groups.map(({ residualNg }) => residualNg)).toContain(-200_000_000);
  });

  it('is not said to agree where an estimate is too wide to tell, and says what was not read on a balance', async () => {
    const { job, piece, stock } = await takeIn(shop.grams('40.00'));
    const estimate = { text: '5.00', unit: 'g', ng: massNg(5_000_000_000), basis: 'estimate' } as const;
    const added = await shop.write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'wire', weight: estimate }));
    await shop.write(weighed(piece, 'finished', '44.60'));
    const found = await reckoned(job);
    expect(found).toMatchObject({ state: 'open', own: null, closed: { verdict: 'cannot tell' }, weights: { tilt: 0 } });
    expect(found.weights.notRead).toEqual({ unweighed: [], setAside: [], estimated: [`entry ${added}`], byDifference: [] });
  });

  it('tilts within the band while it agrees, to the end when it does not, and not at all while it is open', async () => {
    for (const [out, least, most] of [
      ['6.81', 0.01, BAND],
      ['6.42', 1, 1],
      ['7.22', -1, -1],
    ] as const) {
      const { job, piece } = await takeIn(shop.grams('6.82'));
      expect((await reckoned(job)).weights.tilt).toBe(0);
      await shop.write(weighed(piece, 'finished', out));
      const { weights } = await reckoned(job);
      expect(-weights.tilt).toBeGreaterThanOrEqual(least);
      expect(-weights.tilt).toBeLessThanOrEqual(most);
      expect(weights.pans.map(({ value }) => value)).toEqual(['6.82\u00a0g', `${out}\u00a0g`]);
    }
  });

  it('whose figures are beyond the arithmetic says so, and throws nothing', async () => {
    const { job } = await takeIn(shop.grams('6.82'));
    const shelf = shelfOn(shop.store.read, shop.store.keys);
    const broken = balancesIn(told(await shelf.leaves(shop.shop)));
    const worths = () => ({ uRandomG: Number.NaN, factors: [{ id: 'gain', sensitivityG: 0 }], sG: 1, dof: 1 });
    const piece = (await shelf.leaves(job)).find(({ leaf }) => leaf.type === 'piece_received')?.leaf.data.piece;
    await shop.write(weighed(String(piece), 'finished', '6.82'));
    const found = await reckoned(job, { balances: { ...broken, worths } });
    expect(found).toMatchObject({ closed: null, state: 'open' });
    expect(found.sentence).toContain('cannot be reckoned');
  });

  it('says since which entry what is left cannot be known, and what it weighed since', async () => {
    const { job, piece, lot } = await takeIn(shop.grams('6.82'));
    const cut = await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750' }));
    await shop.write(weighed(piece, 'cut', '5.40'));
    const found = await reckoned(job);
    expect(found).toMatchObject({ unknownSince: cut, closed: { verdict: 'not checked' }, expected: { ng: 5_400_000_000 } });
    expect(found.sentence).toContain(`cannot be known since entry ${cut}, which was not weighed`);
    expect(found.sentence).toContain('5.40\u00a0g');
  });

  it('begins at the cleaned and dry weight, so that soap is not lost gold', async () => {
    const { job, piece } = await takeIn(shop.grams('6.82'));
    const cleaned = { piece, how: ['soap'], dry: 'dry', weight: shop.grams('6.79') };
    await shop.write(line('piece_cleaned', cleaned), weighed(piece, 'finished', '6.79'));
    expect(await reckoned(job)).toMatchObject({ cameIn: { ng: 6_790_000_000 }, closed: { lossNg: 0 } });
  });

  it('takes a wet weighing for nothing', async () => {
    const { job, piece } = await takeIn(shop.grams('6.82'));
    await shop.write(line('piece_cleaned', { piece, how: ['soap'], dry: 'unsure', weight: sure('6.90') }));
    expect(await reckoned(job)).toMatchObject({ cameIn: { ng: 6_820_000_000 }, last: null, closed: null });
  });

  it('keeps the verdict of its last weighing when something is added after it', async () => {
    const { job, piece, stock } = await takeIn(shop.grams('6.82'));
    await shop.write(weighed(piece, 'cut', '6.42'));
    await shop.write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'wire', weight: shop.grams('0.30') }));
    expect(await reckoned(job)).toMatchObject({
      state: 'off',
      expected: { ng: 6_720_000_000 },
      last: null,
      closed: { lossNg: 400_000_000 },
    });
  });

  it('orders by when it happened: a weighing written late stands where it was made', async () => {
    const { job, piece, lot } = await takeIn(shop.grams('6.82'));
    shop.clock.now = instant(shop.clock.now + 3_600_000);
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.00') }));
    await shop.write(line('piece_weighed', { piece, state: 'stones out', weight: sure('6.82') }, instant(shop.clock.now - 1_800_000)));
    expect(await reckoned(job)).toMatchObject({ closed: { lossNg: 0 }, expected: { ng: 5_820_000_000 } });
  });

  it('takes no more than usual working loss for usual', async () => {
    const { job, piece } = await takeIn(shop.grams('40.00'), ['re-shank']);
    await shop.write(weighed(piece, 'finished', '39.84'));
    expect(await reckoned(job)).toMatchObject({
      closed: { finding: 'usual loss', verdict: 'agrees' },
      work: { operation: 'size', family: 'gold' },
    });
  });
});

describe('weighings between the steps', () => {
  it('tell where half a gram went, and name together what cannot be told apart', async () => {
    const { job, piece, lot, stock } = await takeIn(shop.grams('8.64'));
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.34') }), weighed(piece, 'cut', '7.30'));
    const added = await shop.write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'wire', weight: shop.grams('1.90') }));
    await shop.write(weighed(piece, 'joined', '8.70'), weighed(piece, 'polished', '8.69'));
    const { network } = await reckoned(job);
    const [best, second] = network.suspects;
    expect(best?.suspects.map((one) => (one.fault === 'weighing wrong' ? one.stream : one.fault))).toEqual([`${added}.0`, 'loss']);
    expect(best?.suspects[0]?.size).toBeCloseTo(0.5, 1);
    expect(second).toBeUndefined();
  });

  it('point to digits that were swapped between the steps, though the job agrees as a whole', async () => {
    const { job, piece, lot } = await takeIn(shop.grams('8.64'));
    await shop.write(weighed(piece, 'cleaned and dry', '8.64'));
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.34') }));
    const cut = await shop.write(weighed(piece, 'cut', '7.03'));
    await shop.write(weighed(piece, 'polished', '7.30'), weighed(piece, 'finished', '7.30'));
    const found = await reckoned(job);
    expect(found.closed?.verdict).toBe('agrees');
    expect(whyOf(found).suspects).toHaveLength(1);
    expect(whyOf(found).slips).toEqual([expect.stringMatching(new RegExp(`entry ${cut}: 7.03.*digits swapped: 7.03 written for 7.30`))]);
  });

  it('name two things at once where one does not explain the gaps', async () => {
    const { job, piece, lot, stock } = await takeIn(shop.grams('8.64'));
    await shop.write(weighed(piece, 'cleaned and dry', '8.64'));
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.34') }));
    const cut = await shop.write(weighed(piece, 'cut', '7.03'));
    await shop.write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'wire', weight: shop.grams('1.90') }));
    await shop.write(weighed(piece, 'joined', '9.20'));
    const polished = await shop.write(weighed(piece, 'polished', '9.60'));
    await shop.write(weighed(piece, 'finished', '9.20'));
    const why = whyOf(await reckoned(job));
    expect(why.suspects).toHaveLength(1);
    for (const words of ['Two things at once', `entry ${cut}:`, '(too light)', `entry ${polished}:`, '(too heavy)', '0.27', '0.40'])
      expect(why.suspects.join()).toContain(words);
    expect(why.slips.join()).toContain('digits swapped: 7.03 written for 7.30');
  });

  it('without one, say that nothing can be localised: every weighing and the piece are one set', async () => {
    const { job, piece, lot } = await takeIn(shop.grams('8.64'));
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.34') }), weighed(piece, 'cut', '6.80'));
    const { network } = await reckoned(job);
    expect(network.suspects).toHaveLength(1);
    expect(network.suspects[0]?.suspects.filter(({ fault }) => fault === 'weighing wrong')).toHaveLength(3);
  });
});

describe('a gap of grams', () => {
  it('is not laid at the door of a balance that could never drift so far', async () => {
    const { job, piece } = await takeIn(shop.carats('100.000'));
    await shop.write(weighed(piece, 'finished', '18.50'));
    const found = await reckoned(job);
    expect(found.network.suspects[0]?.suspects.some(({ fault }) => fault === 'factor drifted')).toBe(true);
    const why = whyOf(found);
    expect(why.suspects).toHaveLength(1);
    expect(why.suspects.join()).not.toContain('has drifted');
  });
});

describe('a balance', () => {
  const fine = () => shop.newRef('balance');
  const put = (balance: string) =>
    line('balance_put_in_service', {
      ...{ balance, name: 'Fine', unit: 'g', class: 'I', ranges: [{ max: '120', step: '0.001' }], repeatability: '0.001' },
    });
  const calibrated = (balance: string) => line('balance_calibrated', { balance, by: 'own', adjusted: 'adjusted', linearity: '0.001' });
  const on = (balance: string, text: string): Reading => ({
    ...{ text, unit: 'g', ng: massNg(Math.round(Number(text) * 1e9)), basis: 'weighed', balance: balance as never, stepNg: massNg(1e6) },
    ...{ repeats: [text], because: 'as read' },
  });

  // Case JOB-3 of the check rows: an 86 g bangle in and out on one balance of 0.001 g, s 0.001 g, linearity 0.001 g.
  it('cancels its own gain within one calibration, and not across two', async () => {
    const balance = fine();
    await shop.write(put(balance), calibrated(balance));
    const { job, piece } = await takeIn(on(balance, '86.214'));
    await shop.write(line('piece_weighed', { piece, state: 'finished', weight: on(balance, '86.214') }));
    expect((await reckoned(job)).closed?.uG).toBeCloseTo(0.0017, 4);
    shop.clock.now = instant(shop.clock.now + 60_000);
    await shop.write(calibrated(balance));
    await shop.write(line('piece_weighed', { piece, state: 'finished', weight: on(balance, '86.214') }));
    expect((await reckoned(job)).closed?.uG).toBeGreaterThan(0.005);
  });

  it('that fails its check puts the weighings since the last pass in doubt, and changes none', async () => {
    const { job, piece } = await takeIn(shop.grams('6.82'));
    const check = (text: string) =>
      line('balance_checked', { balance: shop.balance, nominal: '20 g', certifiedG: '20.00', shown: shop.grams(text) });
    await shop.write(check('20.00'));
    shop.clock.now = instant(shop.clock.now + 60_000);
    const seq = await shop.write(weighed(piece, 'finished', '6.82'));
    expect((await reckoned(job)).doubted).toEqual([]);
    shop.clock.now = instant(shop.clock.now + 60_000);
    await shop.write(check('20.10'));
    expect(await reckoned(job)).toMatchObject({ doubted: [seq], closed: { lossNg: 0 } });
  });
});

describe('stones and own metal', () => {
  it('compare a stone with itself on the carat balance', async () => {
    const { job, piece } = await takeIn(shop.grams('6.82'));
    const stone = shop.newRef('stone');
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: shop.carats('1.013') }));
    const weight = shop.carats('1.001', { repeats: ['1.001'], because: 'as read' });
    await shop.write(line('stone_weighed', { of: stone, state: 'loose', weight }), line('stone_set', { piece, stone, stones: 1 }));
    const [check] = (await reckoned(job)).stones;
    expect(check).toMatchObject({ out: 1, setAgain: 1, compared: { verdict: 'does not agree' } });
    expect(check?.compared?.differenceG).toBeCloseTo(-0.0024, 9);
  });

  it('say nothing of a small stone that was read on a coarse balance', async () => {
    const { job, piece } = await takeIn(shop.grams('6.82'));
    const stone = shop.newRef('stone');
    await shop.write(line('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: shop.grams('0.08') }));
    await shop.write(
      line('stone_weighed', { of: stone, state: 'loose', weight: shop.grams('0.08', { repeats: ['0.08'], because: 'as read' }) }),
    );
    expect((await reckoned(job)).stones[0]?.compared).toMatchObject({ verdict: 'cannot tell' });
  });

  it('say what it is worth that two weights agree: much for a large stone, nothing for a small one or for several together', async () => {
    const twice = async (ct: string, kind: 'stone' | 'packet', stones: number) => {
      const { job, piece } = await takeIn(shop.grams('6.82'));
      const thing = shop.newRef(kind);
      await shop.write(line('stone_unset', { piece, [kind]: thing, stones, condition: 'sound', weight: shop.carats(ct) }));
      await shop.write(line('stone_weighed', { of: thing, state: 'loose', weight: shop.carats(ct) }));
      const [check] = (await reckoned(job)).stones;
      return { verdict: check?.compared?.verdict, worth: check?.worth, also: check?.alsoShare };
    };
    const [large, small, several] = [await twice('1.004', 'stone', 1), await twice('0.100', 'stone', 1), await twice('0.186', 'packet', 3)];
    expect(large).toMatchObject({ verdict: 'agrees', worth: 'some' });
    expect(small).toMatchObject({ verdict: 'agrees', worth: 'cannot tell' });
    expect(large.also ?? 1).toBeLessThan(0.1);
    expect(small.also ?? 0).toBeGreaterThan(0.2);
    expect(several).toEqual({ verdict: 'agrees', worth: 'cannot tell', also: null });
  });

  it('give a range for the customer’s own metal, since filings after the joining are mixed', async () => {
    const { job, piece, lot, stock } = await takeIn(shop.grams('8.60'), ['check'], 0);
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.40') }));
    await shop.write(line('metal_added', { piece, stock, metal: 'gold-750', what: 'shank', weight: shop.grams('1.60') }));
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('0.10') }), weighed(piece, 'finished', '8.70'));
    expect((await reckoned(job)).own).toMatchObject({ metalNg: 8.7e9, lowNg: 7.1e9, highNg: 7.2e9 });
  });
});

describe('at the bench', () => {
  it('a reading that another open job explains asks whether that is the piece in the hand', async () => {
    const other = await takeIn(shop.grams('3.41'));
    const [{ bag } = { bag: '' }] = await shop.store.read("SELECT json_extract(state, '$.says.bag') AS bag FROM thing WHERE id = ?", [
      other.job,
    ]);
    const { piece, lot } = await takeIn(shop.grams('6.82'));
    await shop.write(line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.65') }));
    const answer = await shop.tell([line('piece_weighed', { piece, state: 'cut', weight: shop.grams('3.41') })]);
    expect(answer).toMatchObject({ answer: 'asked', code: 'not_expected', field: 'weight' });
    expect('say' in answer && answer.say).toContain(`Job ${bag} weighs 3.41\u00a0g. Is that the piece in your hand?`);
    expect('say' in answer && answer.say).toContain('5.17\u00a0g is expected');
  });

  it('names swapped digits and a listed tag left on the pan', async () => {
    await shop.write(line('tare_listed', { shop: shop.shop, thing: 'bag tag', weight: shop.grams('0.34'), from: 'weighed' }));
    const { piece } = await takeIn(shop.grams('6.82'));
    const say = async (text: string) => {
      const answer = await shop.tell([line('piece_weighed', { piece, state: 'cut', weight: shop.grams(text) })]);
      return 'say' in answer ? answer.say : '';
    };
    expect(await say('7.16')).toContain('the bag tag was on the pan');
    expect(await say('8.62')).toContain('digits swapped: 8.62 written for 6.82');
  });
});
