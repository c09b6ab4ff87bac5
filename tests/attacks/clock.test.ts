// A clock set four years on, and put right again: nothing acknowledged and nothing typed is lost, and every page says that the clock disagrees.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { instant } from '../../src/units/dates.ts';
import { type RingJob, takeRingIn } from '../web/job-in-house.ts';
import { type Fields, openSite, type Site, type Visitor } from '../web/site.ts';

const DAY = 86_400_000;
const YEARS = 4 * 365 * DAY;
const TEXT = 'Claw at two o’clock is worn through';
let site: Site;
let ring: RingJob;
let bench: Visitor;
/** The program's own elapsed time, which no clock changes. */
let elapsed = 0;
beforeEach(async () => {
  elapsed = 0;
  site = await openSite({}, () => elapsed);
  ring = await takeRingIn(site.shop);
  bench = await site.as('bench');
});
afterEach(() => site.close());

const setClock = (byMs: number) => {
  site.shop.clock.now = instant(site.shop.clock.now + byMs);
};
const path = () => `/jobs/${ring.job}/write/note_added`;
const drafts = async () => ((await bench.json('/drafts')).drafts as { href: string }[]).map(({ href }) => href.slice(-26));
async function typeDraft(): Promise<Fields> {
  const form = { ...(await bench.form(path())), about: ring.job, text: TEXT };
  expect((await bench.post('/drafts', { ...form, 'draft.path': path() })).status).toBe(204);
  return form;
}

describe('what was typed', () => {
  it('outlives a clock that is years ahead, and one that was, and is offered all the while', async () => {
    const first = await typeDraft();
    setClock(YEARS);
    bench = await site.as('bench');
    const ahead = await typeDraft();
    expect(await drafts()).toEqual(expect.arrayContaining([first.formKey, ahead.formKey]));
    setClock(-YEARS);
    bench = await site.as('bench');
    // Thirty forms more: those saved by a clock that was ahead hide none of them.
    const more: unknown[] = [];
    for (let n = 0; n < 30; n++) more.push((await typeDraft()).formKey);
    expect((await drafts()).toSorted()).toEqual([first.formKey, ahead.formKey, ...more].map(String).toSorted());
  });

  it('and posted as the clock jumped, its session over at once, opens again after signing in', async () => {
    const form: Fields = { ...(await bench.form(path())), about: ring.job, text: TEXT };
    setClock(YEARS);
    const answer = await bench.post(path(), form);
    const back = new URL(answer.headers.get('location') ?? '', 'http://x').searchParams.get('back') ?? '';
    setClock(-YEARS);
    // Somebody else's form meanwhile forgets none.
    await site.nobody.post(path(), { ...(await (await site.as('owner')).form(path())), text: 'another' });
    bench = await site.as('bench');
    expect(await bench.form(back)).toMatchObject({ text: TEXT, formKey: form.formKey });
  });

  it('is forgotten a fortnight of the program’s own time after it was typed, and beyond a hundred', async () => {
    const old = await typeDraft();
    elapsed += 14 * DAY;
    expect(await drafts()).toEqual([old.formKey]);
    elapsed += 1;
    const next = await typeDraft();
    expect(await drafts()).toEqual([next.formKey]);
    for (let n = 0; n < 101; n++) {
      elapsed += 1;
      await typeDraft();
    }
    const kept = await drafts();
    expect([kept.length, kept.includes(String(next.formKey))]).toEqual([101, false]);
  });
});

describe('what was answered', () => {
  it('is there, once, through a clock years on and back, and the record is whole', async () => {
    const sent: { readonly form: Fields; readonly to: string | null }[] = [];
    for (const jump of [0, YEARS, 3 * DAY, -YEARS, -DAY]) {
      setClock(jump);
      bench = await site.as('bench');
      const form: Fields = { ...(await bench.form(path())), about: ring.job, text: TEXT };
      sent.push({ form, to: (await bench.post(path(), form)).headers.get('location') });
    }
    expect(sent.every(({ to }) => to !== null)).toBe(true);
    for (const { form, to } of sent) expect((await bench.post(path(), form)).headers.get('location')).toBe(to);
    expect(await site.shop.store.check()).not.toHaveProperty('bad');
  });
});

describe('a clock that disagrees with the newest entry', () => {
  const pages = async () => Promise.all(['/', '/bench', path(), '/sign-in', '/trail'].map(async (at) => (await bench.get(at)).text()));
  const all = (words: string) => Array(5).fill(expect.stringContaining(words));
  it('is said on every page and to the machine, ahead before anything is written, and behind after', async () => {
    expect(await pages()).toEqual(Array(5).fill(expect.not.stringContaining('machine’s clock')));
    setClock(YEARS);
    bench = await site.as('bench');
    expect(await pages()).toEqual(all('the clock is ahead'));
    await bench.post(path(), { ...(await bench.form(path())), about: ring.job, text: TEXT });
    setClock(-YEARS);
    bench = await site.as('bench');
    expect(await pages()).toEqual(all('this machine’s clock has not reached'));
    expect(await bench.json('/readyz')).toMatchObject({ ready: true, told: [expect.stringContaining('clock')] });
  });
});
