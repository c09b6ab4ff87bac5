// How a command becomes leaves: whom it needs, what the person saw, which times, balances and jobs it may speak of, and what stands in the leaf.
import { beforeEach, describe, expect, it } from 'vitest';
import type { Command, Line } from '../../src/ledger/leaf.ts';
import { instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import { type MassUnit, massNg, parseMass } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { type MemoryLedger, memoryLedger } from '../memory-ledger.ts';
import { line } from '../shop.ts';

let ledger: MemoryLedger;
let job: Ref<'job'>;
let piece: Ref<'piece'>;
let lot: Ref<'lot'>;
const tell = (lines: readonly Line[], over: Partial<Command> = {}) => ledger.tell({ ...ledger.command(lines), ...over });
const told = async (lines: readonly Line[], over: Partial<Command> = {}) => {
  const decided = await tell(lines, over);
  return 'answer' in decided ? decided.answer : { answer: 'written' as const };
};
const written = async (lines: readonly Line[], over: Partial<Command> = {}) => {
  const decided = await tell(lines, over);
  if ('answer' in decided) throw new Error(JSON.stringify(decided.answer));
  return decided.drafted;
};
const jobLines = (of: Ref<'job'>, ring: Ref<'piece'>, stones = 2): readonly Line[] => [
  line('job_opened', { job: of, bag: ledger.names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
  line('piece_received', { job: of, piece: ring, kind: 'ring', description: 'Ring', parts: [{ part: 'a', metal: 'gold-750' }], stones }),
  line('work_agreed', {
    ...{ job: of, steps: ['re-tip'], details: 'x', priceKind: 'free', promise: '2027-02-01', dust: 'shop', cutMetal: 'shop' },
    ...{ oldParts: 'customer', terms: '1', agreedBy: 'signature' },
  }),
];
const note = (about: string = job, text = 'seen') => line('note_added', { about, text });
const weight = (text: string, unit: MassUnit = 'g', more: Partial<Reading> = {}): Reading => {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) throw new Error(parsed.problem);
  const [balance, stepNg] = unit === 'g' ? [ledger.names.balance, 10_000_000] : [ledger.names.caratBalance, 200_000];
  return { text, unit, ng: parsed.ng, basis: 'weighed', balance, stepNg: massNg(stepNg), ...more };
};
const cut = (reading: unknown) => line('metal_cut', { piece, lot, metal: 'gold-750', weight: reading });

beforeEach(async () => {
  ledger = await memoryLedger();
  const { names } = ledger;
  [job, piece, lot] = [names.ref('job'), names.ref('piece'), names.ref('lot')];
  await written([line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' })]);
  await written(jobLines(job, piece));
});

describe('a line', () => {
  it('has every field its entry needs, of the form it asks for, and no other', async () => {
    const refused = (data: Line['data']) => told([line('note_added', data)]);
    expect(await refused({ about: job })).toMatchObject({ answer: 'refused', code: 'invalid', field: 'text', say: 'Fill this in.' });
    expect(await refused({ about: job, text: 5 })).toMatchObject({ code: 'invalid', field: 'text' });
    expect(await refused({ about: job, text: 'x', more: 1 })).toMatchObject({ code: 'invalid', field: 'more' });
    expect(await refused({ about: job, text: 'cafe\u0301' })).toMatchObject({ code: 'invalid', field: 'text' });
    const parts = [
      { part: 'a', metal: 'gold-750' },
      { part: 'b', metal: 'cheese' },
    ];
    const received = { job, piece: ledger.names.ref('piece'), kind: 'ring', description: 'Ring', parts, stones: 0 };
    expect(await told([line('piece_received', received)])).toMatchObject({ code: 'invalid', field: 'parts.1.metal' });
  });
  it('is counted from 0 within its command, and one that is refused takes the others with it', async () => {
    const size = ledger.overlay.written.length;
    expect(await told([note(), note(ledger.names.ref('job'))])).toMatchObject({ code: 'not_found', line: 1, field: 'about' });
    expect(ledger.overlay.written).toHaveLength(size);
    const drafted = await written([note(), note(job, 'again')]);
    expect(drafted.map(({ kept }) => [kept.seq, kept.leaf.part])).toEqual([
      [size, [0, 2]],
      [size + 1, [1, 2]],
    ]);
  });
  it('belongs to one job', async () => {
    const { names } = ledger;
    const [other, brooch, packet] = [names.ref('job'), names.ref('piece'), names.ref('packet')];
    await written([...jobLines(other, brooch), line('stone_unset', { piece: brooch, packet, stones: 2, condition: 'sound' })]);
    expect(await told([line('stone_set', { piece, packet, stones: 2 })])).toMatchObject({ code: 'two_jobs', field: 'packet' });
    expect(await told([line('stone_set', { piece: brooch, packet, stones: 2 })])).toEqual({ answer: 'written' });
  });
  it('links its job first and then what else it touches, each after the entry before it', async () => {
    const before = [job, lot].map((stream) => ledger.overlay.heads.get(stream));
    const [drafted] = await written([cut(weight('1.34'))]);
    expect(drafted?.kept.leaf.links).toEqual([
      { s: job, n: 3, p: before[0]?.hash },
      { s: lot, n: 1, p: before[1]?.hash },
    ]);
  });
});

describe('whoever writes', () => {
  const joins = (person: string, role: string) => line('person_joined', { person, role, name: 'Somebody' });
  it('works here, and has not left', async () => {
    const ben = ledger.names.ref('person');
    expect(await told([note()], { by: ben })).toMatchObject({ code: 'not_staff' });
    await written([joins(ben, 'bench')]);
    expect(await told([note()], { by: ben })).toEqual({ answer: 'written' });
    const thing = ledger.overlay.things.get(ben);
    if (thing) ledger.overlay.things.set(ben, { ...thing, role: 'left' });
    expect(await told([note()], { by: ben })).toMatchObject({ code: 'not_staff' });
  });
  it('names nobody who has left, or only looks on, and is witnessed by neither', async () => {
    const { names } = ledger;
    const [ben, eve, zoe] = [names.ref('person'), names.ref('person'), names.ref('person')];
    await written([joins(ben, 'bench'), joins(eve, 'auditor'), joins(zoe, 'bench')]);
    await written([line('person_left', { person: zoe })]);
    const released = (person: string) => told([line('released', { of: job, person, purpose: 'setting' })]);
    for (const person of [eve, zoe])
      expect(await released(person)).toMatchObject({ answer: 'refused', code: 'not_in_force', field: 'person' });
    expect(await told([note()], { witness: zoe })).toMatchObject({ code: 'not_staff' });
    expect(await told([note()], { witness: names.ref('person') })).toMatchObject({ code: 'not_staff' });
    expect(await told([note()], { witness: ben })).toEqual({ answer: 'written' });
    expect(await released(ben)).toEqual({ answer: 'written' });
    expect(await told([line('person_left', { person: eve })])).toEqual({ answer: 'written' });
  });
  it('writes at no screen that was withdrawn', async () => {
    const [shop, at] = [ledger.names.shop, { device: 'tablet-1' }];
    expect(await told([note()], at)).toEqual({ answer: 'written' });
    await written([line('device_enrolled', { shop, device: 'tablet-1', name: 'Tablet', kind: 'bench' })]);
    expect(await told([note()], at)).toEqual({ answer: 'written' });
    await written([line('device_withdrawn', { shop, device: 'tablet-1', name: 'Tablet' })]);
    expect(await told([note()], at)).toMatchObject({ answer: 'refused', code: 'screen_withdrawn' });
  });
  it('writes what their role may, known as surely as it asks', async () => {
    const [ben, eve] = [ledger.names.ref('person'), ledger.names.ref('person')];
    await written([joins(ben, 'bench'), joins(eve, 'auditor')]);
    expect(await told([note()], { by: eve })).toMatchObject({ code: 'not_yours_to_write' });
    expect(await told([joins(ledger.names.ref('person'), 'owner')], { by: ben })).toMatchObject({ code: 'not_yours_to_write' });
    expect(await told([joins(ledger.names.ref('person'), 'owner')], { auth: 'pin' })).toMatchObject({
      code: 'password_needed',
      field: 'password',
    });
    const home = { piece, stones: 2, to: 'customer', shown: 'slip', signed: 'signature' };
    const back = [line('work_finished', { job }), line('piece_returned', home)];
    expect(await told(back, { auth: 'session' })).toMatchObject({ code: 'pin_needed', line: 1, field: 'pin' });
    expect(await told(back, { auth: 'pin' })).toEqual({ answer: 'written' });
  });
  it('types a PIN again to correct what has gone home, and not before', async () => {
    const received = ledger.look().leaves.find(({ leaf }) => leaf.type === 'piece_received');
    const correct = (was: string, is: string) =>
      line('corrected', { target: received?.hash, seq: received?.seq, field: 'description', was, is, reason: 'misheard' });
    expect(await told([correct('Ring', 'Band')], { auth: 'session' })).toEqual({ answer: 'written' });
    await written([
      line('work_finished', { job }),
      line('piece_returned', { piece, stones: 2, to: 'customer', shown: 'slip', signed: 'signature' }),
    ]);
    expect(await told([correct('Band', 'Hoop')], { auth: 'session' })).toMatchObject({ code: 'pin_needed' });
    expect(await told([correct('Band', 'Hoop')], { auth: 'pin' })).toEqual({ answer: 'written' });
  });
  it('stands in the leaf with their device and witness, and no witness stands there who was not named', async () => {
    const ben = ledger.names.ref('person');
    await written([joins(ben, 'bench')]);
    const [alone] = await written([note()], { device: 'bench-pc', auth: 'pin' });
    expect(alone?.kept.leaf).toMatchObject({ by: ledger.names.owner, device: 'bench-pc', auth: 'pin' });
    expect(alone?.kept.leaf).not.toHaveProperty('witness');
    const [seen] = await written([note()], { witness: ben });
    expect(seen?.kept.leaf).toMatchObject({ witness: ben });
  });
});

describe('a time', () => {
  const at = (ms: number) => [{ ...note(), occurredAt: instant(ms) }];
  it('may be up to a minute ahead of the clock, and no more', async () => {
    const [now] = await written([note()]);
    const nowMs = now?.kept.leaf.at ?? 0;
    // Each command of this ledger is a minute after the one before it.
    expect(await told(at(nowMs + 60_000 + 60_000))).toEqual({ answer: 'written' });
    expect(await told(at(nowMs + 120_000 + 60_001))).toMatchObject({ code: 'in_the_future', field: 'occurredAt' });
  });
  it('is the one that was stated, or the clock’s', async () => {
    const [stated] = await written(at(1_000));
    expect(stated?.kept.leaf).toMatchObject({ occurredAt: 1_000 });
    const [silent] = await written([note()]);
    expect(silent?.kept.leaf.occurredAt).toBe(silent?.kept.leaf.at);
  });
});

describe('a weight', () => {
  it('is read in its balance’s unit, within its largest load, on a balance that is there', async () => {
    expect(await told([cut(weight('1.34', 'g', { balance: ledger.names.caratBalance }))])).toMatchObject({
      code: 'balance_unit',
      field: 'weight',
    });
    expect(await told([cut(weight('1.34', 'g', { balance: ledger.names.ref('balance') }))])).toMatchObject({
      code: 'not_found',
      field: 'weight',
    });
    const stock = ledger.names.ref('stock');
    const received = (text: string) => [line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: weight(text) })];
    expect(await told(received('4000.01'))).toMatchObject({ code: 'over_largest_load', field: 'weight' });
    expect(await told(received('4000.00'))).toEqual({ answer: 'written' });
  });
  it('that a balance cannot show is written with a second reading and a reason, and not with one of them', async () => {
    const odd = (more: Partial<Reading>) => told([cut(weight('1.345', 'g', more))]);
    expect(await odd({})).toMatchObject({ answer: 'asked', code: 'not_a_step', field: 'weight', line: 0 });
    expect(await odd({ repeats: ['1.345'] })).toMatchObject({ code: 'not_a_step' });
    expect(await odd({ repeats: [], because: 'so it says' })).toMatchObject({ code: 'not_a_step' });
    expect(await odd({ because: 'so it says' })).toMatchObject({ code: 'not_a_step' });
    expect(await odd({ repeats: ['1.345'], because: 'so it says' })).toEqual({ answer: 'written' });
  });
  it('of nothing, or of less than its tare, is not written', async () => {
    const under = async (dish: string) => {
      const said = weight(dish);
      await written([line('tare_listed', { shop: ledger.names.shop, thing: 'dish', weight: said, from: 'weighed' })]);
      return told([cut(weight('1.34', 'g', { onPan: [{ thing: 'dish', tareNg: said.ng }] }))]);
    };
    expect(await told([cut({ ...weight('1.34'), text: '0.00', ng: 0 })])).toMatchObject({ answer: 'refused' });
    expect(await under('1.34')).toMatchObject({ code: 'nothing_left', field: 'weight' });
    expect(await under('1.35')).toMatchObject({ code: 'nothing_left', field: 'weight' });
    expect(await under('1.33')).toEqual({ answer: 'written' });
  });
  it('takes off what is on the list of tares alone, once, by what the list says', async () => {
    const dish = { thing: 'dish', tareNg: massNg(500_000_000) };
    const with_ = (...onPan: NonNullable<Reading['onPan']>) => told([cut(weight('1.34', 'g', { onPan }))]);
    const refused = { answer: 'refused', code: 'tare_not_listed', field: 'weight' };
    expect(await with_(dish)).toMatchObject(refused);
    await written([line('tare_listed', { shop: ledger.names.shop, thing: 'dish', weight: weight('0.50'), from: 'weighed' })]);
    expect(await with_({ thing: 'dish' })).toMatchObject(refused);
    expect(await with_({ ...dish, tareNg: massNg(400_000_000) })).toMatchObject(refused);
    expect(await with_(dish, dish)).toMatchObject(refused);
    expect(await with_(dish, { thing: 'thread' })).toMatchObject(refused);
    expect(await with_(dish)).toEqual({ answer: 'written' });
  });
});

describe('what the person saw', () => {
  it('conflicts where an entry came between, and says which', async () => {
    const seen = Object.fromEntries([...ledger.overlay.heads].map(([stream, { size }]) => [stream, size]));
    const [first, second] = [...(await written([cut(weight('0.10'))])), ...(await written([cut(weight('0.20'))]))];
    const answer = await told([cut(weight('0.30'))], { seen });
    expect(answer).toEqual({ answer: 'conflict', stream: job, since: [first?.kept.seq, second?.kept.seq] });
  });
  it('matters for no entry that commutes, and for none that begins its subject', async () => {
    const seen = Object.fromEntries([...ledger.overlay.heads].map(([stream, { size }]) => [stream, size]));
    await written([note()]);
    expect(await told([note()], { seen: {} })).toEqual({ answer: 'written' });
    expect(await told([line('lot_opened', { lot: ledger.names.ref('lot'), name: 'More', metal: 'gold-750' })], { seen: {} })).toEqual({
      answer: 'written',
    });
    expect(await told(jobLines(ledger.names.ref('job'), ledger.names.ref('piece')), { seen })).toEqual({ answer: 'written' });
  });
});

describe('a sealed field', () => {
  it('is kept out of the leaf, by a digest of its own salt; the open ones beside it stay', async () => {
    const customer = ledger.names.ref('customer');
    const [met] = await written([line('customer_met', { customer, name: 'Ruth Abara', phone: '07700 900123' })]);
    expect(met?.kept.leaf.data).toEqual({ customer });
    expect(Object.keys(met?.kept.leaf.sealed ?? {}).sort()).toEqual(['name', 'phone']);
    expect(met?.kept.opened).toEqual({ name: 'Ruth Abara', phone: '07700 900123' });
    expect(new Set(met?.sealed.map(({ salt }) => salt)).size).toBe(2);
    const [plain] = await written([cut(weight('0.10'))]);
    expect(plain?.kept.leaf).not.toHaveProperty('sealed');
    expect(plain?.sealed).toEqual([]);
  });
  it('stays sealed in its correction, as an open one stays open', async () => {
    const customer = ledger.names.ref('customer');
    const [met] = await written([line('customer_met', { customer, name: 'Ruth Abara', phone: '07700 900123' })]);
    const of = { target: met?.kept.hash, seq: met?.kept.seq };
    const decided = await tell([line('corrected', { ...of, field: 'phone', was: '07700 900123', is: '07700 900124', reason: 'misheard' })]);
    if ('answer' in decided) return expect(decided.answer).toMatchObject({ code: 'not_correctable' });
    expect(decided.drafted[0]?.kept.leaf.data).not.toHaveProperty('is');
    expect(Object.keys(decided.drafted[0]?.kept.leaf.sealed ?? {}).sort()).toEqual(['is', 'was']);
  });
});
