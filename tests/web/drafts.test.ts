// What was typed survives: a lock, a session that ended, a reload; it is never a PIN, and never somebody else's.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { instant } from '../../src/units/dates.ts';
import { type RingJob, takeRingIn } from './job-in-house.ts';
import { inputsOf, openSite, PIN, type Site, type Visitor } from './site.ts';

const MINUTE = 60_000;
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

const path = () => `/jobs/${ring.job}/write/note_added`;
const pass = (minutes: number) => {
  site.shop.clock.now = instant(site.shop.clock.now + minutes * MINUTE);
};
const written = async () => Number((await site.shop.store.read("SELECT COUNT(*) AS n FROM entry WHERE type = 'note_added'"))[0]?.n);
const backOf = (answer: Response) => new URL(answer.headers.get('location') ?? '', 'http://x').searchParams.get('back') ?? '';
/** Text fields of a form: the first that is not hidden. */
const typedInto = async (who: Visitor, address: string) => inputsOf(await (await who.get(address)).text());
const TEXT = 'Claw at two o’clock is worn through';

describe('a form posted after ten idle minutes', () => {
  it('is kept, written nowhere, and opens again behind the sign-in with everything typed and its own key', async () => {
    const form = await bench.form(path());
    pass(11);
    const answer = await bench.post(path(), { ...form, about: ring.job, text: TEXT, pin: PIN });
    const back = backOf(answer);
    expect([answer.status, await written()]).toEqual([303, 0]);
    expect(back).toBe(`${path()}?draft=${form.formKey}`);
    const again = await site.as('bench');
    const shown = await typedInto(again, back);
    expect([shown.text, shown.formKey]).toEqual([TEXT, form.formKey]);
    expect((await again.post(path(), { ...shown, about: ring.job })).status).toBe(303);
    expect(await written()).toBe(1);
  });
  it('is forgotten once it is written', async () => {
    const form = await bench.form(path());
    await bench.post('/drafts', { ...form, text: TEXT, 'draft.path': path() });
    expect((await bench.json('/drafts')).drafts).toHaveLength(1);
    await bench.post(path(), { ...form, about: ring.job, text: TEXT });
    expect((await bench.json('/drafts')).drafts).toHaveLength(0);
  });
});

describe('a form posted when its session is gone', () => {
  it('is opened by whoever signs in with its key, within the hour', async () => {
    const form = await bench.form(path());
    const back = backOf(await site.nobody.post(path(), { ...form, text: TEXT }));
    expect((await typedInto(bench, back)).text).toBe(TEXT);
    pass(61);
    await site.nobody.post(path(), { ...(await (await site.as('bench')).form(path())), text: 'another' });
    expect((await typedInto(await site.as('bench'), back)).text).toBe('');
  });
  it('does not fill the disk: twenty strangers’ forms are kept, and no long one', async () => {
    const form = await bench.form(path());
    const key = (n: number) => `${String(form.formKey).slice(0, 23)}${String(n).padStart(3, '0')}`;
    for (let n = 0; n < 25; n++) await site.nobody.post(path(), { formKey: key(n), text: 'x' });
    const [row] = await site.shop.store.access.read('SELECT COUNT(*) AS n FROM draft', []);
    expect(Number(row?.n)).toBe(20);
    expect(backOf(await bench.post('/lock', {}))).toBe('');
    expect((await site.nobody.post(path(), { formKey: form.formKey ?? '', text: 'x'.repeat(200_000) })).status).toBe(413);
  });
});

describe('a draft', () => {
  it('is kept as it is typed and offered on every page until it is written or thrown away', async () => {
    const form = await bench.form(path());
    expect((await bench.post('/drafts', { ...form, text: TEXT, 'draft.path': path() })).status).toBe(204);
    expect(await (await bench.get('/')).text()).toContain('1 not written yet');
    const [draft] = (await bench.json('/drafts')).drafts as { href: string; key: string; bag: string; title: string }[];
    expect(draft?.bag).toBe(ring.bag);
    expect((await typedInto(bench, draft?.href ?? '')).text).toBe(TEXT);
    await bench.post('/drafts/drop', { key: draft?.key ?? '' });
    expect(await (await bench.get('/')).text()).not.toContain('not written yet');
  });
  it('never holds a PIN, and is not readable in the file', async () => {
    const form = await bench.form(path());
    await bench.post('/drafts', { ...form, text: TEXT, pin: '998877', 'draft.path': path() });
    const [row] = await site.shop.store.access.read('SELECT fields FROM draft', []);
    expect(String(row?.fields)).not.toContain('Claw');
    const reopened = JSON.stringify(
      await site.web.access.draftsOf((await site.web.access.session(await tokenOf('bench')))?.person ?? site.shop.owner),
    );
    expect(reopened).toContain('Claw');
    expect(reopened).not.toContain('998877');
  });
  it('is nobody else’s', async () => {
    const form = await bench.form(path());
    await bench.post('/drafts', { ...form, text: TEXT, 'draft.path': path() });
    const owner = await site.as('owner');
    expect((await owner.json('/drafts')).drafts).toEqual([]);
    expect((await typedInto(owner, `${path()}?draft=${form.formKey}`)).text).toBe('');
    await owner.post('/drafts', { ...form, text: 'overwritten', 'draft.path': path() });
    await owner.post('/drafts/drop', { key: form.formKey ?? '' });
    expect((await typedInto(bench, `${path()}?draft=${form.formKey}`)).text).toBe(TEXT);
  });
  it('leads to no other site', async () => {
    const form = await bench.form(path());
    for (const to of ['https://example.org/', '//example.org/', 'javascript:alert(1)'])
      await bench.post('/drafts', { ...form, text: TEXT, 'draft.path': to });
    const drafts = (await bench.json('/drafts')).drafts as { href: string }[];
    expect(drafts.filter(({ href }) => !/^\/[\w-]/.test(href))).toEqual([]);
  });
  it('does not outlive a fortnight', async () => {
    const form = await bench.form(path());
    await bench.post('/drafts', { ...form, text: TEXT, 'draft.path': path() });
    pass(15 * 24 * 60);
    const later = await site.as('bench');
    await later.post('/drafts', { ...(await later.form(path())), text: 'another', 'draft.path': path() });
    expect((await later.json('/drafts')).drafts).toHaveLength(1);
  });
});

/** A fresh session of somebody of that role, to learn who they are. */
async function tokenOf(role: 'bench'): Promise<string> {
  await site.as(role);
  const [row] = await site.shop.store.access.read("SELECT person FROM draft WHERE person <> 'nobody'", []);
  return site.web.access.beginSession(String(row?.person) as typeof site.shop.owner, 'this-pc');
}

describe('a PIN typed wrong ten times', () => {
  it('waits, longer each time, and locks out no colleague at the same PC', async () => {
    const signIn = (person: string, pin: string) => site.nobody.post('/sign-in', { person, pin, back: '/' });
    const [row] = await site.shop.store.read("SELECT id FROM thing WHERE kind = 'person' AND state ->> '$.role' = 'bench'");
    const person = String(row?.id);
    await site.as('owner');
    const waits: number[] = [];
    for (let tried = 0; tried < 10; tried++) {
      const text = await (await signIn(person, '0000')).text();
      waits.push(Number(/Wait (\d+) seconds/.exec(text)?.[1] ?? 0));
      pass((waits.at(-1) ?? 0) / 60);
    }
    expect(waits.slice(0, 2)).toEqual([0, 0]);
    expect(waits.slice(2, 7).every((wait, n, all) => n === 0 || wait > (all[n - 1] ?? 0))).toBe(true);
    expect(waits.slice(7)).toEqual([300, 300, 300]);
    await signIn(person, '0000');
    expect((await signIn(person, PIN)).status).toBe(422);
    expect((await signIn(site.shop.owner, PIN)).status).toBe(303);
    pass(10);
    expect((await signIn(person, PIN)).status).toBe(303);
  });
});
