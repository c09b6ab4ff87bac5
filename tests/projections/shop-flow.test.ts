// The shop's metal in fine grams, and bench skins against the jobs above them, from real leaves.
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Baselines, chartKey } from '../../src/book/loss-charts.ts';
import { balancesIn } from '../../src/projections/balances.ts';
import { JOBS, SUPPLIERS, shopFlow } from '../../src/projections/flow.ts';
import { reckonJob } from '../../src/projections/job-reckoning.ts';
import { checkedJob, type LossJob, learnedFrom, leavesDust, lossCharts, periodOf } from '../../src/projections/loss.ts';
import { skinPeriods } from '../../src/projections/skins.ts';
import { told } from '../../src/projections/told.ts';
import { shelfOn } from '../../src/store/shelf.ts';
import { instant } from '../../src/units/dates.ts';
import { massNg } from '../../src/units/mass.ts';
import { histories, played } from '../histories.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
beforeEach(async () => {
  shop = await openShop();
});
afterEach(() => shop.close());
const minutes = (n: number) => {
  shop.clock.now = instant(shop.clock.now + n * 60_000);
};
const sure = (text: string) => shop.grams(text, { repeats: [text], because: 'as read' });
const leaves = (stream: string) => shelfOn(shop.store.read, shop.store.keys).leaves(stream);
const balances = async () => balancesIn(told(await leaves(shop.shop)));

async function polished(out: string) {
  const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  await shop.write(
    line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece, kind: 'ring', description: 'Ring', parts: [{ part: 'shank', metal: 'gold-750' }], stones: 0 },
      weight: shop.grams('20.00'),
    }),
    line('work_agreed', {
      ...{ job, steps: ['polish'], priceKind: 'free', promise: '2026-12-08', dust: 'shop', cutMetal: 'shop', oldParts: 'shop' },
      ...{ terms: '1', agreedBy: 'signature' },
    }),
  );
  minutes(1);
  await shop.write(line('piece_weighed', { piece, state: 'polished', weight: sure(out) }));
  minutes(1);
  return { job, piece };
}

async function asLoss(job: string): Promise<LossJob> {
  const kept = await leaves(job);
  const found = checkedJob(job, reckonJob(kept, { balances: await balances(), size: 0 }), told(kept));
  if (!found || !leavesDust(found)) throw new Error('not checked by weight');
  return found;
}

describe('a bench skin', () => {
  const skin = () => shop.newRef('skin');

  it('closes over what the jobs above it are short of, and what was emptied between', async () => {
    const [id, lot] = [skin(), shop.newRef('lot')];
    await shop.write(
      line('lot_opened', { lot, name: 'L1', metal: 'gold-750' }),
      line('lemel_gathered', { skin: id, bench: 'Bench 1', metal: 'gold-750', weight: shop.grams('1.00') }),
    );
    minutes(1);
    const jobs = [await polished('19.90'), await polished('19.90')];
    await shop.write(line('skin_emptied', { skin: id, lot, metal: 'gold-750', weight: shop.grams('0.50') }));
    minutes(1);
    await shop.write(line('lemel_gathered', { skin: id, weight: sure('0.69') }));
    const losses = await Promise.all(jobs.map(({ job }) => asLoss(job)));
    const [period] = skinPeriods(id, told(await leaves(id)), losses, (await balances()).worths);
    expect(period).toMatchObject({ jobs: jobs.map(({ job }) => job), closed: { lossNg: 10_000_000, verdict: 'agrees' } });
    expect(period?.closed.gave.map(({ ng }) => ng)).toEqual([100_000_000, 100_000_000]);
  });

  it('that is short of half a gram does not agree', async () => {
    const id = skin();
    await shop.write(line('lemel_gathered', { skin: id, bench: 'Bench 1', metal: 'gold-750', weight: shop.grams('1.00') }));
    minutes(1);
    const { job } = await polished('19.50');
    await shop.write(line('lemel_gathered', { skin: id, weight: sure('1.00') }));
    const [period] = skinPeriods(id, told(await leaves(id)), [await asLoss(job)], (await balances()).worths);
    expect(period?.closed).toMatchObject({ lossNg: 500_000_000, verdict: 'does not agree' });
  });
});

describe('the shop’s metal', () => {
  it('is counted in fine grams by its mark, from suppliers to stock, jobs and lots', async () => {
    const [stock, lot] = [shop.newRef('stock'), shop.newRef('lot')];
    await shop.write(
      line('lot_opened', { lot, name: 'L1', metal: 'gold-750' }),
      line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('50.00') }),
    );
    const { piece } = await polished('20.00');
    await shop.write(
      line('metal_added', { piece, stock, metal: 'gold-750', what: 'wire', weight: shop.grams('2.00') }),
      line('metal_cut', { piece, lot, metal: 'gold-750', weight: shop.grams('1.20') }),
      line('metal_cut', { piece, lot, metal: 'silver-925', weight: shop.grams('1.00') }),
    );
    const entries = told([...(await leaves(stock)), ...(await leaves(lot))]);
    const found = shopFlow(entries, 'gold', new Set([stock, lot]), [], (await balances()).worths, [0, Number.MAX_SAFE_INTEGER]);
    expect(found.flows.map(({ from, to, fineNg }) => [from, to, fineNg])).toEqual([
      [SUPPLIERS, stock, 37_500_000_000],
      [stock, JOBS, 1_500_000_000],
      [JOBS, lot, 900_000_000],
    ]);
    expect(found.holdings).toEqual([
      { id: stock, openingNg: 0, closingNg: 36_000_000_000 },
      { id: lot, openingNg: 0, closingNg: 900_000_000 },
    ]);
  });

  it('opens each period with what the last one closed with, and moves by what flowed', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(histories(40), fc.nat(60), async (history, cut) => {
        const ledger = await played(history);
        const { leaves: kept, things } = ledger.look();
        const pools = new Set(things.filter(({ kind }) => ['lot', 'stock', 'skin'].includes(kind)).map(({ id }) => id));
        const entries = told(kept);
        const { worths } = balancesIn(entries);
        const at = Date.UTC(2026, 11, 1, 9) + cut * 60_000;
        const [one, two] = [
          shopFlow(entries, 'gold', pools, [], worths, [0, at]),
          shopFlow(entries, 'gold', pools, [], worths, [at, Number.MAX_SAFE_INTEGER]),
        ];
        expect(two.holdings.map(({ openingNg }) => openingNg)).toEqual(one.holdings.map(({ closingNg }) => closingNg));
        for (const { id, openingNg, closingNg } of two.holdings) {
          const net = two.flows.reduce((sum, { from, to, fineNg }) => sum + (Number(to === id) - Number(from === id)) * fineNg, 0);
          expect(closingNg - openingNg).toBe(net);
        }
      }),
      { numRuns: 30, seed: 3 },
    );
  });
});

describe('loss over time', () => {
  it('leaves a job that did not agree out of what is usual until somebody says why', async () => {
    const { job } = await polished('18.00');
    expect(await asLoss(job)).toMatchObject({ leftOut: true });
    await shop.write(line('difference_explained', { of: job, what: 'weight', reason: 'A link was cut and not weighed.' }));
    expect(await asLoss(job)).toMatchObject({ leftOut: false });
  });

  it('judges single jobs below three, starts by itself from three, and takes the usual rate from twenty', async () => {
    const one = await asLoss((await polished('19.98')).job);
    const jobs = (n: number) => Array.from({ length: n }, (_, i) => ({ ...one, job: `${i}`, atMs: i }));
    expect([2, 3, 19, 20].map((n) => lossCharts(jobs(n))[0]?.watch.chart)).toEqual([
      'single jobs',
      'self-starting',
      'self-starting',
      'usual rate',
    ]);
  });

  it('compares benches: one that has always lost more shows against the others, not on its own chart', async () => {
    const one = await asLoss((await polished('19.98')).job);
    const at = (place: string, lossNg: number) =>
      Array.from({ length: 25 }, (_, i) => ({
        ...one,
        job: `${place}${i}`,
        atMs: i,
        place,
        closed: { ...one.closed, lossNg: lossNg as never },
      }));
    const charts = lossCharts([...at('a', 20_000_000), ...at('b', 90_000_000), ...at('c', 20_000_000)]);
    expect(charts.map(({ againstOthers }) => (againstOthers ?? 0) > 3)).toEqual([false, true, false]);
  });

  it('judges jobs after an accepted baseline against it alone, and keeps their alarm whatever comes after', async () => {
    const one = await asLoss((await polished('19.98')).job);
    const lost = (lossNg: number, from: number, to: number) =>
      Array.from({ length: to - from }, (_, i) => ({
        ...one,
        job: `${from + i}`,
        seq: from + i,
        closed: { ...one.closed, lossNg: massNg(lossNg) },
      }));
    const alarms = (jobs: readonly LossJob[], baselines?: Baselines) => {
      const watched = lossCharts(jobs, baselines)[0]?.watch;
      return watched && watched.chart !== 'single jobs'
        ? watched.sums.alarms.filter(({ side }) => side === 'loss').map(({ at }) => at)
        : [];
    };
    const jobs = [...lost(20_000_000, 1, 31), ...lost(120_000_000, 31, 51)];
    const accepted = new Map([[chartKey(one), 31]]);
    const found = alarms(jobs, accepted);
    expect(found.length).toBeGreaterThan(0);
    expect(alarms([...jobs, ...lost(120_000_000, 51, 200)], accepted).slice(0, found.length)).toEqual(found);
    // Neither a day stated long before, nor how many other charts begin later, takes an alarm away.
    const before = lost(0, 51, 90).map((job) => ({ ...job, atMs: 0 }));
    const elsewhere = lost(20_000_000, 90, 120).map((job) => ({ ...job, place: job.job }));
    expect(alarms([...jobs, ...before, ...elsewhere], accepted)).toEqual(found);
  });

  it('lets no job flow less than nothing for want of a sign: what all are short of is their sum', async () => {
    const jobs = await Promise.all(['19.99', '20.01', '20.00'].map(async (out) => asLoss((await polished(out)).job)));
    const found = shopFlow([], 'gold', new Set(), jobs, (await balances()).worths, [0, Number.MAX_SAFE_INTEGER]);
    expect(found.flows).toEqual([]);
  });

  it('learns the same from what it remembers as from all other jobs counted anew', async () => {
    const weighed = ['19.97', '19.98', '19.99', '19.96', '19.98', '19.97', '19.95', '19.99', '19.98'];
    const jobs = await Promise.all(weighed.map(async (out) => asLoss((await polished(out)).job)));
    const by = learnedFrom(jobs);
    for (const { job, operation, family } of [...jobs, ...jobs]) {
      const others = jobs.filter((one) => one.job !== job);
      const own = by.rateOf(operation, family, job);
      expect(own).toEqual(learnedFrom(others).rateOf(operation, family));
      expect(own?.jobs).toBe(8);
    }
    const [one] = jobs;
    expect(one && by.rateOf(one.operation, one.family, 'a job that is still open')?.jobs).toBe(9);
  });

  it('counts a period by the level of its own verdict, on both sides', async () => {
    const one = await asLoss((await polished('19.98')).job);
    const jobs = Array.from({ length: 40 }, (_, i) => ({ ...one, atMs: i }));
    const period = periodOf(jobs, learnedFrom(jobs), 0, 20);
    expect(period).toMatchObject({ checked: 20, flagged: 0, standing: [] });
    expect(period.byChance).toBeCloseTo(20 * 0.002, 12);
  });
});
