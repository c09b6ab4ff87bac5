// What each fact does to the things it names, against sums worked out by hand: weights are in units of 0.01 g (10,000,000 ng).
import { describe, expect, it } from 'vitest';
import { type End, type Fact, fact, flow, flowOfWhole } from '../../src/book/facts.ts';
import { foldFacts, type Touched } from '../../src/ledger/fold.ts';
import { newThing, type Thing } from '../../src/ledger/thing.ts';
import type { CivilDate } from '../../src/units/dates.ts';
import { type Holding, type Ref, type RefKind, refFromBytes } from '../../src/units/ids.ts';
import { massNg } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';

const STEP = 10_000_000;
const ref = <K extends Exclude<RefKind, 'bag' | 'entry'>>(kind: K, n: number): Ref<K> => refFromBytes(kind, new Uint8Array(16).fill(n));
const ID = {
  job: ref('job', 1),
  otherJob: ref('job', 2),
  ring: ref('piece', 3),
  brooch: ref('piece', 4),
  stone: ref('stone', 5),
  packet: ref('packet', 6),
  lot: ref('lot', 7),
  stock: ref('stock', 8),
  skin: ref('skin', 9),
  shop: ref('shop', 10),
  person: ref('person', 11),
  setter: ref('person', 12),
  balance: ref('balance', 13),
  safe: ref('place', 14),
  tray: ref('place', 15),
} as const;
type Name = keyof typeof ID;
const KIND: Readonly<Partial<Record<Name, RefKind>>> = {
  otherJob: 'job',
  ring: 'piece',
  brooch: 'piece',
  setter: 'person',
  safe: 'place',
  tray: 'place',
};
const OF_JOB: readonly Name[] = ['ring', 'brooch', 'stone', 'packet'];

/** A reading of that many hundredths of a gram. */
const cg = (steps: number, more: Partial<Reading> = {}): Reading => ({
  ...{ text: (steps / 100).toFixed(2), unit: 'g', ng: massNg(steps * STEP), basis: 'weighed', balance: ID.balance, stepNg: massNg(STEP) },
  ...more,
});
const gold = { kind: 'metal', metal: 'gold-750' } as const;
const stones = (count: number) => ({ kind: 'stones', count }) as const;
const mixed = { kind: 'mixed' } as const;
const rest = (sign: 1 | -1, steps: number) => ({ sign, reading: cg(steps) });

/** Folds facts by seq into things that begin at seq 0, and answers them by name. */
function folded(...byLeaf: readonly (readonly Fact[])[]): Readonly<Record<Name, Thing>> {
  const touched: Touched = new Map();
  for (const [name, id] of Object.entries(ID) as [Name, string][]) {
    const stream = OF_JOB.includes(name) ? ID.job : id;
    touched.set(id, newThing(id, KIND[name] ?? (name as RefKind), stream, 0));
  }
  byLeaf.forEach((facts, seq) => {
    foldFacts(touched, seq, facts);
  });
  return Object.fromEntries(Object.entries(ID).map(([name, id]) => [name, touched.get(id)])) as Readonly<Record<Name, Thing>>;
}
const comes = (to: Holding, steps: number | null, of: Fact & { fact: 'flow' } extends { matter: infer M } ? M : never = mixed): Fact =>
  flow('outside', to, of, steps === null ? undefined : cg(steps));
const goes = (from: Holding, to: End, steps: number | null, of: Parameters<typeof flow>[2] = gold): Fact =>
  flow(from, to, of, steps === null ? undefined : cg(steps));

describe('a flow', () => {
  it('is taken from one thing and given to the other, in what is posted and in what is expected', () => {
    const { ring, lot } = folded([comes(ID.ring, 517)], [goes(ID.ring, ID.lot, 134)]);
    expect(ring).toMatchObject({ posted: { ng: 383 * STEP, open: {} }, expected: { ng: 383 * STEP, open: {} } });
    expect(lot).toMatchObject({ posted: { ng: 134 * STEP, open: {} }, expected: { ng: 134 * STEP, open: {} } });
  });
  it('is net of the tares on the pan, and not measured where one of them is not known', () => {
    const onPan = [
      { thing: 'dish', tareNg: massNg(20 * STEP) },
      { thing: 'clip', tareNg: massNg(3 * STEP) },
    ];
    const tared = flow('outside', ID.ring, mixed, cg(540, { onPan }));
    const gross = flow('outside', ID.brooch, mixed, cg(540, { onPan: [...onPan, { thing: 'thread' }] }));
    const { ring, brooch } = folded([tared, gross]);
    expect(ring.posted).toEqual({ ng: 517 * STEP, open: {} });
    expect(brooch.posted).toEqual({ ng: 0, open: { '0.1': 1 } });
    expect(brooch.rests).toEqual({});
  });
  it('that was not measured is open by its seq and fact: +1 where it came in, −1 where it went out', () => {
    const { ring, packet } = folded([comes(ID.ring, 517)], [goes(ID.ring, 'outside', 1), goes(ID.ring, ID.packet, null)]);
    expect(ring).toMatchObject({ posted: { ng: 516 * STEP, open: { '1.1': -1 } }, expected: { ng: 516 * STEP, open: { '1.1': -1 } } });
    expect(packet.posted).toEqual({ ng: 0, open: { '1.1': 1 } });
  });
  it('keeps the readings that an expected weight rests on, with their sign', () => {
    const { ring, packet } = folded([comes(ID.ring, 517)], [goes(ID.ring, ID.packet, 134)], [goes(ID.ring, ID.packet, null)]);
    expect(ring.rests).toEqual({ '0.0': rest(1, 517), '1.0': rest(-1, 134) });
    expect(packet.rests).toEqual({ '1.0': rest(1, 134) });
  });
  it('keeps the coarser of two steps, whichever came first', () => {
    const fine = cg(517, { stepNg: massNg(STEP / 10) });
    expect(folded([flow('outside', ID.ring, mixed, fine)]).ring.stepNg).toBe(STEP / 10);
    expect(folded([flow('outside', ID.ring, mixed, fine), comes(ID.ring, 1)]).ring.stepNg).toBe(STEP);
    expect(folded([comes(ID.ring, 1), flow('outside', ID.ring, mixed, fine)]).ring.stepNg).toBe(STEP);
    expect(folded([flow('outside', ID.ring, mixed, fine)], [goes(ID.ring, ID.lot, null)]).ring.stepNg).toBe(STEP / 10);
  });
  it('to or from a thing that its entry does not name is a bug', () => {
    const there: Touched = new Map([[ID.ring, newThing(ID.ring, 'piece', ID.job, 0)]]);
    expect(() => foldFacts(there, 1, [goes(ID.ring, ID.lot, 1)])).toThrow(`a flow reaches ${ID.lot}`);
    expect(() => foldFacts(there, 1, [goes(ID.lot, ID.ring, 1)])).toThrow(`a flow leaves ${ID.lot}`);
    expect(() => foldFacts(there, 1, [fact('state', { of: ID.job, is: 'agreed' })])).toThrow(`a fact names ${ID.job}`);
  });
  it('between jobs touches no thing but its own end', () => {
    const { ring, job } = folded([comes(ID.ring, 517)], [goes(ID.ring, 'between jobs', 17)]);
    expect(ring.posted.ng).toBe(500 * STEP);
    expect(job).toEqual({ ...newThing(ID.job, 'job', ID.job, 0), pieces: 1 });
  });
});

describe('a pool (lot, stock or skin)', () => {
  it.each(['lot', 'stock', 'skin'] as const)('keeps how many flows were not measured and the first of them: %s', (name) => {
    const into = (seq: number) => (seq === 0 ? comes(ID.ring, 517) : goes(ID.ring, ID[name], null));
    const { [name]: pool, ring } = folded([into(0)], [into(1)], [into(2)], [goes(ID[name], 'outside', null)]);
    expect(pool.posted).toEqual({ ng: 0, open: { '1.0': 3 } });
    expect(pool.expected).toEqual({ ng: 0, open: { '1.0': 3 } });
    expect(ring.posted.open).toEqual({ '1.0': -1, '2.0': -1 });
  });
  it.each(['lot', 'stock', 'skin'] as const)('keeps no reading, however it came by it: %s', (name) => {
    const { [name]: pool } = folded(
      [comes(ID.packet, 134, stones(0))],
      [comes(ID[name], 500)],
      [fact('reading', { of: ID[name], state: 'gathered', reading: cg(498) })],
      [flowOfWhole(ID.packet, ID[name], gold)],
      [goes(ID[name], 'outside', 5)],
    );
    expect(pool.rests).toEqual({});
    expect(pool.expected.ng).toBe((498 + 134 - 5) * STEP);
    expect(pool.posted.ng).toBe((500 + 134 - 5) * STEP);
  });
});

describe('the whole of a thing', () => {
  it('takes its sums, open flows, readings and stones along, and leaves nothing behind', () => {
    const { ring, packet, job } = folded(
      [comes(ID.ring, 517, stones(3))],
      [goes(ID.ring, ID.packet, 40, stones(2)), goes(ID.ring, ID.packet, null, gold)],
      [flowOfWhole(ID.packet, ID.brooch, mixed)],
    );
    expect(packet).toMatchObject({ posted: { ng: 0, open: {} }, expected: { ng: 0, open: {} }, rests: {}, stones: 0, gone: false });
    expect(ring).toMatchObject({ stones: 1, posted: { ng: 477 * STEP, open: { '1.1': -1 } } });
    expect(job.stonesOut).toBe(0);
  });
  it('cancels what had gone out of the thing it comes back to', () => {
    const { ring, stone } = folded(
      [comes(ID.ring, 517, stones(1))],
      [goes(ID.ring, ID.stone, 20, stones(1)), goes(ID.ring, ID.stone, null, gold)],
      [flowOfWhole(ID.stone, ID.ring, mixed)],
    );
    expect(ring).toMatchObject({ posted: { ng: 517 * STEP, open: {} }, expected: { ng: 517 * STEP, open: {} }, stones: 1 });
    expect(ring.rests).toEqual({ '0.0': rest(1, 517) });
    expect(stone.gone).toBe(false);
  });
  it('that was weighed meanwhile brings what it was read at, beside what was read when it went', () => {
    const { ring } = folded(
      [comes(ID.ring, 517, stones(1))],
      [goes(ID.ring, ID.stone, 20, stones(1))],
      [fact('reading', { of: ID.stone, state: 'loose', reading: cg(19) })],
      [flowOfWhole(ID.stone, ID.ring, mixed)],
    );
    expect(ring.expected.ng).toBe(516 * STEP);
    expect(ring.posted.ng).toBe(517 * STEP);
    expect(ring.rests).toEqual({ '0.0': rest(1, 517), '1.0': rest(-1, 20), '2.0': rest(1, 19) });
  });
  it('brings its coarser step', () => {
    const fine = cg(517, { stepNg: massNg(STEP / 10) });
    const coarse = [flow('outside', ID.ring, mixed, fine), comes(ID.packet, 40)];
    expect(folded(coarse, [flowOfWhole(ID.packet, ID.ring, mixed)]).ring.stepNg).toBe(STEP);
    expect(folded(coarse, [flowOfWhole(ID.ring, ID.packet, mixed)]).packet.stepNg).toBe(STEP);
  });
  it('is gone when it leaves the shop, and here again when it comes back', () => {
    const home = [flowOfWhole(ID.ring, 'outside', mixed)];
    const away = folded([comes(ID.ring, 517, stones(3)), comes(ID.brooch, 900)], home);
    expect(away.ring).toMatchObject({ gone: true, stones: 0, posted: { ng: 0, open: {} }, rests: {} });
    expect(away.brooch.gone).toBe(false);
    expect(away.job.pieces).toBe(1);
    const back = folded([comes(ID.ring, 517, stones(3)), comes(ID.brooch, 900)], home, [comes(ID.ring, 516, stones(3))]);
    expect(back.ring).toMatchObject({ gone: false, stones: 3, posted: { ng: 516 * STEP } });
    expect(back.job.pieces).toBe(2);
  });
});

describe('pieces in the shop', () => {
  it('are counted when they come in: in the entry that begins them, and not when matter is added later', () => {
    expect(folded([comes(ID.ring, 517)], [comes(ID.ring, 3, gold)]).job.pieces).toBe(1);
    expect(folded([comes(ID.ring, 517), comes(ID.brooch, 900)]).job.pieces).toBe(2);
  });
  it('are not counted by stones that come in, nor by what moves from one thing to another', () => {
    expect(folded([comes(ID.stone, 20, stones(1))]).job.pieces).toBe(0);
    expect(folded([goes(ID.packet, ID.ring, 5)]).job.pieces).toBe(0);
  });
  it('stay when a part of one leaves, when a stone leaves whole, and when one is put whole into another', () => {
    const here = [comes(ID.ring, 517, stones(1)), comes(ID.brooch, 900)];
    expect(folded(here, [goes(ID.ring, 'outside', 5)]).job.pieces).toBe(2);
    expect(folded(here, [goes(ID.ring, ID.stone, 20, stones(1))], [flowOfWhole(ID.stone, 'outside', mixed)]).job.pieces).toBe(2);
    expect(folded(here, [flowOfWhole(ID.ring, ID.brooch, mixed)]).job.pieces).toBe(2);
  });
  it('of one job are not those of another', () => expect(folded([comes(ID.ring, 517)]).otherJob.pieces).toBe(0));
});

describe('stones', () => {
  it('are counted in what holds them; a job counts those that are out of its pieces', () => {
    const out = folded(
      [comes(ID.ring, 517, stones(5))],
      [goes(ID.ring, ID.packet, null, stones(3)), goes(ID.ring, ID.stone, null, stones(1))],
    );
    expect([out.ring.stones, out.packet.stones, out.stone.stones, out.job.stonesOut]).toEqual([1, 3, 1, 4]);
    const set = folded(
      [comes(ID.ring, 517, stones(5))],
      [goes(ID.ring, ID.packet, null, stones(3))],
      [flow(ID.packet, ID.ring, stones(2))],
    );
    expect([set.ring.stones, set.packet.stones, set.job.stonesOut]).toEqual([4, 1, 1]);
  });
  it('supplied from outside are out until they are set', () => {
    const { stone, job } = folded([comes(ID.stone, 20, stones(1))]);
    expect([stone.stones, job.stonesOut]).toEqual([1, 1]);
  });
  it('do not move with metal', () => {
    const { ring, lot } = folded([comes(ID.ring, 517, stones(5))], [goes(ID.ring, ID.lot, 134)]);
    expect([ring.stones, lot.stones]).toEqual([5, undefined]);
  });
  it('that are counted are the count of a thing that had none, and stay beside the sum of one that had', () => {
    const counted = (n: number) => fact('count', { of: ID.ring, stones: n });
    expect(folded([], [counted(7)]).ring).toMatchObject({ stones: 7, counted: { says: 7, seq: 1 } });
    expect(folded([comes(ID.ring, 1, stones(5))], [counted(7)], [counted(6)]).ring).toMatchObject({
      stones: 5,
      counted: { says: 6, seq: 2 },
    });
  });
});

describe('a reading', () => {
  const read = (reading: Reading) => fact('reading', { of: ID.ring, state: 'as received', reading });
  it('is what is expected from now on, and resets what it rests on; what was posted stays', () => {
    const { ring } = folded([comes(ID.ring, 517)], [goes(ID.ring, ID.lot, null), goes(ID.ring, ID.lot, 3)], [read(cg(500))]);
    expect(ring.expected).toEqual({ ng: 500 * STEP, open: {} });
    expect(ring.rests).toEqual({ '2.0': rest(1, 500) });
    expect(ring.posted).toEqual({ ng: 514 * STEP, open: { '1.0': -1 } });
  });
  it('on a finer balance makes the step finer; without a step it has none', () => {
    expect(folded([comes(ID.ring, 517)], [read(cg(500, { stepNg: massNg(STEP / 10) }))]).ring.stepNg).toBe(STEP / 10);
    const { stepNg: _, ...estimate } = cg(500, { basis: 'estimate' });
    expect(folded([comes(ID.ring, 517)], [read(estimate)]).ring.stepNg).toBe(0);
  });
  it.each([
    ['wet', cg(500, { dry: 'no' })],
    ['perhaps wet', cg(500, { dry: 'unsure' })],
    ['gross of an unknown tare', cg(500, { onPan: [{ thing: 'thread' }] })],
  ])('that is %s says nothing about the thing alone', (_, reading) => {
    const before = folded([comes(ID.ring, 517)]).ring;
    expect(folded([comes(ID.ring, 517)], [read(reading)]).ring).toEqual(before);
  });
  it.each(['yes', undefined] as const)('that is dry: %s counts', (dry) =>
    expect(folded([comes(ID.ring, 517)], [read(cg(500, dry ? { dry } : {}))]).ring.expected.ng).toBe(500 * STEP),
  );
  it('is kept with the members that its worth rests on, and no others', () => {
    const onPan = [
      { thing: 'dish', tareNg: massNg(STEP) },
      { thing: 'clip', tareNg: massNg(0) },
    ];
    const { ring } = folded([read(cg(500, { onPan, dry: 'yes', repeats: ['5.00'], because: 'again', raw: 'AAAA', formula: 'f' }))]);
    expect(ring.rests['0.0']?.reading).toEqual(cg(500, { onPan }));
    const { balance: _, stepNg: __, ...estimate } = cg(500, { basis: 'estimate' });
    expect(folded([read(estimate)]).ring.rests['0.0']?.reading).toStrictEqual(estimate);
  });
});

describe('what is said of a thing', () => {
  it('by mark holds beside what other marks say, the last one of a mark', () => {
    const says = (mark: string, text: string) => fact('identity', { of: ID.ring, mark, says: text });
    expect(folded([says('kind', 'ring'), says('hallmark', 'a')], [says('hallmark', 'b')]).ring.says).toEqual({
      kind: 'ring',
      hallmark: 'b',
    });
  });
  it('of its owners holds for each part, beside the others', () => {
    const title = (part: 'whole' | 'dust' | 'cut metal', owner: 'customer' | 'shop') => fact('title', { of: ID.job, part, owner });
    expect(
      folded([title('whole', 'customer'), title('dust', 'shop')], [title('cut metal', 'customer'), title('dust', 'customer')]).job.title,
    ).toEqual({
      whole: 'customer',
      'cut metal': 'customer',
      dust: 'customer',
    });
  });
  it('of money holds for each purpose, beside the others', () => {
    const money = (purpose: string, minor: number) => fact('money', { of: ID.job, for: purpose, minor, currency: 'GBP' });
    expect(folded([money('price', 5000), money('deposit', 1000)], [money('price', 6000)]).job.money).toEqual({
      price: { minor: 6000, currency: 'GBP' },
      deposit: { minor: 1000, currency: 'GBP' },
    });
  });
  it('of who holds it and to whom it is offered are two things, each with the entry that said it', () => {
    const offered = fact('custody', { of: ID.ring, is: 'offered to', holder: ID.setter });
    const taken = fact('custody', { of: ID.ring, is: 'with', holder: ID.setter });
    const { ring } = folded([fact('custody', { of: ID.ring, is: 'with', holder: ID.person })], [offered]);
    expect(ring).toMatchObject({ custody: { says: ID.person, seq: 0 }, offered: { says: ID.setter, seq: 1 } });
    expect(folded([offered], [taken]).ring).toMatchObject({ custody: { says: ID.setter, seq: 1 }, offered: { says: ID.setter, seq: 0 } });
  });
  it('of its place is the last that was said, and of no other thing', () => {
    const { ring, brooch } = folded([fact('place', { of: ID.ring, at: ID.safe })], [fact('place', { of: ID.ring, at: ID.tray })]);
    expect(ring.place).toEqual({ says: ID.tray, seq: 1 });
    expect(brooch.place).toBeUndefined();
  });
  it('of holds is a list, from which one is lifted and the others stay', () => {
    const hold = (why: string, on: boolean) => fact('hold', { of: ID.job, why, on });
    expect(folded([hold('theft', true), hold('estate', true)]).job.holds).toEqual(['theft', 'estate']);
    expect(folded([hold('theft', true), hold('estate', true)], [hold('theft', false)]).job.holds).toEqual(['estate']);
  });
  it('of its state, its promise, a role, a policy or a balance is the last that was said', () => {
    const ranges = [{ maxNg: massNg(400e9), stepNg: massNg(STEP) }];
    const last = folded(
      [fact('state', { of: ID.job, is: 'agreed' }), fact('promise', { of: ID.job, by: '2027-01-01' as CivilDate })],
      [fact('state', { of: ID.job, is: 'finished' }), fact('promise', { of: ID.job, by: '2027-02-01' as CivilDate })],
      [fact('role', { of: ID.person, role: 'bench' }), fact('policy', { of: ID.shop, name: 'zone', says: 'Europe/London' })],
      [fact('role', { of: ID.person, role: 'left' }), fact('policy', { of: ID.shop, name: 'words', says: 'uk' })],
      [fact('balance', { of: ID.balance, unit: 'g', ranges, repeatabilityNg: massNg(STEP) })],
    );
    expect(last.job).toMatchObject({ status: 'finished', promise: '2027-02-01' });
    expect(last.person.role).toBe('left');
    expect(last.shop.says).toEqual({ zone: 'Europe/London', words: 'uk' });
    expect(last.balance.balance).toStrictEqual({ unit: 'g', ranges, repeatabilityNg: STEP });
    expect(folded([fact('balance', { of: ID.balance, unit: 'ct', ranges })]).balance.balance).toStrictEqual({ unit: 'ct', ranges });
  });
  it('by a correction changes nothing by itself', () => {
    const correction = fact('correction', { of: 'A'.repeat(43) as Ref<'entry'>, field: 'weight', is: 1 });
    expect(folded([correction])).toEqual(folded([]));
  });
});
