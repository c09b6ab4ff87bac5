// What ends a session at once, through the whole program: a new PIN, somebody who leaves; and what the owner's password is asked for.
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keepPhoto } from '../../src/store/photos.ts';
import { line } from '../shop.ts';
import { openSite, PASSWORD, PIN, type Site, type Visitor } from './site.ts';

let site: Site;
let owner: Visitor;
let bench: Visitor;
beforeEach(async () => {
  site = await openSite();
  [owner, bench] = [await site.as('owner'), await site.as('bench')];
});
afterEach(() => site.close());

const who = (role: 'owner' | 'bench') => site.people.get(role) ?? '';
const isIn = async (visitor: Visitor) => (await visitor.get('/')).status === 200;

describe('a session', () => {
  it('ends at once when its person gets a new PIN; nobody else’s does', async () => {
    expect((await owner.post('/setup/pin', { person: who('bench'), pin: '771144', password: PASSWORD })).status).toBe(303);
    expect([await isIn(bench), await isIn(owner)]).toEqual([false, true]);
    expect((await site.nobody.post('/sign-in', { person: who('bench'), pin: PIN })).status).toBe(422);
    expect((await site.nobody.post('/sign-in', { person: who('bench'), pin: '771144' })).status).toBe(303);
  });
  it('ends at once, with their PIN, when somebody leaves', async () => {
    const form = await owner.form('/write/person_left');
    expect((await owner.post('/write/person_left', { ...form, person: who('bench') })).status).toBe(422);
    expect((await owner.post('/write/person_left', { ...form, person: who('bench'), password: PASSWORD })).status).toBe(303);
    expect([await isIn(bench), await isIn(owner)]).toEqual([false, true]);
    expect((await site.nobody.post('/sign-in', { person: who('bench'), pin: PIN })).status).toBe(422);
    expect((await bench.postJson('/drafts', {})).status).toBe(401);
    const answer = await site.shop.tell([line('note_added', { job: 'job_x', text: 'x' })], { by: who('bench') as never });
    expect(answer).toMatchObject({ answer: 'refused' });
  });
  it('that has ended shows no photograph that its browser kept: each is asked for anew', async () => {
    const picture = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#fff' } })
      .png()
      .toBuffer();
    const kept = await keepPhoto(site.web.photosDir, new Uint8Array(picture));
    const path = `/photos/${'hash' in kept ? kept.hash : ''}`;
    const shown = await bench.get(path);
    const tag = { 'if-none-match': shown.headers.get('etag') ?? '' };
    expect([shown.status, shown.headers.get('cache-control')]).toEqual([200, 'private, no-cache']);
    expect((await bench.get(path, tag)).status).toBe(304);
    expect((await site.nobody.get(path, tag)).status).toBe(303);
  });
  it('of the owner goes on where they change their own PIN, and nowhere else', async () => {
    const other = await site.as('owner');
    const answer = await owner.post('/setup/pin', { person: who('owner'), pin: '771144', password: PASSWORD });
    const fresh = (answer.headers.getSetCookie()[0] ?? '').split(';')[0] ?? '';
    expect([await isIn(owner), await isIn(other)]).toEqual([false, false]);
    expect((await site.nobody.get('/setup', { cookie: fresh })).status).toBe(200);
  });
});

describe('the owner’s password', () => {
  it('is asked before the signing seed is shown, and a PIN is none', async () => {
    expect(await (await owner.get('/setup/recovery-sheet')).text()).not.toMatch(/[0-9a-f]{64}/);
    for (const password of ['', PIN, 'guessed']) expect((await owner.post('/setup/recovery-sheet', { password })).status).toBe(422);
    expect((await owner.post('/setup/recovery-sheet', { password: PASSWORD })).status).toBe(200);
  });
  it('is given to an owner alone, and only with an owner’s', async () => {
    const give = (person: string, password: string) => owner.post('/setup/pin', { person, newPassword: 'five words are better', password });
    expect((await give(who('bench'), PASSWORD)).status).toBe(422);
    expect((await give(who('owner'), 'guessed')).status).toBe(422);
    expect((await give(who('owner'), PASSWORD)).status).toBe(303);
    const tried = await site.web.access.tryCredential(site.shop.owner, null, 'password', 'five words are better');
    expect(tried.is).toBe('right');
  });
  it('is not asked to let a colleague try again, but nobody clears their own', async () => {
    for (let n = 0; n < 4; n++) await site.nobody.post('/sign-in', { person: who('bench'), pin: '0000' });
    expect((await site.nobody.post('/sign-in', { person: who('bench'), pin: PIN })).status).toBe(422);
    expect((await owner.post('/setup/tries', { person: who('owner') })).status).toBe(422);
    expect((await bench.post('/setup/tries', { person: who('bench') })).status).toBe(403);
    expect((await owner.post('/setup/tries', { person: who('bench') })).status).toBe(303);
    expect((await site.nobody.post('/sign-in', { person: who('bench'), pin: PIN })).status).toBe(303);
  });
});
