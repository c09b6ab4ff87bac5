// Why a job does not agree, loss over time and a period's list, as the owner reads them: in words that need no statistics.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import { line } from '../shop.ts';
import { inputsOf, openSite, type Site, type Visitor } from './site.ts';

let site: Site;
let owner: Visitor;
beforeEach(async () => {
  site = await openSite();
  owner = await site.as('owner');
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

const text = async (path: string, who = owner) =>
  (await (await who.get(path)).text())
    .replace(/^[\s\S]*<main/, '<main')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

/** A ring of 20 g, polished and weighed again; finished unless told otherwise. */
async function ring(out: string, { place, finished = true }: { place?: Ref<'place'>; finished?: boolean } = {}) {
  const { shop } = site;
  const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  await shop.write(
    line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece, kind: 'ring', description: 'Signet ring', stones: 0, weight: shop.grams('20.00') },
      parts: [{ part: 'shank', metal: 'gold-750' }],
    }),
    line('work_agreed', {
      ...{ job, steps: ['polish'], priceKind: 'free', promise: '2026-12-24', dust: 'shop', cutMetal: 'customer', oldParts: 'customer' },
      ...{ terms: '1', agreedBy: 'signature' },
    }),
    ...(place ? [line('moved', { of: job, to: place })] : []),
  );
  const weight = shop.grams(out, { repeats: [out], because: 'as read' });
  shop.clock.now = instant(shop.clock.now + 60_000);
  await shop.write(line('piece_weighed', { piece, state: 'polished', weight }), ...(finished ? [line('work_finished', { job })] : []));
  return { job, piece };
}

describe('why a job does not agree', () => {
  it('names every cause that would explain the gap, and what to do now, with no p or z', async () => {
    const { job } = await ring('18.50', { finished: false });
    const page = await text(`/jobs/${job}/reckoning`);
    expect(page).toContain('Why does it not agree?');
    expect(page).toContain('the figures cannot say which');
    expect(page).toContain('Weigh the piece again now, clean and dry');
    expect(page).toContain('The weight as it came in cannot be taken again');
    expect(page).not.toMatch(/\b[pz] ?=|sigma|probab|χ/i);
  });

  it('finds the one plain slip: digits swapped', async () => {
    const { job } = await ring('02.00', { finished: false });
    expect(await text(`/jobs/${job}/reckoning`)).toContain('digits swapped: 02.00 written for 20.00');
  });

  it('asks for nothing where the weights agree', async () => {
    const { job } = await ring('19.99');
    const page = await text(`/jobs/${job}/reckoning`);
    expect(page).toContain('It agrees, as far as the balance can tell');
    expect(page).not.toContain('What would explain it');
    expect(page).toContain('Reckoned with version');
  });

  it('is the same as JSON, with the version of the arithmetic and the size of the log', async () => {
    const { job } = await ring('19.99');
    expect(await owner.json(`/jobs/${job}/reckoning`)).toMatchObject({ calcVersion: '2', state: 'level', closed: { lossNg: 10_000_000 } });
  });
});

describe('the form at the bench', () => {
  it('says what is expected, asks whether the other job’s piece is in the hand, and takes the reading with a reason', async () => {
    const { shop } = site;
    const other = await ring('19.98', { finished: false });
    const [{ bag } = { bag: '' }] = await shop.store.read("SELECT json_extract(state, '$.says.bag') AS bag FROM thing WHERE id = ?", [
      other.job,
    ]);
    const { job, piece } = await ring('17.20', { finished: false });
    const path = `/jobs/${job}/write/piece_weighed`;
    expect(await text(path)).toMatch(/expected 17\.20 ± 0\.0\d g/);
    const fields = { ...(await owner.form(path)), piece, state: 'finished', 'weight.text': '19.98', 'weight.balance': shop.balance };
    const asked = await owner.post(path, fields);
    const html = await asked.text();
    expect(asked.status).toBe(422);
    expect(html).toContain(`Job ${bag} weighs 19.98\u00a0g. Is that the piece in your hand?`);
    expect(html).toContain('value="19.98"');
    const again = { ...inputsOf(html), state: 'finished', 'weight.again': '19.98', 'weight.because': 'A bar was put in' };
    expect((await owner.post(path, again)).status).toBe(303);
  });
});

describe('loss', () => {
  it('is not judged from few jobs, and is shown to the owner alone', async () => {
    await ring('19.98');
    expect(await text('/loss')).toContain('Too few jobs to judge (1 of 20).');
    for (const role of ['bench', 'counter', 'auditor'] as const) {
      const other = await site.as(role);
      expect([(await other.get('/loss')).status, (await other.get('/owner/weights')).status]).toEqual([403, 403]);
    }
  });

  it('is ordinary over twenty like jobs, and says since when it has run above usual', { timeout: 60_000 }, async () => {
    const place = site.shop.newRef('place');
    await site.shop.write(line('place_named', { place, name: 'Bench 2', kind: 'bench' }));
    for (let i = 0; i < 20; i++) await ring(i % 2 === 0 ? '19.98' : '19.97', { place });
    const later = await site.as('owner');
    expect(await text('/loss', later)).toContain(
      'Bench 2 · cleaning and polishing · gold Ordinary: no alarm in 20 jobs. A small change takes more jobs than these to show.',
    );
    for (let i = 0; i < 12; i++) await ring('19.91', { place });
    const page = await text('/loss', await site.as('owner'));
    expect(page).toContain('losses have run above usual since');
    expect(page).toContain('such a signal comes once in about 50 jobs');
  });
});

describe('the weights of a period', () => {
  it('say how many were checked, how many chance alone would show, and how many did', async () => {
    for (const out of ['19.98', '20.00', '18.00']) await ring(out);
    const page = await text('/owner/weights?from=2026-12-01&to=2026-12-01');
    expect(page).toMatch(/3 checked; chance alone would make almost none of them not agree; 1 did not\./);
    expect(page).toContain('1 of them stands out even so');
    expect(await text('/owner/weights?from=2026-11-01&to=2026-11-30')).toContain('No finished job of these days was checked by weight.');
  });
});
