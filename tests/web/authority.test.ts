// Who may write what: every role × every entry type × every route that writes one × both formats, through the whole program and in the ledger alone.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeControl } from '../../src/book/codec.ts';
import type { Auth } from '../../src/book/may.ts';
import { ENTRIES, type EntryName } from '../../src/entries/index.ts';
import { decideCommand } from '../../src/ledger/decide.ts';
import { overlayOn } from '../../src/ledger/overlay.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { sha256 } from '../../src/store/crypto.ts';
import { shelfOn, thingOf } from '../../src/store/shelf.ts';
import { civilDateOf } from '../../src/units/dates.ts';
import { line } from '../shop.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { nameSafe, takeRingIn } from './job-in-house.ts';
import { openSite, PASSWORD, PIN, type Site, type Visitor } from './site.ts';

const ROLES = ['owner', 'bench', 'counter', 'auditor'] as const;
/** The owner's alone, with the password typed: people, roles, policy, devices, balances, terms, and the insurer's limits. */
const OWNERS: readonly EntryName[] = [
  ...(['person_joined', 'person_left', 'policy_set', 'device_enrolled', 'device_withdrawn'] as const),
  ...(['balance_put_in_service', 'place_named'] as const),
  'terms_set',
  'baseline_accepted',
  'shop_described',
];
/** Those with a form by their address; terms and baselines have pages of their own, which ask the same ledger. */
const OWNERS_FORMS = OWNERS.filter((type) => type !== 'terms_set' && type !== 'baseline_accepted');
/** Signed for with a PIN: what leaves the premises, a calibration that weights rest on, and a difference explained away. */
const SIGNED: readonly EntryName[] = [
  'released',
  'piece_returned',
  'returned_with_exception',
  'old_parts_returned',
  'balance_calibrated',
  'difference_explained',
];
/** The very first entry, which only a first run writes, and corrections, which have their own form. */
const TYPES = (Object.keys(ENTRIES) as EntryName[]).filter((type) => type !== 'ledger_started' && type !== 'corrected');

let site: Site;
let job: string;
const people = new Map<string, Visitor>();
/** The things of the samples as they are in this shop; what begins is begun anew each time. */
const real = new Map<unknown, string>();

beforeAll(async () => {
  site = await openSite();
  const { shop } = site;
  for (const role of ROLES) people.set(role, await site.as(role));
  const [ring, { safe, tray }, stock, skin, lot] = [
    await takeRingIn(shop),
    await nameSafe(shop),
    ...[shop.newRef('stock'), shop.newRef('skin'), shop.newRef('lot')],
  ] as const;
  const [packet, stone] = [shop.newRef('packet'), shop.newRef('stone')];
  const { piece } = ring;
  await shop.write(
    line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' }),
    line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('25.00') }),
    line('lemel_gathered', { skin, bench: 'Bench 1', metal: 'gold-750', weight: shop.grams('3.40') }),
    line('setting_noted', { piece, stone, seat: 'centre', species: 'sapphire', backing: 'open', state: 'sound' }),
    line('metal_cut', { piece, metal: 'gold-750', weight: shop.grams('0.20'), packet }),
  );
  job = ring.job;
  const here = { ...ring, safe, tray, stock, skin, lot, ring: piece, shop: shop.shop, owner: shop.owner, balance: shop.balance };
  const named = { ...here, setter: site.people.get('bench'), sapphire: stone, diamond: stone, melee: packet, oldParts: packet };
  for (const [name, id] of Object.entries(THINGS)) real.set(id, String((named as Record<string, unknown>)[name] ?? ''));
});
afterAll(() => site.close());

/** The sample with the things of this shop in their places. */
function dataOf(type: EntryName): Record<string, unknown> {
  const inShop = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(inShop);
    if (typeof value === 'object' && value !== null) return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, inShop(v)]));
    return real.get(value) ?? value;
  };
  const begun = Object.entries(entryType(type).fields).flatMap(([name, { role, kinds }]) =>
    role === 'begins' && SAMPLES[type][name as never] !== undefined
      ? [[name, kinds[0] === 'bag' ? site.shop.newBag() : site.shop.newRef(kinds[0] as 'job')] as const]
      : [],
  );
  return { ...(inShop(SAMPLES[type]) as Record<string, unknown>), ...Object.fromEntries(begun) };
}

/** The same as it is typed into its form. */
const typedOf = (type: EntryName): Record<string, string> =>
  Object.fromEntries(
    Object.entries(dataOf(type)).flatMap(([name, value]) => [
      ...writeControl(entryType(type).fields[name]?.control ?? ({ kind: 'text' } as never), value, name, 'Europe/London'),
    ]),
  );

/** Somebody else who works here, and may leave. */
async function somebody(): Promise<string> {
  const person = site.shop.newRef('person');
  await site.shop.write(line('person_joined', { person, role: 'bench', name: 'A setter' }));
  return person;
}

const owners = async () =>
  (await site.shop.store.read("SELECT state FROM thing WHERE kind = 'person'")).map(thingOf).filter(({ role }) => role === 'owner').length;
const written = async () => Number((await site.shop.store.read('SELECT COUNT(*) AS n FROM entry'))[0]?.n);

async function post(role: string, path: string, fields: Record<string, string>, format: 'form' | 'json'): Promise<Response> {
  const [owner, who] = [people.get('owner') as Visitor, people.get(role) as Visitor];
  const { formKey, ...form } = (await owner.form(path)) as Record<string, string>;
  const all = { ...form, ...fields, formKey: String(formKey) };
  return format === 'form' ? who.post(path, all) : who.postJson(path, all);
}

describe.each(['/write/', `/jobs/:job/write/`])('through %s', (route) => {
  describe.each(['form', 'json'] as const)('as %s', (format) => {
    it.each(OWNERS_FORMS)('%s is written by the owner, with the password, and by nobody else', async (type) => {
      const path = `${route.replace(':job', job)}${type}`;
      const setter = real.get(THINGS.setter) ?? '';
      if (type === 'person_left') real.set(THINGS.setter, await somebody());
      for (const role of ROLES) {
        for (const secret of [{}, { pin: PIN }, { password: PASSWORD }]) {
          const before = await written();
          await post(role, path, { ...typedOf(type), ...secret }, format);
          const may = role === 'owner' && 'password' in secret;
          expect((await written()) - before, `${role} ${JSON.stringify(secret)}`).toBe(may ? 1 : 0);
        }
      }
      real.set(THINGS.setter, setter);
    });
    it.each(OWNERS_FORMS.filter((type) => type !== 'place_named'))('%s is no form for anybody else', async (type) => {
      const path = `${route.replace(':job', job)}${type}`;
      const headers = format === 'json' ? { accept: 'application/json' } : {};
      for (const role of ROLES) expect((await people.get(role)?.get(path, headers))?.status).toBe(role === 'owner' ? 200 : 403);
    });
    it.each(SIGNED)('%s is written by nobody who has not typed a PIN for it', async (type) => {
      const before = await written();
      for (const role of ROLES) await post(role, `${route.replace(':job', job)}${type}`, typedOf(type), format);
      expect(await written()).toBe(before);
    });
    it('nobody but the owner makes an owner, whatever type the address names', async () => {
      const before = await owners();
      const owner = { ...typedOf('person_joined'), role: 'owner', pin: PIN };
      for (const role of ['bench', 'counter', 'auditor']) {
        for (const type of TYPES) await post(role, `${route.replace(':job', job)}${type}`, { ...typedOf(type), ...owner }, format);
      }
      expect(await owners()).toBe(before);
    }, 60_000);
    it('an auditor writes nothing', async () => {
      const before = await written();
      for (const type of TYPES) await post('auditor', `${route.replace(':job', job)}${type}`, { ...typedOf(type), pin: PIN }, format);
      expect(await written()).toBe(before);
    });
  });
});

describe('in the ledger, by whatever way it came', () => {
  const RANK: Record<Auth, number> = { session: 0, pin: 1, password: 2, import: 2 };
  /** What must be typed for it, as the house says it, apart from what the entry says of itself. */
  const asked = (type: EntryName) => (OWNERS.includes(type) ? 'password' : SIGNED.includes(type) ? 'pin' : 'session');

  it.each(TYPES)('%s asks each role for what it must', async (type) => {
    const { store, shop, clock, random } = site.shop;
    const seen = Object.fromEntries(
      (await store.read('SELECT stream, COUNT(*) AS n FROM entry_link GROUP BY stream')).map((r) => [String(r.stream), Number(r.n)]),
    );
    const writer = {
      log: store.log,
      seq: await written(),
      shop,
      at: clock.now,
      today: civilDateOf(clock.now, 'Europe/London'),
      alone: true,
      sha256,
      random,
    };
    for (const role of ROLES) {
      for (const auth of ['session', 'pin', 'password', 'import'] as const) {
        const by = site.people.get(role) ?? site.shop.owner;
        const command = { id: 'try', by, auth, device: 'none', seen, lines: [line(type, dataOf(type))] };
        const decided = await decideCommand(overlayOn(shelfOn(store.read, store.keys)), command, writer);
        const code = 'answer' in decided && decided.answer.answer === 'refused' ? decided.answer.code : '';
        const barred = role === 'auditor' || (OWNERS.includes(type) && role !== 'owner');
        const expected = barred
          ? 'not_yours_to_write'
          : RANK[auth] < RANK[asked(type)]
            ? `${asked(type)}_needed`
            : expect.not.stringMatching(/_needed$|^not_yours|^not_found|^invalid/);
        expect(code, `${role} ${auth}`).toEqual(expected);
      }
    }
  });
});
