// The gate: every route × every role, from where, with which headers.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StaffRole } from '../../src/book/facts.ts';
import { ROUTES } from '../../src/web/session/routes.ts';
import { BASE, openSite, type Site, type Visitor } from './site.ts';

let site: Site;
const people = new Map<StaffRole, Visitor>();
beforeAll(async () => {
  site = await openSite();
  for (const role of ['owner', 'bench', 'counter', 'auditor'] as const) people.set(role, await site.as(role));
});
afterAll(() => site.close());

/** The routes the application really has, but those every request passes. */
const served = () => [...new Set(site.app.routes.filter(({ method }) => method !== 'ALL').map(({ method, path }) => `${method} ${path}`))];
const concrete = (path: string) =>
  path
    .replace(':seq', '0')
    .replace(':type', 'note_added')
    .replace(':file', 'lemel.css')
    .replace(':field', 'x')
    .replace(/:[a-zA-Z]+/g, 'nothing');

describe('the route table', () => {
  it('names every route there is, and none that is not', () => {
    expect(served().toSorted()).toEqual(Object.keys(ROUTES).toSorted());
  });

  it('sends nobody without a session past it', async () => {
    for (const [key, allowed] of Object.entries(ROUTES)) {
      const [method, path] = key.split(' ') as [string, string];
      const answer = method === 'GET' ? await site.nobody.get(concrete(path)) : await site.nobody.post(concrete(path), {});
      if (allowed === 'anyone') expect([200, 304, 403, 404, 422, 503], key).toContain(answer.status);
      else expect([answer.status, answer.headers.get('location')?.split('?')[0]], key).toEqual([303, '/sign-in']);
    }
  });

  it('opens to each role exactly what it names for it', async () => {
    for (const [key, allowed] of Object.entries(ROUTES)) {
      const [method, path] = key.split(' ') as [string, string];
      if (allowed === 'anyone' || path === '/lock') continue;
      for (const [role, who] of people) {
        const answer = method === 'GET' ? await who.get(concrete(path)) : await who.post(concrete(path), {});
        const text = await answer.text();
        const barred = answer.status === 403 && text.includes('Your role may not open this');
        expect(barred, `${role} ${key}`).toBe(!allowed.includes(role));
      }
    }
    expect(site.bugs).toEqual([]);
  });

  it('serves nothing that it does not name', async () => {
    expect((await people.get('owner')?.get('/no-such-page'))?.status).toBe(404);
    expect((await people.get('owner')?.post('/', {}))?.status).toBe(404);
  });
});

describe('a form from elsewhere', () => {
  const post = (headers: Record<string, string>, contentType = 'application/x-www-form-urlencoded') =>
    site.app.request('/lock', { method: 'POST', body: '{}', headers: { 'content-type': contentType, ...headers } });
  it.each([
    ['another site', { origin: 'https://example.com', 'sec-fetch-site': 'cross-site' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:9999', 'sec-fetch-site': 'same-site' }],
    ['no origin at all', {}],
    ['a hidden origin', { origin: 'null', 'sec-fetch-site': 'cross-site' }],
    ['a right origin with a wrong site', { origin: BASE, 'sec-fetch-site': 'cross-site' }],
  ])('is refused: %s', async (_, headers) => {
    expect((await post(headers)).status).toBe(403);
    expect((await post(headers, 'application/json')).status).toBe(403);
  });
});

describe('headers', () => {
  it('let nothing in from elsewhere and nothing be kept', async () => {
    const answer = await site.nobody.get('/sign-in');
    const policy = answer.headers.get('content-security-policy') ?? '';
    for (const rule of [
      "default-src 'none'",
      "script-src 'self'",
      "style-src 'self'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
      'trusted-types htmx',
    ]) {
      expect(policy).toContain(rule);
    }
    expect(policy).not.toContain('unsafe');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('referrer-policy')).toBe('same-origin');
    expect(answer.headers.get('vary')).toContain('HX-Request-Type');
  });
});

describe('an address that is none', () => {
  it.each([
    '/entries/abc',
    '/entries/-1',
    '/entries/1e99',
    '/trail?before=abc',
    '/jobs/%00',
    '/things/x',
    '/photos/x',
    '/take-in?customer=%27',
  ])('is answered in words: %s', async (path) => {
    const answer = await people.get('owner')?.get(path);
    expect(answer?.status).toBeLessThan(500);
  });
});
