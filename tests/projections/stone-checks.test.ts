// Stones that were weighed more than once: what is compared is the same stones alone, and everything else cannot tell.
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Letter } from '../../src/letter/words.ts';
import type { StoneCheck } from '../../src/projections/stone-checks.ts';
import { line } from '../shop.ts';
import { takeRingIn } from '../web/job-in-house.ts';
import { openSite, type Site, type Visitor } from '../web/site.ts';

let site: Site;
let owner: Visitor;
beforeEach(async () => {
  site = await openSite();
  owner = await site.as('owner');
});
afterEach(() => site.close());

const carats = (text: string, more = {}) => site.shop.carats(text, { repeats: [text], because: 'as read', ...more });
const plain = (text: string) => text.replace(/<[^>]*>/g, ' ').replace(/[ \u00a0\n]+/g, ' ');

/** The checks of a job's stones as the Stones page answers them, and what page, reckoning and letter say. */
async function said(job: string) {
  const { weights } = (await owner.json(`/jobs/${job}/stones`)) as { weights: readonly StoneCheck[] };
  const pages = ['stones', 'reckoning', 'letter'].map(async (page) => plain(await (await owner.get(`/jobs/${job}/${page}`)).text()));
  const [stones = '', reckoning = '', letter = ''] = await Promise.all(pages);
  return { checks: weights, stones, reckoning, letter };
}

async function stoneOut(text: string, kind: 'stone' | 'packet' = 'stone', stones = 1, more = {}) {
  const { job, piece } = await takeRingIn(site.shop);
  const thing = site.shop.newRef(kind);
  await site.shop.write(line('stone_unset', { piece, [kind]: thing, stones, condition: 'sound', weight: carats(text, more) }));
  const weigh = (again: string, state = 'loose', dry = {}) =>
    site.shop.write(line('stone_weighed', { of: thing, state, weight: carats(again, dry) }));
  return { job, piece, thing, weigh };
}

it.each([
  ['with glue', {}],
  ['wet', {}],
  ['loose', { dry: 'unsure' }],
  ['loose', { dry: 'no' }],
] as const)('weighed %s %j cannot tell, on page, reckoning, letter and in JSON', async (state, dry) => {
  const { job, weigh } = await stoneOut('1.004');
  await weigh('1.050', state, dry);
  const { checks, ...pages } = await said(job);
  expect(checks).toMatchObject([{ verdict: 'cannot tell', unfit: 'not they alone', compared: null }]);
  for (const page of Object.values(pages)) {
    expect(page).toContain('with glue or dirt, or with something else on the pan: these weights cannot tell.');
    expect(page).not.toMatch(/two weights (do not )?agree|Not weighed twice/);
  }
});

it('weighed wet as it came out, and dry after, cannot tell', async () => {
  const { job, weigh } = await stoneOut('1.050', 'stone', 1, { dry: 'no' });
  await weigh('1.004');
  expect((await said(job)).checks).toMatchObject([{ verdict: 'cannot tell', unfit: 'not they alone' }]);
});

it('three weighed together and then the two that are left are not the same stones: nothing is short', async () => {
  const { job, piece, thing, weigh } = await stoneOut('0.300', 'packet', 3);
  await site.shop.write(line('stone_set', { piece, packet: thing, stones: 1, left: 2 }));
  await weigh('0.200');
  const { checks, stones, reckoning, letter } = await said(job);
  expect(checks).toMatchObject([{ verdict: 'cannot tell', unfit: 'not the same stones', out: 3, setAgain: 1, loose: 2 }]);
  for (const page of [stones, reckoning, letter]) expect(page).toContain('not the same stones each time: these weights cannot tell.');
  expect(letter).not.toContain('does not weigh what it weighed before');
});

it('several weighed together twice are told by their count and their weight, in the letter too', async () => {
  const { job, weigh } = await stoneOut('0.300', 'packet', 3);
  await weigh('0.300');
  const { checks, reckoning, letter } = await said(job);
  expect(checks).toMatchObject([{ verdict: 'agrees', before: { stones: 3 }, after: { stones: 3 }, compared: { missing: 0 } }]);
  for (const page of [reckoning, letter])
    expect(page).toContain('3 stones in, 3 out, 0.300 ct in and 0.300 ct out: the two weights agree, as far as this balance can tell.');
});

it('a stone set and taken out again is compared with itself, and counted as what it is', async () => {
  const { job, piece, thing } = await stoneOut('1.004');
  await site.shop.write(line('stone_set', { piece, stone: thing, stones: 1 }));
  await site.shop.write(line('stone_unset', { piece, stone: thing, stones: 1, condition: 'sound', weight: carats('0.900') }));
  const { checks, letter } = await said(job);
  expect(checks).toMatchObject([{ verdict: 'does not agree', out: 2, setAgain: 1, loose: 1 }]);
  expect(letter).toContain('A stone does not weigh what it weighed before.');
});

it('a letter says beside each stone what it is worth that its two weights agree', async () => {
  const { job, weigh } = await stoneOut('1.004');
  await weigh('1.004');
  const { letters } = { letters: ((await owner.json(`/jobs/${job}/letter`)) as { letter: Letter }).letter };
  expect(letters.stones[0]?.told?.replaceAll('\u00a0', ' ')).toBe(
    'The stone weighed 1.004 ct in and 1.004 ct out, read to 0.001 ct: the two weights agree, as far as this balance can tell. Some other stones of this size would match too; the drawing and photographs show the rest.',
  );
});

it('of a packet that was opened since it was weighed weight tells nothing of the one that is left', async () => {
  const { job, piece, thing } = await stoneOut('0.300', 'packet', 3);
  await site.shop.write(line('stone_set', { piece, packet: thing, stones: 2, left: 1 }));
  const other = site.shop.newRef('stone');
  await site.shop.write(line('stone_unset', { piece, stone: other, stones: 1, condition: 'sound', weight: carats('0.100') }));
  const { papers } = (await owner.json(`/jobs/${job}/stones`)) as { papers: unknown };
  expect(papers).toBeNull();
});
