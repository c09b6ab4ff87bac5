// A baseline of loss, accepted by the owner: from twenty jobs, with the password; later jobs are judged against it, and an alarm stays.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { finishPolished } from './job-in-house.ts';
import { openSite, PASSWORD, PIN, type Site, type Visitor } from './site.ts';

const AT = '/loss/baseline/-/polish/gold';
let site: Site;
let owner: Visitor;
beforeAll(async () => {
  site = await openSite();
  owner = await site.as('owner');
});
afterAll(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const page = async () => (await owner.get('/loss')).text();
interface Charts {
  readonly charts: readonly { isOff: boolean; sentence: string; usual: number; accept: unknown; more: readonly string[] }[];
}
const chart = async () => ((await owner.json('/loss')) as unknown as Charts).charts[0];
/** So many jobs whose losses scatter about a usual one, in steps of the balance. */
async function finish(many: number, ...outs: readonly string[]) {
  for (let n = 0; n < many; n++) await finishPolished(site.shop, outs[n % outs.length]);
}
const ORDINARY = ['6.81', '6.80', '6.82', '6.81'] as const;

describe('a baseline of loss', () => {
  it('is accepted from twenty jobs on, by the owner alone', async () => {
    await finish(19, ...ORDINARY);
    expect(await page()).not.toContain('as the baseline');
    await finish(1, ...ORDINARY);
    expect(await page()).toContain('Accept these 20 jobs as the baseline');
    expect(await page()).toContain(`href="${AT}"`);
    for (const role of ['bench', 'counter', 'auditor'] as const) expect((await (await site.as(role)).get(AT)).status).toBe(403);
    expect((await owner.get('/loss/baseline/-/size/gold')).status).toBe(404);
  });

  it('asks for the password, and for the jobs that were looked at', async () => {
    const form = await owner.form(AT);
    expect((await owner.post(AT, { ...form, pin: PIN })).status).toBe(422);
    await finish(1, ...ORDINARY);
    const late = await owner.post(AT, { ...form, jobs: '21', password: PASSWORD });
    expect(late.status).toBe(422);
    expect(await late.text()).toContain('no longer those that you were shown');
    expect((await chart())?.accept).not.toBeNull();
    expect((await owner.post(AT, { ...(await owner.form(AT)), password: PASSWORD })).status).toBe(303);
    expect(await chart()).toMatchObject({
      accept: null,
      isOff: false,
      more: ['Later jobs are judged against the 21 jobs that were accepted as the baseline.'],
      sentence: 'No job was finished here since the baseline was accepted.',
    });
  });

  it('is accepted once', async () => {
    const again = await owner.post(AT, { ...(await owner.form(AT)), password: PASSWORD });
    expect(again.status).toBe(422);
    expect(await again.text()).toContain('accepted for this work already');
  });

  it('judges later jobs, learns nothing from them, and keeps its alarm', async () => {
    const usual = (await chart())?.usual;
    await finish(8, ...ORDINARY);
    expect(await chart()).toMatchObject({ isOff: false, usual });
    // Each loses about two hundredths of a gram more than before: too little for the job by itself.
    await finish(12, '6.79', '6.78', '6.80', '6.79');
    const found = await chart();
    expect(found).toMatchObject({ isOff: true, usual });
    expect(await page()).toContain('losses have run above usual since');
    await finish(30, ...ORDINARY);
    expect(await chart()).toMatchObject({ isOff: true, sentence: found?.sentence, usual });
  });
});
