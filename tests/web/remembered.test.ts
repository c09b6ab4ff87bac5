// What a browser was given it sends back: a ledger put back from an older copy hears of it with the first request, and takes nothing more.
import { Hono } from 'hono';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import type { Store } from '../../src/store/open.ts';
import type { Env, Web } from '../../src/web/session/context.ts';
import { remembered } from '../../src/web/session/remembered.ts';
import { type GoodLedger, goodLedger } from '../attacks/good-ledger.ts';
import { openSite } from './site.ts';

let good: GoodLedger;
beforeAll(async () => {
  good = await goodLedger();
});
afterEach(() => good.tidy());
afterAll(() => good.remove());

/** A page over this ledger, behind what remembers; asked with the cookie that a browser has. */
function over(store: Store, device: string | null = 'screen-1') {
  const app = new Hono<Env>();
  app.use('*', async (c, next) => {
    c.set('device', device);
    c.set('person', { id: 'p' as never, name: 'Ada', role: 'owner' });
    c.header('Cache-Control', 'no-store');
    await next();
  });
  app.use('*', remembered({ store, baseUrl: 'http://127.0.0.1:8417' } as Web));
  app.get('/', (c) => c.text('a page'));
  return async (cookie = '') => {
    const answer = await app.request('/', { headers: { cookie } });
    return (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  };
}

it('tells an older copy what it lacks, and a forged one nothing', async () => {
  const newer = await good.open(good.copy());
  for (const n of [1, 2]) await newer.record(good.note(`late ${n}`, 'late'));
  const cookie = await over(newer)();
  expect(cookie).toMatch(/^lemel-seen=14\./);
  expect(await over(newer)(cookie)).toBe('');

  const older = await good.open(good.copy());
  for (const forged of [cookie.replace('=14.', '=15.'), cookie.replace('=14.', '=014.'), `${cookie}.x`, 'lemel-seen=', 'lemel-seen=9.a.b'])
    await over(older)(forged);
  await over(older, null)(cookie);
  expect(older.readOnly).toBeNull();
  await over(older)(cookie);
  expect(older.readOnly).toMatch(/^Entries 12 to 13 are missing.*screen-1/);
});

it('is given to people who are signed in, and not to others', async () => {
  const site = await openSite();
  const owner = await site.as('owner');
  expect((await owner.get('/')).headers.get('set-cookie')).toMatch(/lemel-seen=\d+\.[\w-]{43}\.[\w-]{86};.*HttpOnly/);
  expect((await site.nobody.get('/sign-in')).headers.get('set-cookie') ?? '').not.toMatch(/lemel-seen/);
  await site.close();
});
