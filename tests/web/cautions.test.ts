// Which cautions a form and a job show: by the stones noted, the marks read and the weights written.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { line } from '../shop.ts';
import { type RingJob, takeRingIn } from './job-in-house.ts';
import { openSite, type Site, type Visitor } from './site.ts';

let site: Site;
let bench: Visitor;
let ring: RingJob;
beforeEach(async () => {
  site = await openSite();
  bench = await site.as('bench');
  ring = await takeRingIn(site.shop);
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const page = async (path: string) => (await (await bench.get(path)).text()).replaceAll('\u00a0', ' ');
const form = (entry: string) => page(`/jobs/${ring.job}/write/${entry}`);
const note = (species: string, backing: string) =>
  site.shop.write(
    line('setting_noted', { piece: ring.piece, stone: site.shop.newRef('stone'), seat: 'centre', species, backing, state: 'sound' }),
  );
const add = async (grams: string) => {
  const stock = site.shop.newRef('stock');
  await site.shop.write(
    line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: site.shop.grams('20.00') }),
    line('metal_added', { piece: ring.piece, stock, metal: 'gold-750', weight: site.shop.grams(grams), what: 'shank' }),
  );
};
const ADDITION = 'is added to a marked piece';

describe('a form', () => {
  it('says what the stones noted in the job ask of the step', async () => {
    await note('emerald', 'open');
    expect(await form('piece_cleaned')).toMatch(/centre, emerald\. ultrasonic[^.]*take it out/);
    expect(await form('piece_weighed')).not.toContain('centre, emerald');
  });
  it('says of an unknown foiled stone: no heat, no water, or decline', async () => {
    await note('unknown', 'foiled');
    expect(await form('metal_added')).toContain('no heat, no water, or decline');
  });
  it('says nothing of marks where none was read, and something of cutting where one was', async () => {
    expect(await form('metal_cut')).not.toContain('reducing an article to scrap');
    await site.shop.write(line('mark_read', { piece: ring.piece, kind: 'fineness', where: 'inside', struck: '750', legible: 'clear' }));
    expect(await form('metal_cut')).toContain('reducing an article to scrap');
  });
});

describe('metal added to a marked piece', () => {
  beforeEach(() =>
    site.shop.write(line('mark_read', { piece: ring.piece, kind: 'fineness', where: 'inside', struck: '750', legible: 'clear' })),
  );
  it('is everyday work at 0.30 g: neither form nor job say anything', async () => {
    await add('0.30');
    expect(await form('metal_added')).not.toContain(ADDITION);
    expect(await page(`/jobs/${ring.job}`)).not.toContain(ADDITION);
  });
  it('is cautioned on the job and on the next form once it nears one gram of gold (Hallmarking Act 1973 s5(4), text of 2007)', async () => {
    await add('0.95');
    expect(await page(`/jobs/${ring.job}`)).toContain(`0.95 g so far ${ADDITION}; 1.00 g is let through`);
    expect(await form('metal_added')).toContain(ADDITION);
  });
  it('is not a matter for a shop in the United States', async () => {
    await add('0.95');
    await site.shop.write(
      line('policy_set', {
        shop: site.shop.shop,
        zone: 'America/New_York',
        country: 'US',
        currency: 'USD',
        staffing: 'alone',
        words: 'us',
      }),
    );
    expect(await page(`/jobs/${ring.job}`)).not.toContain(ADDITION);
  });
});
