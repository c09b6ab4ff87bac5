// Whatever is asked of any route of the table, as anybody: an answer in words, never a bug. LEMEL_FUZZ=seconds looks longer, LEMEL_SEED=n elsewhere.
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { writeControl } from '../../src/book/codec.ts';
import { ENTRIES, type EntryName } from '../../src/entries/index.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { SHEETS } from '../../src/sheets/index.ts';
import { ROUTES } from '../../src/web/session/routes.ts';
import { line } from '../shop.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { type RingJob, takeRingIn } from '../web/job-in-house.ts';
import { BASE, openSite, PASSWORD, PIN, type Site } from '../web/site.ts';

const SECONDS = Number(process.env.LEMEL_FUZZ ?? 30);
const SEED = Number(process.env.LEMEL_SEED ?? 1369982955);

let site: Site;
let ring: RingJob;
const cookies: string[] = [''];
beforeAll(async () => {
  site = await openSite();
  ring = await takeRingIn(site.shop);
  await site.shop.write(line('place_named', { place: site.shop.newRef('place'), name: 'Safe', kind: 'safe' }));
  for (const [role, person] of site.people) {
    await site.as(role);
    cookies.push(`lemel=${await site.web.access.beginSession(person, 'this-pc')}`);
  }
});
afterAll(() => site.close());

/** Names that some form reads, and names that none does. */
const fieldsOf = (fields: object) => Object.keys(fields);
const NAMES = [
  ...new Set([...Object.values(ENTRIES), ...Object.values(SHEETS)].flatMap(({ fields }) => fieldsOf(fields))),
  ...[
    'formKey',
    'pin',
    'password',
    'agreed',
    'change',
    'addRow',
    'occurredAt',
    'draft.path',
    'back',
    'person',
    'key',
    'device',
    'newPassword',
  ],
  ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', '', '.', 'seen.', 'rows.', 'after', 'before', 'by', 'type', 'draft', 'q'],
];
const PARTS = [
  '',
  '.text',
  '.unit',
  '.basis',
  '.balance',
  '.with',
  '.again',
  '.because',
  '.0',
  '.0.name',
  '.1.metal',
  '.9999',
  '.__proto__',
];
/** Values that some field takes, those that mean something elsewhere, and anything. */
const values = () => [
  ...[ring.job, ring.piece, site.shop.shop, site.shop.owner, site.shop.balance, PIN, PASSWORD],
  ...[
    '5.17',
    '1,34',
    'g',
    'ct',
    'stone',
    'weighed',
    'estimate',
    'difference',
    'gold-750',
    'yes',
    '1',
    '0',
    '-1',
    '0x10',
    '1e309',
    'NaN',
    '007',
  ],
  ...[
    '2026-12-01',
    '2026-12-01T09:00',
    '1959-05-01T10:00',
    '9999-12-31T23:59',
    '2026-02-30',
    '+447700900000',
    '£12.50',
    '12.50',
    'Infinity',
  ],
  ...["'; DROP TABLE entry; --", '%', '_', '"', '" OR "', 'NEAR(', '*', '<script>', '{{1}}', '../../etc/passwd', '\\', '\n', 'é', '🫧'],
  ...['__proto__', 'constructor', 'toString', 'null', 'undefined', '//evil.test', '\u202e', '\ufffd', 'x'.repeat(5000)],
];
const value = () =>
  fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...values()) }, { weight: 1, arbitrary: fc.string({ unit: 'binary' }) });
const name = () =>
  fc.oneof(
    { weight: 6, arbitrary: fc.tuple(fc.constantFrom(...NAMES), fc.constantFrom(...PARTS)).map((parts) => parts.join('')) },
    { weight: 1, arbitrary: fc.string() },
  );
const FORM_KEYS = ['01jdxw4s3v0000000000000000', '01jdxw4s3v0000000000000001', 'not a key'];
const fields = () =>
  fc
    .tuple(fc.array(fc.tuple(name(), value()), { maxLength: 12 }), fc.constantFrom(...FORM_KEYS), fc.boolean(), fc.boolean())
    .map(([pairs, key, signed, seen]) => [
      ...pairs,
      ['formKey', key] as [string, string],
      ...(signed ? [['password', PASSWORD] as [string, string]] : []),
      ...(seen ? [ring.job, site.shop.shop, site.shop.balance].map((id): [string, string] => [`seen.${id}`, '3']) : []),
    ]);

/** An entry of this shop as its form would post it, with up to three of its fields changed. */
const written = () =>
  fc
    .tuple(
      fc.constantFrom(...(Object.keys(SAMPLES) as EntryName[])),
      fc.array(fc.tuple(fc.nat(40), fc.constantFrom('gone', 'other'), value()), { maxLength: 3 }),
      fields(),
    )
    .map(([type, changes, more]) => {
      const pairs = Object.entries(SAMPLES[type]).flatMap(([field, said]) => [
        ...writeControl(entryType(type).fields[field]?.control ?? { kind: 'any' }, inShop(said), field, 'Europe/London'),
      ]);
      for (const [at, how, text] of changes) {
        const pair = pairs[at];
        if (pair) pairs.splice(at, 1, ...(how === 'gone' ? [] : [[pair[0], text] as const]));
      }
      return { type, pairs: [...pairs, ...more.slice(-5)].map(([key, text]): [string, string] => [key, text]) };
    });
function inShop(said: unknown): unknown {
  const real: Readonly<Record<string, string>> = {
    ...ring,
    ring: ring.piece,
    shop: site.shop.shop,
    owner: site.shop.owner,
    balance: site.shop.balance,
  };
  let text = JSON.stringify(said);
  for (const [called, id] of Object.entries(THINGS)) text = text.replaceAll(id, real[called] ?? id);
  return JSON.parse(text);
}

interface Asked {
  readonly route: string;
  readonly path: string;
  readonly method: string;
  readonly body: Body | null;
  readonly headers: Readonly<Record<string, string>>;
  readonly cookie: string;
}
interface Body {
  readonly type: string | null;
  readonly bytes: string | Uint8Array<ArrayBuffer> | FormData;
}

const segment = () => fc.oneof(fc.constantFrom(...values(), ...Object.keys(ENTRIES), 'weight', 'note', '1', '3'), fc.string());
/** The route's path with something in each place of it, and something after its question mark. */
const pathOf = (path: string) =>
  fc
    .tuple(fc.array(segment(), { minLength: 3, maxLength: 3 }), fc.array(fc.tuple(name(), value()), { maxLength: 4 }))
    .map(([said, query]) => {
      let at = 0;
      const filled = path.replaceAll(/:(\w+)/g, (_, place) => {
        const usual: Readonly<Record<string, string>> = { job: ring.job, piece: ring.piece, balance: site.shop.balance, thing: ring.piece };
        const one = said[at++] ?? '';
        return encodeURIComponent((one.length % 2 === 0 ? usual[place] : undefined) ?? one.toWellFormed());
      });
      const search = new URLSearchParams(
        query.map(([key, text]): [string, string] => [key.toWellFormed(), text.toWellFormed()]),
      ).toString();
      return search === '' ? filled : `${filled}?${search}`;
    });
const bodyOf = (): fc.Arbitrary<Body> =>
  fc.oneof(
    {
      weight: 4,
      arbitrary: fields().map((pairs) => ({ type: 'application/x-www-form-urlencoded', bytes: new URLSearchParams(pairs).toString() })),
    },
    {
      weight: 2,
      arbitrary: fields().map((pairs) => {
        const form = new FormData();
        for (const [key, text] of pairs) form.append(key, text);
        form.append('photo', new File(['no picture'], '../a.svg', { type: 'image/svg+xml' }));
        return { type: null, bytes: form };
      }),
    },
    { weight: 2, arbitrary: fields().map((pairs) => ({ type: 'application/json', bytes: JSON.stringify(Object.fromEntries(pairs)) })) },
    { weight: 1, arbitrary: fc.json({ maxDepth: 6 }).map((bytes) => ({ type: 'application/json', bytes })) },
    {
      weight: 1,
      arbitrary: fc
        .tuple(
          fc.constantFrom('application/json', 'multipart/form-data; boundary=x', 'multipart/form-data', 'text/plain', 'a/b', ''),
          fc.uint8Array(),
        )
        .map(([type, bytes]) => ({ type, bytes: new Uint8Array(bytes) })),
    },
    {
      weight: 1,
      arbitrary: fc
        .array(fc.constantFrom('--x', '--x--', '\r\n', '\r\n\r\n', 'Content-Disposition: form-data; name="a"', ': ', '"', 'é'))
        .map((parts) => ({
          type: 'multipart/form-data; boundary=x',
          bytes: parts.join(''),
        })),
    },
  );
const headersOf = () =>
  fc.record(
    {
      accept: fc.constantFrom('application/json', 'text/html', '*/*', 'application/json;q=x', ';;;'),
      'hx-request': fc.constant('true'),
      'hx-request-type': fc.constantFrom('partial', 'x'),
      'if-none-match': fc.constantFrom('"0"', 'W/"x"', '*', '"'),
      'accept-encoding': fc.constantFrom('gzip', 'br', 'gzip;q=0', '*;q=nothing'),
      range: fc.constantFrom('bytes=0-1', 'bytes=9-1'),
      'content-length': fc.constantFrom('-1', 'x', '1e9'),
      cookie: fc.constantFrom('lemel=x', 'lemel=%', 'lemel-screen=__proto__', ';;=;'),
      host: fc.constantFrom('127.0.0.1:8417', 'evil.test', '', '[', 'localhost:8417'),
      'x-forwarded-host': fc.constant('evil.test'),
    },
    { requiredKeys: [] },
  );
const asked = () => fc.oneof(anything(), entry());
const entry = () =>
  fc.tuple(written(), fc.constantFrom(...cookies.slice(1, 4)), fc.boolean(), headersOf()).map(
    ([{ type, pairs }, cookie, inJob, { accept }]): Asked => ({
      ...{ route: 'POST /write/:type', method: 'POST', cookie, headers: accept === undefined ? {} : { accept } },
      path: inJob ? `/jobs/${ring.job}/write/${type}` : `/write/${type}`,
      body: { type: 'application/x-www-form-urlencoded', bytes: new URLSearchParams(pairs).toString() },
    }),
  );
const anything = () =>
  fc.constantFrom(...Object.keys(ROUTES)).chain((route): fc.Arbitrary<Asked> => {
    const [method = '', path = ''] = route.split(' ');
    return fc.record({
      route: fc.constant(route),
      path: pathOf(path),
      method: fc.constantFrom(method, method, method, method, 'HEAD', 'PUT', 'OPTIONS'),
      body: method === 'POST' ? fc.option(bodyOf(), { freq: 20 }) : fc.constant(null),
      headers: headersOf(),
      cookie: fc.constantFrom(...cookies, ...cookies.slice(1, 2)),
    });
  });

it('is answered in words, and leaves no bug in the log', { timeout: (SECONDS + 60) * 1000 }, async () => {
  // A lock or a new PIN ends a session: those routes are asked without one.
  const ends = (route: string) => ['POST /lock', 'POST /setup/pin', 'POST /sign-in'].includes(route);
  await fc.assert(
    fc.asyncProperty(asked(), async ({ route, path, method, body, headers, cookie }) => {
      const own = { origin: BASE, 'sec-fetch-site': 'same-origin', ...(body?.type == null ? {} : { 'content-type': body.type }) };
      const all = { ...own, ...(ends(route) ? {} : { cookie }), ...headers };
      const hasBody = method === 'POST' || method === 'PUT';
      const answer = await site.app.request(path, { method, headers: all, ...(hasBody ? { body: body?.bytes ?? null } : {}) });
      const text = await answer.text();
      expect(site.bugs.splice(0).map((bug) => (bug instanceof Error ? bug.stack : String(bug)))).toEqual([]);
      expect(answer.status).toBeLessThan(500);
      if (answer.status >= 400 && method !== 'HEAD') expect(text).not.toBe('');
      const location = answer.headers.get('location') ?? answer.headers.get('hx-redirect');
      if (location !== null) expect(new URL(location, BASE).origin).toBe(BASE);
      if (answer.status === 200 && !route.startsWith('GET /assets'))
        expect(answer.headers.get('cache-control')).toMatch(/no-store|private/);
    }),
    { seed: SEED, numRuns: 1_000_000, interruptAfterTimeLimit: SECONDS * 1000, markInterruptAsFailure: false },
  );
});
