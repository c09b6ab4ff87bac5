// An entry already written as its correction sees it: what each part says by now, what it takes, and whether its pieces have gone home.
import { beforeEach, describe, expect, it } from 'vitest';
import { anyStaff, ownerByPassword } from '../../src/book/may.ts';
import type { Kept, Line } from '../../src/ledger/leaf.ts';
import { rememberedFields, saysNow } from '../../src/ledger/remember.ts';
import type { Ref } from '../../src/units/ids.ts';
import { type MemoryLedger, memoryLedger, weighing } from '../memory-ledger.ts';
import { line } from '../shop.ts';

let ledger: MemoryLedger;
let job: Ref<'job'>;
let [ring, chain] = ['', ''] as [Ref<'piece'>, Ref<'piece'>];
const write = async (...lines: readonly Line[]): Promise<Kept> => {
  const decided = await ledger.tell(ledger.command(lines));
  const kept = 'answer' in decided ? undefined : decided.drafted.at(-1)?.kept;
  if (!kept) throw new Error(JSON.stringify(decided));
  return kept;
};
const received = (piece: Ref<'piece'>, description: string) =>
  write(line('piece_received', { job, piece, kind: 'ring', description, stones: 0, parts: [{ part: 'all', metal: 'gold-750' }] }));
const correct = ({ hash, seq }: Kept, field: string, was: unknown, is: unknown) =>
  write(
    line('corrected', {
      target: hash,
      seq,
      field,
      ...(was === undefined ? {} : { was }),
      ...(is === undefined ? {} : { is }),
      reason: 'x',
    }),
  );
const part = async (kept: Kept, name: string) => {
  const found = (await rememberedFields(ledger.overlay, kept)).fields.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const agreed = () =>
  line('work_agreed', {
    ...{ job, steps: ['re-tip'], priceKind: 'free', promise: '2026-12-20', dust: 'shop', cutMetal: 'customer', oldParts: 'customer' },
    ...{ terms: '1', agreedBy: 'signature' },
  });
const home = (piece: Ref<'piece'>) => line('piece_returned', { piece, stones: 0, to: 'customer', shown: 'slip', signed: 'signature' });

let opened: Kept;
let first: Kept;
beforeEach(async () => {
  ledger = await memoryLedger();
  const { names } = ledger;
  [job, ring, chain] = [names.ref('job'), names.ref('piece'), names.ref('piece')];
  opened = await write(line('job_opened', { job, bag: names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
  first = await received(ring, 'Ring');
});

describe('a part of an entry', () => {
  it('says what stands in the leaf, whatever the order of its members, and nothing where nothing does', async () => {
    const [description, parts, size] = [await part(first, 'description'), await part(first, 'parts'), await part(first, 'ringSizeMm')];
    expect(['Ring', 'Band', undefined].map(description.says)).toEqual([true, false, false]);
    expect(parts.says([{ metal: 'gold-750', part: 'all' }])).toBe(true);
    expect(parts.says([{ metal: 'gold-585', part: 'all' }])).toBe(false);
    expect([undefined, '17.2'].map(size.says)).toEqual([true, false]);
  });
  it('takes what its own field does, and nothing at all where it may be left out', async () => {
    const [description, size] = [await part(first, 'description'), await part(first, 'ringSizeMm')];
    expect(['Band', '', 5, undefined].map(description.takes)).toEqual([true, false, false, false]);
    expect(['17.2', 'wide', undefined].map(size.takes)).toEqual([true, false, true]);
    expect([description.correctable, (await part(first, 'piece')).correctable]).toEqual([true, false]);
  });
  it('is its time too, which may be earlier than it was written, and never later', async () => {
    const time = await part(first, 'occurredAt');
    const { at } = first.leaf;
    expect(time).toMatchObject({ name: 'occurredAt', correctable: true, sealed: null });
    expect([at, at - 1, undefined].map(time.says)).toEqual([true, false, false]);
    expect([at - 1, at, at + 1].map(time.takes)).toEqual([true, true, false]);
    expect([-1, 1.5, '5', null, undefined].map(time.takes)).toEqual([false, false, false, false, false]);
    await correct(first, 'occurredAt', at, at - 60_000);
    expect([at, at - 60_000].map((await part(first, 'occurredAt')).says)).toEqual([false, true]);
  });
  it('is told from whom it is kept, and a correction of one from nobody by itself', async () => {
    const met = await write(line('customer_met', { customer: ledger.names.ref('customer'), name: 'Ruth Abara' }));
    expect([(await part(met, 'name')).sealed, (await part(met, 'customer')).sealed]).toEqual(['shop', null]);
    const correction = await correct(first, 'description', 'Ring', 'Band');
    expect([(await part(correction, 'was')).sealed, (await part(correction, 'reason')).sealed]).toEqual([null, null]);
  });
});

describe('what an entry says now', () => {
  it('is the last correction of each of its own parts, and none of another entry of the job', async () => {
    const second = await received(chain, 'Chain');
    await correct(second, 'description', 'Chain', 'Bracelet');
    await correct(first, 'description', 'Ring', 'Band');
    await correct(first, 'description', 'Band', 'Hoop');
    await correct(first, 'stones', 0, 3);
    expect(await saysNow(ledger.overlay, first)).toMatchObject({ description: 'Hoop', stones: 3, kind: 'ring' });
    expect(await saysNow(ledger.overlay, second)).toMatchObject({ description: 'Bracelet', stones: 0 });
  });
  it('has nothing of a part that was taken away', async () => {
    const weight = weighing(ledger.names, 'g', 500);
    await correct(first, 'weight', undefined, weight);
    expect(await saysNow(ledger.overlay, first)).toMatchObject({ weight });
    await correct(first, 'weight', weight, undefined);
    expect((await saysNow(ledger.overlay, first)).weight).toBeUndefined();
  });
  it('is what its corrections say of sealed parts too, where those could be opened', async () => {
    const met = await write(line('customer_met', { customer: ledger.names.ref('customer'), name: 'Ruth Abara', phone: '07700 900123' }));
    const correction = await correct(met, 'phone', '07700 900123', '07700 900124');
    expect(Object.keys(correction.leaf.sealed ?? {}).sort()).toEqual(['is', 'was']);
    expect(await saysNow(ledger.overlay, met)).toMatchObject({ name: 'Ruth Abara', phone: '07700 900124' });
    const moved = await correct(met, 'occurredAt', met.leaf.occurredAt, 5);
    expect(moved.leaf).not.toHaveProperty('sealed');
    expect(await saysNow(ledger.overlay, met)).toMatchObject({ occurredAt: 5, phone: '07700 900124' });
  });
});

describe('who may correct it', () => {
  it('is whoever may write it, and the owner where that depends on what is said', async () => {
    expect((await rememberedFields(ledger.overlay, first)).may).toBe(anyStaff);
    const correction = await correct(first, 'description', 'Ring', 'Band');
    expect((await rememberedFields(ledger.overlay, correction)).may).toBe(ownerByPassword);
    expect(await rememberedFields(ledger.overlay, first)).toMatchObject({
      kind: 'entry',
      seq: first.seq,
      at: first.leaf.at,
      by: first.leaf.by,
    });
  });
});

describe('after hand-back', () => {
  const isAfter = async (kept: Kept) => (await rememberedFields(ledger.overlay, kept)).afterHandBack;
  const standing = (id: string, more: object) => {
    const thing = ledger.overlay.things.get(id);
    if (thing) ledger.overlay.things.set(id, { ...thing, ...more });
  };
  it('is an entry of a job that is finished, all of whose pieces have gone home', async () => {
    expect(await isAfter(first)).toBe(false);
    await received(chain, 'Chain');
    await write(agreed(), line('work_finished', { job }));
    expect(await isAfter(first)).toBe(false);
    await write(home(ring));
    expect(await isAfter(first)).toBe(false);
    await write(home(chain));
    expect(await isAfter(first)).toBe(true);
    await write(line('job_closed', { job }));
    expect(await isAfter(first)).toBe(true);
  });
  it('is none of a job whose piece has not come in yet, of one that was withdrawn, and of what is no job', async () => {
    const empty = ledger.names.ref('job');
    const { bag } = ledger.names;
    const other = await write(line('job_opened', { job: empty, bag: bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
    expect(await isAfter(other)).toBe(false);
    standing(job, { pieces: 0, status: 'withdrawn' });
    expect(await isAfter(opened)).toBe(false);
    standing(job, { status: 'closed' });
    expect(await isAfter(opened)).toBe(true);
    const lot = ledger.names.ref('lot');
    const begun = await write(line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' }));
    standing(lot, { status: 'closed' });
    expect(await isAfter(begun)).toBe(false);
    const named = await write(line('place_named', { place: ledger.names.ref('place'), name: 'Safe', kind: 'safe' }));
    expect(await isAfter(named)).toBe(false);
  });
});
