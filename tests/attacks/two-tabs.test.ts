// Two tabs that begin or name the same new thing, one after the other, at once, and with what the first saw: the second gets a sentence or is
// written, and never breaks. Through the ledger for every field that begins a thing, and through the program where a form is open in two tabs.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENTRIES, type EntryName } from '../../src/entries/index.ts';
import type { Answer } from '../../src/ledger/leaf.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { instant } from '../../src/units/dates.ts';
import type { RefKind } from '../../src/units/ids.ts';
import { line } from '../shop.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { nameSafe, takeRingIn } from '../web/job-in-house.ts';
import { openSite, type Site, type Visitor } from '../web/site.ts';

let site: Site;
let owner: Visitor;
const real = new Map<unknown, string>();
beforeAll(async () => {
  site = await openSite();
  await site.as('owner');
  const { shop } = site;
  const [ring, { safe, tray }, stock, skin, lot] = [
    await takeRingIn(shop),
    await nameSafe(shop),
    ...[shop.newRef('stock'), shop.newRef('skin'), shop.newRef('lot')],
  ] as const;
  const [packet, stone, { piece }] = [shop.newRef('packet'), shop.newRef('stone'), ring];
  await shop.write(
    line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' }),
    line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('25.00') }),
    line('lemel_gathered', { skin, bench: 'Bench 1', metal: 'gold-750', weight: shop.grams('3.40') }),
    line('setting_noted', { piece, stone, seat: 'centre', species: 'sapphire', backing: 'open', state: 'sound' }),
    line('metal_cut', { piece, metal: 'gold-750', weight: shop.grams('0.20'), packet }),
  );
  const here = { ...ring, safe, tray, stock, skin, lot, ring: piece, shop: shop.shop, owner: shop.owner, balance: shop.balance };
  const named = { ...here, setter: site.people.get('bench'), sapphire: stone, diamond: stone, melee: packet, oldParts: packet };
  for (const [name, id] of Object.entries(THINGS)) real.set(id, String((named as Record<string, unknown>)[name] ?? ''));
  // The samples tell of days up to then.
  shop.clock.now = instant(Date.UTC(2026, 11, 8, 18));
  owner = await site.as('owner');
});
afterAll(() => site.close());

const CASES = (Object.keys(ENTRIES) as EntryName[]).flatMap((type) =>
  Object.entries(entryType(type).fields).flatMap(([field, { role, kinds }]) =>
    type !== 'ledger_started' && (role === 'begins' || role === 'names or begins') ? kinds.map((kind) => [type, field, kind] as const) : [],
  ),
);
const fresh = (kind: RefKind) => (kind === 'bag' ? site.shop.newBag() : site.shop.newRef(kind as 'job'));

/** The sample with this shop's things, everything it begins begun anew, and `id` in the field; without weights, which are not the matter here. */
function dataOf(type: EntryName, field: string, id: string): Record<string, unknown> {
  const { fields } = entryType(type);
  const oneOf = ['stone', 'packet', 'lot', 'stock'];
  const said = Object.entries(SAMPLES[type]).flatMap(([name, value]) => {
    const { role, kinds, mayBeMissing, control } = fields[name] ?? {
      role: 'tells',
      kinds: [],
      mayBeMissing: true,
      control: { kind: 'text' },
    };
    if ((mayBeMissing && control.kind === 'weight') || (oneOf.includes(field) && oneOf.includes(name))) return [];
    if (control.kind === 'weight') return [[name, site.shop.grams('0.30')] as const];
    return [[name, role === 'begins' ? fresh(kinds[0] as RefKind) : (real.get(value) ?? value)] as const];
  });
  return { ...Object.fromEntries(said), ...(field === 'packet' && 'stones' in fields ? { stones: 1 } : {}), [field]: id };
}

async function streams(): Promise<Record<string, number>> {
  const rows = await site.shop.store.read('SELECT stream, COUNT(*) AS n FROM entry_link GROUP BY stream');
  return Object.fromEntries(rows.map(({ stream, n }) => [String(stream), Number(n)]));
}

let commands = 0;
describe.each(CASES)('%s, whose %s is a new %s', (type, field, kind) => {
  it.each(['at once', 'one after the other', 'one after the other, unseen'])('in two tabs, %s', async (how) => {
    const ring = await takeRingIn(site.shop);
    real.set(THINGS.ring, ring.piece).set(THINGS.job, ring.job);
    const [id, seen] = [fresh(kind), await streams()];
    const record = (as: Record<string, number>): Promise<Answer> => {
      const command = { id: `tab-${commands++}`, by: site.shop.owner, auth: 'password', device: 'test' } as const;
      return site.shop.store.record({ ...command, seen: as, lines: [line(type, dataOf(type, field, id))] });
    };
    const first = record(seen);
    if (how !== 'at once') await first;
    const second = await record(how === 'one after the other' ? await streams() : seen);
    expect(await first).toMatchObject({ answer: 'written' });
    expect(['refused', 'asked', 'conflict', 'written']).toContain(second.answer);
    if ('say' in second) expect(second.say).toMatch(/\.$/);
  });
});

it('a slip is printed for a job that another tab has closed: a sentence, and nothing broken', async () => {
  const { shop } = site;
  const { job, piece } = await takeRingIn(shop);
  const slip = `/jobs/${job}/slip`;
  expect((await owner.post(slip, {})).status).toBe(303);
  await shop.write(
    line('taken', { of: job }),
    line('piece_checked', { piece, stones: 3, seats: 'tight', marks: 'readable' }),
    line('work_finished', { job }),
    line('piece_returned', { piece, stones: 3, to: 'customer', shown: 'slip', signed: 'signature' }),
    line('job_closed', { job }),
  );
  const answer = await owner.post(slip, {});
  expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining('This job is closed.')]);
  const json = await owner.postJson(slip, {});
  expect([json.status, await json.json()]).toEqual([422, expect.objectContaining({ say: expect.stringContaining('This job is closed.') })]);
  expect(site.bugs).toEqual([]);
});
