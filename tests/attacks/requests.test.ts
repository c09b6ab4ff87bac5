// Requests that are no form of this program: too much, broken, of another kind, under another name, slow. Each is answered in words, and the program goes on.
import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { localPath, wholeNumber } from '../../src/web/session/address.ts';
import { type Program, serving } from '../program.ts';
import { BASE, openSite, PASSWORD, type Site, type Visitor } from '../web/site.ts';

let site: Site;
let owner: Visitor;
let cookie: string;
beforeAll(async () => {
  site = await openSite();
  owner = await site.as('owner');
  cookie = `lemel=${await site.web.access.beginSession(site.shop.owner, 'this-pc')}`;
});
afterAll(() => site.close());

const FORM = 'application/x-www-form-urlencoded';
const send = (path: string, body: string | Uint8Array<ArrayBuffer>, type: string | null, more: Readonly<Record<string, string>> = {}) => {
  const headers = { origin: BASE, 'sec-fetch-site': 'same-origin', ...(type === null ? {} : { 'content-type': type }), ...more };
  return Promise.resolve(site.app.request(path, { method: 'POST', body, headers }));
};
const fields = (n: number, name = 'a') => Array.from({ length: n }, () => `${name}=1`).join('&');

describe('a body', () => {
  it.each([
    ['over 16 kB before sign-in', `pin=${'1'.repeat(17_000)}`, FORM, 413],
    ['of 51 fields before sign-in', fields(51), FORM, 413],
    ['of 50,000 equal names', fields(50_000), FORM, 413],
    ['that is text', 'pin=4417', 'text/plain', 415],
    ['without a type', new Uint8Array([1]), null, 415],
    ['that is broken multipart', '--x\r\nnothing', 'multipart/form-data; boundary=x', 400],
    ['that is multipart without a boundary', '--x--', 'multipart/form-data', 400],
    ['that is broken JSON', '{"pin":', 'application/json', 400],
    ['whose JSON is a list', '["pin"]', 'application/json', 400],
    ['whose JSON is nothing', 'null', 'application/json', 400],
    ['whose JSON holds a number', '{"pin":4417}', 'application/json', 400],
    ['whose JSON holds an object', '{"pin":{"toString":1}}', 'application/json', 400],
    ['whose JSON holds half a character', '{"pin":"\\ud800"}', 'application/json', 400],
    ['whose JSON is no UTF-8', new Uint8Array([0x7b, 0x22, 0xff, 0x22, 0x3a, 0x22, 0x22, 0x7d]), 'application/json', 400],
    ['that holds a zero', 'pin=%00', FORM, 400],
  ])('%s is answered in words, as a page and as JSON', async (_, body, type, status) => {
    const page = await send('/sign-in', body, type);
    expect([page.status, page.headers.get('content-type')]).toEqual([status, 'text/html; charset=UTF-8']);
    const html = await page.text();
    expect(html).toContain('<h1>');
    expect(html).toContain('href="/sign-in"');
    const json = await send('/sign-in', body, type, { accept: 'application/json' });
    expect([json.status, json.headers.get('content-type')]).toEqual([status, 'application/json']);
    expect(await json.json()).toMatchObject({ error: status, say: expect.stringMatching(/\.$/) });
  });

  it('of a signed-in person may be long, and may hold every row of a sheet, but no more', async () => {
    const post = (body: string) => send('/drafts', body, FORM, { cookie });
    expect((await post(`text=${'x'.repeat(400_000)}`)).status).toBe(204);
    expect((await post(fields(2000))).status).toBe(204);
    expect((await post(fields(2001))).status).toBe(413);
    expect((await post(`text=${'x'.repeat(600_000)}`)).status).toBe(413);
  });

  it('is as long as a photograph only where a photograph is asked for', async () => {
    const with3MB = () => {
      const form = new FormData();
      form.append('photo', new File([new Uint8Array(3 * 1024 * 1024)], 'a.jpg'));
      return form;
    };
    const headers = { cookie, origin: BASE, 'sec-fetch-site': 'same-origin' };
    const post = (path: string) => site.app.request(path, { method: 'POST', body: with3MB(), headers });
    expect((await post('/write/photo_added')).status).toBe(422);
    expect((await post('/write/place_named')).status).toBe(413);
  });
});

describe('another name of this site', () => {
  it('is not answered: what it would have shown is not shown', async () => {
    for (const host of ['evil.test', 'evil.test:8417', '127.0.0.1', '127.0.0.1:80', 'localhost', 'localhost.:8417']) {
      const answer = await site.nobody.get('/sign-in', { host });
      expect([host, answer.status]).toEqual([host, 421]);
      expect(await answer.text()).not.toContain('A bench');
    }
    expect((await site.nobody.get('/sign-in', { host: '127.0.0.1:8417' })).status).toBe(200);
  });
  it('that is this PC leads to the one it uses', async () => {
    const answer = await site.nobody.get('/find?q=ring', { host: 'localhost:8417' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `${BASE}/find?q=ring`]);
  });
});

describe('the way back after sign-in', () => {
  const backs = fc.oneof(
    fc.string(),
    fc.webUrl(),
    fc
      .array(fc.constantFrom('/', '\\', '\t', '\n', ' ', '.', '..', '@', ':', '//', 'evil.test', '%2f', '?', '#', 'é'), { maxLength: 8 })
      .map((parts) => `/${parts.join('')}`),
  );
  it('stays on this site, as any browser reads it, and fits in a header', () => {
    fc.assert(
      fc.property(backs, (text) => {
        const path = localPath(text);
        expect(new URL(path, BASE).origin).toBe(BASE);
        expect(path.length).toBeLessThanOrEqual(2000);
      }),
      { numRuns: 2000 },
    );
  });
  it.each(['//evil.test', '/\tevil.test', '/\\evil.test', 'https://evil.test', `/${'x'.repeat(40_000)}`])('%j leads home', (text) => {
    expect(localPath(text)).toBe('/');
  });
  it('keeps what a page asked for', () => {
    expect(localPath('/find?q=a%20ring&from=2')).toBe('/find?q=a%20ring&from=2');
  });
});

describe('a number in an address', () => {
  it('is written one way', async () => {
    expect(['16', '0', '0x10', '016', '1e1', '+1', ' 1', '1.0', '9'.repeat(20), ''].map((text) => wholeNumber(text))).toEqual([
      ...[16, 0],
      ...Array(8).fill(null),
    ]);
    expect((await owner.get('/entries/1')).status).toBe(200);
    for (const seq of ['0x1', '01', '1e0', '+1', '1.0']) expect([seq, (await owner.get(`/entries/${seq}`)).status]).toEqual([seq, 404]);
  });
});

describe('an answer', () => {
  it('is compressed for whoever takes that, but not where a secret stands on it', async () => {
    const answer = await owner.get('/setup', { 'accept-encoding': 'gzip' });
    expect([answer.headers.get('content-encoding'), answer.headers.get('vary')]).toEqual([
      'gzip',
      expect.stringContaining('Accept-Encoding'),
    ]);
    expect(gunzipSync(Buffer.from(await answer.arrayBuffer())).toString()).toContain('<h1>Setup</h1>');
    const takes = { 'accept-encoding': 'gzip' };
    const sheet = await owner.post('/setup/recovery-sheet', { password: PASSWORD }, takes);
    for (const secret of [await owner.get('/devices', takes), sheet])
      expect([secret.status, secret.headers.get('content-encoding')]).toEqual([200, null]);
  });
});

describe('the program', () => {
  let program: Program;
  let dir: string;
  beforeAll(async () => {
    dir = mkdtempSync(join(tmpdir(), 'lemel-requests-'));
    program = await serving({ dir });
  });
  afterAll(async () => {
    program.child.kill('SIGTERM');
    await program.ended;
    rmSync(dir, { recursive: true });
  });

  /** Sends these bytes as they are; answers all that comes back until the program ends the connection. */
  const raw = (text: string, then: () => Iterable<string> = () => []) =>
    new Promise<string>((resolve, reject) => {
      let said = '';
      const socket = connect(Number(new URL(program.url).port), '127.0.0.1', () => {
        socket.write(text);
        for (const more of then()) socket.write(more);
      });
      socket.on('data', (chunk) => {
        said += chunk.toString();
      });
      socket.on('close', () => resolve(said));
      socket.on('error', (error) => (said === '' ? reject(error) : resolve(said)));
    });
  const head = () => `POST /sign-in HTTP/1.1\r\nHost: ${new URL(program.url).host}\r\nOrigin: ${program.url}\r\nContent-Type: ${FORM}\r\n`;

  it('answers 100 MB with 413, whether their length is said or not, and goes on', async () => {
    const post = (headers: Readonly<Record<string, string>>) =>
      new Promise<number | undefined>((resolve, reject) => {
        const asked = request(`${program.url}/sign-in`, {
          method: 'POST',
          headers: { origin: program.url, 'content-type': FORM, ...headers },
        });
        asked.on('response', (answer) => {
          resolve(answer.statusCode);
          asked.destroy();
        });
        asked.on('error', reject);
        const chunk = Buffer.alloc(1024 * 1024, 'a=1&');
        const more = (left: number): unknown => left > 0 && !asked.destroyed && asked.write(chunk, () => more(left - 1));
        more(100);
      });
    expect(await post({ 'content-length': String(100 * 1024 * 1024) })).toBe(413);
    expect(await post({ 'transfer-encoding': 'chunked' })).toBe(413);
    expect((await fetch(`${program.url}/healthz`)).status).toBe(200);
  });

  it('ends a connection that sends half a header', { timeout: 60_000 }, async () => {
    expect(await raw(head())).toMatch(/^HTTP\/1\.1 408 /);
  });

  it('answers a header longer than it reads, a request without a host, and noise, without a bug in its log', async () => {
    expect(await raw(`${head()}X: ${'x'.repeat(20_000)}\r\n\r\n`)).toMatch(/^HTTP\/1\.1 431 /);
    expect(await raw('GET / HTTP/1.1\r\nConnection: close\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 /);
    expect(await raw('\u0000\u0001\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 /);
    const other = `GET http://evil.test/sign-in HTTP/1.1\r\nHost: evil.test\r\nConnection: close\r\n\r\n`;
    expect(await raw(other)).toMatch(/^HTTP\/1\.1 421 /);
    expect(program.said()).not.toContain('"bug"');
  });
});
