// Screens on the shop's network: the certificate, enrolment, cookies bound to the host, and the program really listening on https, here only at 127.0.0.1.
import { X509Certificate } from 'node:crypto';
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createApp } from '../../src/app.ts';
import { readConfig } from '../../src/config.ts';
import { openAccess } from '../../src/store/access.ts';
import { certificateFor } from '../../src/store/certificate.ts';
import { openDirectory } from '../../src/store/names.ts';
import { instant } from '../../src/units/dates.ts';
import type { App, Web } from '../../src/web/session/context.ts';
import { freePort, start } from '../program.ts';
import { openShop, type Shop } from '../shop.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const BASE = 'https://192.168.1.20:8417';
const PIN = '4417';
const PASSWORD = 'four words will do';

describe('the settings', () => {
  it('are one PC over http unless the shop’s network is named with an address', () => {
    expect(readConfig({})).toMatchObject({ mode: 'loopback', address: '127.0.0.1', baseUrl: 'http://127.0.0.1:8417' });
    const lan = readConfig({ LEMEL_MODE: 'lan', LEMEL_ADDRESS: '192.168.1.20' });
    expect(lan).toMatchObject({ mode: 'lan', address: '192.168.1.20', baseUrl: BASE });
  });
  it.each([{ LEMEL_MODE: 'lan' }, { LEMEL_ADDRESS: '192.168.1.20' }, { LEMEL_MODE: 'wan' }, { LEMEL_MODE: 'lan', LEMEL_ADDRESS: 'a b' }])(
    'are refused where they do not fit together: %j',
    (environment) => {
      expect(() => readConfig(environment)).toThrow(/LEMEL_(MODE|ADDRESS)/);
    },
  );
});

describe('the certificate', () => {
  const now = Date.UTC(2026, 11, 1);
  const day = 86_400_000;
  let dir: string;
  beforeEach(() => {
    dir = mkdtempSync(join(tmpdir(), 'lemel-tls-'));
  });
  afterEach(() => rmSync(dir, { recursive: true }));

  it('is an EC one signed by itself for the address, for no more days than tablets take (Apple: 825)', async () => {
    const { cert } = await certificateFor(dir, '192.168.1.20', now);
    const read = new X509Certificate(cert);
    expect(read.verify(read.publicKey)).toBe(true);
    expect(read.publicKey.asymmetricKeyDetails?.namedCurve).toBe('prime256v1');
    expect([read.checkIP('192.168.1.20'), read.checkIP('192.168.1.21')]).toEqual(['192.168.1.20', undefined]);
    expect((Date.parse(read.validTo) - Date.parse(read.validFrom)) / day).toBeLessThanOrEqual(825);
  });
  it('names a host by its name', async () => {
    const { cert } = await certificateFor(dir, 'ledger.shop.local', now);
    expect(new X509Certificate(cert).subjectAltName).toBe('DNS:ledger.shop.local');
  });
  it('is kept from start to start, and made anew for another address or when it runs out', async () => {
    const first = await certificateFor(dir, '192.168.1.20', now);
    expect(await certificateFor(dir, '192.168.1.20', now + 700 * day)).toEqual(first);
    expect((await certificateFor(dir, '192.168.1.20', now + 810 * day)).cert).not.toBe(first.cert);
    expect((await certificateFor(dir, '192.168.1.21', now + 810 * day)).key).not.toBe(first.key);
  });
  it('is not used while others can read its key', async () => {
    await certificateFor(dir, '192.168.1.20', now);
    chmodSync(join(dir, 'tls.pem'), 0o640);
    await expect(certificateFor(dir, '192.168.1.20', now)).rejects.toThrow(/chmod 600/);
  });
});

describe('a screen on the network', () => {
  let shop: Shop;
  let web: Web;
  let app: App;
  beforeEach(async () => {
    shop = await openShop();
    const { store, clock, random } = shop;
    const access = openAccess(store.access, store.pepper, () => clock.now, random);
    await access.setCredential(shop.owner, 'pin', PIN);
    await access.setCredential(shop.owner, 'password', PASSWORD);
    const assetsDir = join(ROOT, 'views', 'assets');
    const directory = await openDirectory(store);
    web = {
      store,
      access,
      directory,
      clock: () => clock.now,
      random,
      baseUrl: BASE,
      assetsDir,
      photosDir: join(shop.dir, 'photos'),
      note: () => undefined,
    };
    app = createApp(web, (bug) => {
      throw bug;
    });
  });
  afterEach(() => shop.close());

  const get = async (path: string, cookie = '') => app.request(path, { headers: { cookie } });
  const post = async (path: string, fields: Record<string, string>, cookie = '') =>
    app.request(path, {
      method: 'POST',
      body: new URLSearchParams(fields),
      headers: { cookie, origin: BASE, 'sec-fetch-site': 'same-origin' },
    });
  const cookieOf = (answer: Response) => (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const makeLink = () => web.access.makeEnrolLink({ name: 'Bench tablet', kind: 'bench', by: shop.owner });
  const enrol = async () => cookieOf(await post('/enrol', { key: await makeLink() }));
  const signIn = (screen: string) => post('/sign-in', { person: shop.owner, pin: PIN, back: '/' }, screen);

  it('that is not enrolled may not even try a PIN', async () => {
    expect((await get('/sign-in')).status).toBe(403);
    expect((await signIn('')).status).toBe(403);
    expect((await get('/')).status).toBe(303);
    expect((await get('/healthz')).status).toBe(200);
  });
  it('is enrolled by a link that works once, within half an hour, and is an entry', async () => {
    const key = await makeLink();
    expect(await (await get(`/enrol?key=${key}`)).text()).toContain('Bench tablet');
    expect((await post('/enrol', { key })).headers.get('location')).toBe('/sign-in');
    expect((await post('/enrol', { key })).status).toBe(403);
    const [entry] = await shop.store.read("SELECT COUNT(*) AS n FROM entry WHERE type = 'device_enrolled'");
    expect(Number(entry?.n)).toBe(1);
    const late = await makeLink();
    shop.clock.now = instant(shop.clock.now + 31 * 60_000);
    expect((await get(`/enrol?key=${late}`)).status).toBe(403);
    expect((await post('/enrol', { key: late })).status).toBe(403);
  });
  it('keeps cookies that only this host over https may have (RFC 6265bis, 4.1.3.2: Secure, Path=/, no Domain)', async () => {
    const enrolled = await post('/enrol', { key: await makeLink() });
    const signed = await signIn(cookieOf(enrolled));
    for (const answer of [enrolled, signed]) {
      const cookie = answer.headers.get('set-cookie') ?? '';
      expect(cookie).toMatch(/^__Host-lemel/);
      for (const part of ['Secure', 'HttpOnly', 'Path=/', 'SameSite=Strict']) expect(cookie).toContain(part);
      expect(cookie).not.toContain('Domain');
    }
    expect(signed.headers.get('strict-transport-security')).toBeNull();
  });
  it('has sessions of its own: a session carried to another screen opens nothing', async () => {
    const [mine, other] = [await enrol(), await enrol()];
    const session = cookieOf(await signIn(mine));
    expect((await get('/setup', `${mine}; ${session}`)).status).toBe(200);
    expect((await get('/setup', `${other}; ${session}`)).status).toBe(303);
    expect((await get('/setup', session)).status).toBe(303);
    expect((await get('/setup', `${mine}; ${session.replace('__Host-', '')}`)).status).toBe(303);
  });
  it('that is lost is ended by the owner, with the session on it', async () => {
    const [desk, tablet] = [await enrol(), await enrol()];
    const owner = `${desk}; ${cookieOf(await signIn(desk))}`;
    const lost = `${tablet}; ${cookieOf(await signIn(tablet))}`;
    const id = (await web.access.devices())[1]?.id ?? '';
    expect((await post('/devices/end', { device: id, password: 'guessed' }, owner)).status).toBe(422);
    expect((await get('/setup', lost)).status).toBe(200);
    expect((await post('/devices/end', { device: id, password: PASSWORD }, owner)).status).toBe(303);
    const [entry] = await shop.store.read("SELECT COUNT(*) AS n FROM entry WHERE type = 'device_withdrawn'");
    expect(Number(entry?.n)).toBe(1);
    expect((await get('/setup', lost)).status).toBe(303);
    expect((await get('/sign-in', tablet)).status).toBe(403);
    expect((await get('/setup', owner)).status).toBe(200);
  });
  it('is enrolled by one of two who open its link at once, and a copied screen’s own token is good for one screen alone', async () => {
    const key = await makeLink();
    const answers = await Promise.all(Array.from({ length: 20 }, () => post('/enrol', { key })));
    expect(answers.map(({ status }) => status).toSorted((a, b) => a - b)).toEqual([303, ...Array(19).fill(403)]);
    expect(answers.filter((answer) => cookieOf(answer) !== '')).toHaveLength(1);
    expect(await web.access.devices()).toHaveLength(1);
    const [entry] = await shop.store.read("SELECT COUNT(*) AS n FROM entry WHERE type = 'device_enrolled'");
    expect(Number(entry?.n)).toBe(1);
    for (const guess of ['', 'x', key.slice(1), `${key}x`]) expect((await post('/enrol', { key: guess })).status).toBe(403);
  });
  it('that the ledger does not call one of the shop’s opens nothing, whatever the file of sign-in says', async () => {
    const token = await web.access.enrol(await makeLink(), 'place_00000000000000000000000000');
    expect(token).not.toBeNull();
    expect((await get('/sign-in', `__Host-lemel-screen=${token}`)).status).toBe(403);
  });
  it('is invited by the owner with a code for its camera', async () => {
    const desk = await enrol();
    const owner = `${desk}; ${cookieOf(await signIn(desk))}`;
    const invite = { name: 'Polishing tablet', kind: 'bench', password: PASSWORD };
    expect(await (await post('/devices', { ...invite, password: PIN }, owner)).text()).not.toContain('class="qr"');
    const page = await (await post('/devices', invite, owner)).text();
    const key = /\/enrol\?key=([\w-]+)/.exec(page)?.[1] ?? '';
    expect(page).toContain('class="qr"');
    expect(await web.access.enrolLink(key)).toMatchObject({ name: 'Polishing tablet', by: shop.owner });
    expect((await post('/devices', { ...invite, name: '' }, owner)).status).toBe(422);
  });
  it('enrols nobody while the program serves one PC', async () => {
    const local = createApp({ ...web, baseUrl: 'http://127.0.0.1:8417' });
    const key = await makeLink();
    const answer = await local.request('/enrol', {
      method: 'POST',
      body: new URLSearchParams({ key }),
      headers: { origin: 'http://127.0.0.1:8417' },
    });
    expect(answer.status).toBe(403);
    expect((await local.request('/sign-in')).status).toBe(200);
  });
});

describe('a first run on the network', () => {
  it('begins the ledger, enrols the screen it was done on, and invites the next', async () => {
    const shop = await openShop({ started: false });
    const { store, clock, random } = shop;
    const access = openAccess(store.access, store.pepper, () => clock.now, random);
    const assetsDir = join(ROOT, 'views', 'assets');
    const directory = await openDirectory(store);
    const web = {
      store,
      access,
      directory,
      clock: () => clock.now,
      random,
      baseUrl: BASE,
      assetsDir,
      photosDir: join(shop.dir, 'photos'),
      note: () => undefined,
    };
    const app = createApp(web, (bug) => {
      throw bug;
    });
    const post = async (path: string, fields: Record<string, string>, cookie = '') =>
      app.request(path, {
        method: 'POST',
        body: new URLSearchParams(fields),
        headers: { cookie, origin: BASE, 'sec-fetch-site': 'same-origin' },
      });
    const key = await access.makeSetupLink();
    const said = { shopName: 'Wren', ownerName: 'Ada', pin: PIN, password: 'four words will do', country: 'GB', currency: 'GBP', key };
    const balance = { zone: 'Europe/London', staffing: 'alone', balanceName: 'Bench', largest: '400', step: '0.01' };
    const runs = await Promise.all([1, 2, 3].map(() => post('/first-run', { ...said, ...balance })));
    expect(runs.filter(({ status }) => status === 303)).toHaveLength(1);
    const begun = runs.find(({ status }) => status === 303);
    const cookie = (begun?.headers.getSetCookie() ?? []).map((one) => one.split(';')[0]).join('; ');
    expect(cookie).toMatch(/^__Host-lemel-screen=.*__Host-lemel=/);
    expect((await app.request('/setup', { headers: { cookie } })).status).toBe(200);
    expect((await access.devices()).map(({ name }) => name)).toEqual(['First screen']);
    const page = await (await post('/devices', { name: 'Tablet', kind: 'bench', password: 'four words will do' }, cookie)).text();
    const link = /\/enrol\?key=([\w-]+)/.exec(page)?.[1] ?? '';
    expect((await post('/enrol', { key: link })).headers.get('location')).toBe('/sign-in');
    await shop.close();
  });
});

describe('the program on the network', () => {
  it('listens on https under its own certificate, and begins with a link for its first screen', async () => {
    const dir = mkdtempSync(join(tmpdir(), 'lemel-lan-'));
    const port = await freePort();
    const { child, said, ended } = start({ dir, port, env: { LEMEL_MODE: 'lan', LEMEL_ADDRESS: '127.0.0.1' } });
    try {
      await Promise.race([
        ended,
        new Promise<void>((resolve) => child.stdout?.on('data', () => said().includes('first-run?key=') && resolve())),
      ]);
      expect(said()).toContain(`https://127.0.0.1:${port}/first-run?key=`);
      const ca = readFileSync(join(dir, 'keys', 'tls.pem'), 'utf8').replace(/^[\s\S]*(?=-----BEGIN CERTIFICATE)/, '');
      const status = await new Promise<number | undefined>((resolve, reject) => {
        request({ host: '127.0.0.1', port, path: '/healthz', ca }, (answer) => resolve(answer.resume().statusCode))
          .on('error', reject)
          .end();
      });
      expect(status).toBe(200);
    } finally {
      child.kill('SIGTERM');
      await ended;
      rmSync(dir, { recursive: true });
    }
  });
});
