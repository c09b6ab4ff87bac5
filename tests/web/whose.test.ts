// "Whose is this?": what a piece or stone without a label could be by its weight, what it cannot be, what nobody knows; and never what it is.
import { afterEach, beforeEach, expect, it } from 'vitest';
import { line } from '../shop.ts';
import { type RingJob, takeRingIn } from './job-in-house.ts';
import { openSite, type Site, type Visitor } from './site.ts';

let site: Site;
let bench: Visitor;
beforeEach(async () => {
  site = await openSite();
  bench = await site.as('bench');
});
afterEach(async () => {
  expect(site.bugs).toEqual([]);
  await site.close();
});

type Lines = readonly { readonly bag: string; readonly what: string }[];
type Json = {
  readonly answer: { said: string[]; could: Lines; cannot: Lines; unknown: Lines; otherSize: Lines } | null;
  readonly problems: readonly { field: string; say: string }[];
};
const ask = async (what: 'piece' | 'stone', text: string, more: Record<string, string> = {}) => {
  const balance = what === 'piece' ? site.shop.balance : site.shop.caratBalance;
  const asked = new URLSearchParams({ what, 'weight.text': text, 'weight.balance': balance, ...more });
  const answer = (await bench.json(`/whose?${asked}`)) as unknown as Json;
  const bags = (lines: Lines = []) => lines.map(({ bag }) => bag).sort();
  const { said = [], could, cannot, unknown, otherSize } = answer.answer ?? {};
  return {
    said: said.join(' ').replaceAll('\u00a0', ' '),
    ...{ could: bags(could), cannot: bags(cannot), unknown: bags(unknown), otherSize: bags(otherSize), problems: answer.problems },
  };
};
const ring = (grams: string) => takeRingIn(site.shop, { grams });
/** A ring with one stone of it out, of that many carats and that size. */
async function stoneOut({ job, bag, piece }: RingJob, carats: string | null, sizeMm = '6.5') {
  const stone = site.shop.newRef('stone');
  const noted = { seat: 'centre', species: 'sapphire', backing: 'open', state: 'sound', sizeMm };
  await site.shop.write(
    line('setting_noted', { piece, stone, ...noted }),
    line('stone_unset', { piece, stone, stones: 1, condition: 'sound', ...(carats ? { weight: site.shop.carats(carats) } : {}) }),
  );
  return { job, bag };
}

it('names the piece that it could be and those that it cannot be, and says what that is worth', async () => {
  const [light, heavy] = [await ring('3.20'), await ring('8.90')];
  const answer = await ask('piece', '3.20');
  expect(answer).toMatchObject({ could: [light.bag], cannot: [heavy.bag], unknown: [], problems: [] });
  expect(answer.said).toContain('3.20 g: of 2 pieces that are here it could be 1, and cannot be 1. Every other is too far off');
  expect(answer.said).toContain('That a weight fits does not say whose it is');
  expect(answer.said).not.toMatch(/the same|it is the|belongs/);
});

it('of two that weigh alike names both, and none that it is', async () => {
  const [one, other] = [await ring('3.20'), await ring('3.21')];
  const answer = await ask('piece', '3.20');
  expect(answer.could).toEqual([one.bag, other.bag].sort());
  expect(answer.said).not.toContain('Every other');
});

it('could be a piece that has lost the dust of its work since, and not one that has gained', async () => {
  // The job re-tips: the table of usual losses lets it leave a little as dust; nothing lets it gain.
  const { bag } = await ring('6.82');
  expect((await ask('piece', '6.79')).could).toEqual([bag]);
  expect((await ask('piece', '6.95')).cannot).toEqual([bag]);
});

it('is not known to be none of those that were never weighed', async () => {
  const known = await ring('3.20');
  const [customer, job, piece, bag] = [
    site.shop.newRef('customer'),
    site.shop.newRef('job'),
    site.shop.newRef('piece'),
    site.shop.newBag(),
  ];
  const parts = [{ part: 'shank', metal: 'gold-750' }];
  await site.shop.write(
    line('customer_met', { customer, name: 'Ines Holt', phone: '07700 900321' }),
    line('job_opened', { job, bag, customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, kind: 'ring', description: 'Band', parts, stones: 0 }),
  );
  const answer = await ask('piece', '3.20');
  expect(answer).toMatchObject({ could: [known.bag], unknown: [bag] });
  expect(answer.said).toContain('1 was not weighed and cannot be left out.');
  expect(answer.said).not.toContain('Every other');
});

it('tells stones that are out by their weight, and says how many others of the size would weigh as much', async () => {
  const [large, small] = [await stoneOut(await ring('6.82'), '1.204'), await stoneOut(await ring('5.10'), '0.500')];
  const unweighed = await stoneOut(await ring('4.10'), null);
  const answer = await ask('stone', '1.204');
  expect(answer).toMatchObject({ could: [large.bag], cannot: [small.bag], unknown: [unweighed.bag] });
  expect(answer.said).toMatch(/About \d+ of 100 other stones of that size would weigh as much/);
});

it('leaves out a stone that was noted as another size, where the find is measured', async () => {
  const [round, long] = [await stoneOut(await ring('6.82'), '1.204', '6.5'), await stoneOut(await ring('5.10'), '1.204', '8.0')];
  expect((await ask('stone', '1.204')).could).toEqual([round.bag, long.bag].sort());
  expect(await ask('stone', '1.204', { sizeMm: '6.6' })).toMatchObject({ could: [round.bag], otherSize: [long.bag] });
});

it('takes no weight that is wet for its own, and keeps what was typed', async () => {
  await ring('3.20');
  const path = `/whose?${new URLSearchParams({ what: 'piece', 'weight.text': '3.2o', 'weight.balance': site.shop.balance })}`;
  const response = await bench.get(path);
  const text = await response.text();
  expect(response.status).toBe(422);
  expect(text).toContain('value="3.2o"');
  expect(await ask('piece', '3.20', { 'weight.dry': 'unsure' })).toMatchObject({ could: [], problems: [{ field: 'weight' }] });
});

it('says where there is nothing to hold it against, and is led to from the bench', async () => {
  expect((await ask('stone', '1.204')).said).toBe('1.204 ct: there are no stones and packets that are out.');
  expect(await (await bench.get('/bench')).text()).toContain('href="/whose"');
  expect(await (await bench.get('/whose')).text()).not.toContain('role="status"');
});
