// Loss over all finished jobs: none is left out in silence, one more job costs one job, and a change of a balance redoes what was weighed after it.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import * as reckoning from '../../src/projections/job-reckoning.ts';
import { instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import { balanceStory } from '../../src/web/job/balance-story.ts';
import { lossHistory } from '../../src/web/owner/loss-history.ts';
import { line } from '../shop.ts';
import { finishPolished } from './job-in-house.ts';
import { openSite, type Site } from './site.ts';

vi.mock('../../src/projections/job-reckoning.ts', { spy: true });

let site: Site;
beforeEach(async () => {
  site = await openSite();
  vi.mocked(reckoning.reckonJob).mockClear();
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const DAY_MS = 86_400_000;
const reckonedJobs = () => vi.mocked(reckoning.reckonJob).mock.calls.length;

const finishJob = () => finishPolished(site.shop);
const check = (shown = '100.00') =>
  site.shop.write(
    line('balance_checked', { balance: site.shop.balance, nominal: '100 g', certifiedG: '100.0002', shown: site.shop.grams(shown) }),
  );
const all = async () => {
  let history = await lossHistory(site.web);
  while (history.due > 0) {
    await new Promise((resolve) => setImmediate(resolve));
    history = await lossHistory(site.web);
  }
  return history.jobs.map(({ job }) => job);
};

describe('the history of loss', () => {
  it('holds every finished job, and reckons one more as one', async () => {
    const jobs: Ref<'job'>[] = [];
    for (let n = 0; n < 3; n++) jobs.push(await finishJob());
    expect((await all()).sort()).toEqual(jobs.toSorted());
    expect(reckonedJobs()).toBe(3);
    await site.shop.write(line('place_named', { place: site.shop.newRef('place'), name: 'Tray', kind: 'tray' }));
    jobs.push(await finishJob());
    expect((await all()).sort()).toEqual(jobs.toSorted());
    expect(reckonedJobs()).toBe(4);
    await all();
    expect(reckonedJobs()).toBe(4);
  });

  it('says how many are still to come where there are more than a page waits for', async () => {
    for (let n = 0; n < 130; n++) await finishJob();
    const first = await lossHistory(site.web);
    expect([first.jobs.length, first.due]).toEqual([100, 30]);
    for (let history = first; history.due > 0; history = await lossHistory(site.web)) {
      expect(history.jobs.length + history.due).toBe(130);
      await new Promise((resolve) => setImmediate(resolve));
    }
    const owner = await site.as('owner');
    expect(await all()).toHaveLength(130);
    const html = await (await owner.get('/loss')).text();
    expect(html).toContain('The 130 finished jobs');
    expect(html).toContain('The last 100 of 130 jobs are drawn; all of them are judged.');
  });

  it('redoes after a check only what was weighed after it, and after a correction of a balance all', async () => {
    const { shop } = site;
    await finishJob();
    shop.clock.now = instant(shop.clock.now + 2 * DAY_MS);
    const checked = await check();
    await finishJob();
    await all();
    expect(reckonedJobs()).toBe(2);
    shop.clock.now = instant(shop.clock.now + 2 * DAY_MS);
    await check();
    await all();
    expect(reckonedJobs()).toBe(2);
    const owner = await site.as('owner');
    const { hash } = await owner.json(`/entries/${checked}`);
    const said = { target: hash, seq: checked, field: 'shown', was: shop.grams('100.00'), is: shop.grams('100.01'), reason: 'misread' };
    await shop.write(line('corrected', said));
    await all();
    expect(reckonedJobs()).toBe(4);
  });
});

describe('the story of the balances', () => {
  it('is the same object until something is said of a balance', async () => {
    const { balances } = await balanceStory(site.web.store);
    await finishJob();
    expect((await balanceStory(site.web.store)).balances).toBe(balances);
    await check();
    const { balances: next } = await balanceStory(site.web.store);
    expect([next.checksOf(site.shop.balance).length, balances.checksOf(site.shop.balance).length]).toEqual([1, 0]);
  });
});
