// A form of one job writes nothing of another: every entry type that may name a thing of a job, through the form of a job and as JSON.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeControl } from '../../src/book/codec.ts';
import { NO_TERMS } from '../../src/book/terms.ts';
import { ENTRIES, type EntryName } from '../../src/entries/index.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { hex } from '../../src/log/bytes.ts';
import { sha256 } from '../../src/store/crypto.ts';
import type { RefKind } from '../../src/units/ids.ts';
import { line } from '../shop.ts';
import { KINDS, SAMPLES, THINGS } from '../vectors/samples.ts';
import { nameSafe, type RingJob, takeRingIn } from './job-in-house.ts';
import { openSite, PASSWORD, type Site, type Visitor } from './site.ts';

const OF_JOBS: readonly RefKind[] = ['job', 'piece', 'stone', 'packet'];
/** Each field of each type by which a thing that is already in a job may be named. */
const CASES = (Object.keys(ENTRIES) as EntryName[]).flatMap((type) =>
  Object.entries(entryType(type).fields).flatMap(([field, { role, kinds, sealed }]) =>
    // What stands sealed is said of a job, not written in it: an earlier job of the same piece.
    role.startsWith('names') && !sealed ? kinds.filter((kind) => OF_JOBS.includes(kind)).map((kind) => [type, field, kind] as const) : [],
  ),
);

interface Things extends RingJob {
  readonly stone: string;
  readonly packet: string;
}
let site: Site;
let owner: Visitor;
let here: Things;
let there: Things;
/** A photograph that is here, by its digest. */
let photo: string;
/** Things of the shop, which any job may name. */
let ofShop: Partial<Record<RefKind, string>>;
beforeAll(async () => {
  site = await openSite();
  owner = await site.as('owner');
  const { shop } = site;
  const picture = new TextEncoder().encode('a picture');
  photo = hex(sha256(picture));
  mkdirSync(site.web.photosDir, { recursive: true });
  writeFileSync(join(site.web.photosDir, `${photo}.webp`), picture);
  const [lot, stock, skin, { tray }] = [shop.newRef('lot'), shop.newRef('stock'), shop.newRef('skin'), await nameSafe(shop)];
  await shop.write(
    line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' }),
    line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: shop.grams('25.00') }),
    line('lemel_gathered', { skin, bench: 'Bench 1', metal: 'gold-750', weight: shop.grams('3.40') }),
  );
  ofShop = { lot, stock, skin, place: tray, shop: shop.shop, person: shop.owner, balance: shop.balance };
  [here, there] = [await ringWithMore('Ruth Abara'), await ringWithMore('Somebody Else')];
});
afterAll(() => site.close());

async function ringWithMore(name: string): Promise<Things> {
  const { shop } = site;
  const ring = await takeRingIn(shop, { name });
  const [stone, packet, { piece }] = [shop.newRef('stone'), shop.newRef('packet'), ring];
  await shop.write(
    line('setting_noted', { piece, stone, seat: 'centre', species: 'sapphire', backing: 'open', state: 'sound' }),
    line('metal_cut', { piece, metal: 'gold-750', weight: shop.grams('0.20'), packet }),
  );
  return { ...ring, stone, packet };
}

const written = async () => Number((await site.shop.store.read('SELECT COUNT(*) AS n FROM entry'))[0]?.n);

/** The sample with the things of a job in the places of its kinds, and that of `other` in one field. */
function typedOf(type: EntryName, of: Things, field: string, other: string): Record<string, string> {
  const kindOf = new Map<string, RefKind>(Object.entries(THINGS).map(([name, id]) => [id, KINDS[name as keyof typeof KINDS]]));
  const own: Partial<Record<RefKind, string>> = { ...ofShop, ...of };
  const inJob = (value: unknown): unknown => {
    if (typeof value === 'string') return own[kindOf.get(value) ?? 'entry'] ?? value;
    if (Array.isArray(value)) return value.map(inJob);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inJob(one)]));
  };
  const { fields } = entryType(type);
  const begun = Object.entries(fields).flatMap(([name, { role, kinds }]) =>
    role === 'begins' ? [[name, kinds[0] === 'bag' ? site.shop.newBag() : site.shop.newRef(kinds[0] as 'job')] as const] : [],
  );
  const said = { ...(inJob(SAMPLES[type]) as Record<string, unknown>), ...Object.fromEntries(begun), [field]: other };
  const data: Record<string, unknown> = { ...said, ...('photo' in said ? { photo } : {}), ...('terms' in said ? { terms: NO_TERMS } : {}) };
  return Object.fromEntries(
    Object.entries(data).flatMap(([name, value]) => {
      const control = fields[name]?.control;
      return control ? writeControl(control, value, name, 'Europe/London') : [];
    }),
  );
}

describe.each(['form', 'json'] as const)('as %s', (format) => {
  it.each(CASES)('%s takes no %s that is a %s of another job', async (type, field, kind) => {
    const path = `/jobs/${here.job}/write/${type}`;
    const { formKey } = await owner.form(`/jobs/${here.job}/write/note_added`);
    const seen = Object.fromEntries(await Promise.all([here, there].map(async ({ job }) => [`seen.${job}`, String(await sizeOf(job))])));
    const other = there[kind as 'job' | 'piece' | 'stone' | 'packet'];
    const fields = { ...typedOf(type, here, field, other), ...seen, formKey: String(formKey), password: PASSWORD };
    const before = await written();
    const answer = format === 'form' ? await owner.post(path, fields) : await owner.postJson(path, fields);
    expect(await written()).toBe(before);
    if (type === 'ticket_issued') return expect(answer.status).toBe(404);
    expect(answer.status).toBe(422);
    const text = await answer.text();
    const sentence = expect.stringMatching(/belongs? to (another|the) job/);
    if (format === 'form') expect(text).toEqual(sentence);
    else expect(JSON.parse(text).problems).toEqual([{ field: expect.any(String), say: sentence }]);
  });
});

async function sizeOf(stream: string): Promise<number> {
  return Number((await site.shop.store.read('SELECT COUNT(*) AS n FROM entry_link WHERE stream = ?', [stream]))[0]?.n);
}
