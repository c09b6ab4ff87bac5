// What is asked and refused of readings, one by one: of an entry with two weights and a list of them, on a shelf that holds what a case needs.
import { describe, expect, it } from 'vitest';
import { ask, type Doubt, optional, weight } from '../../src/book/entry.ts';
import { fact } from '../../src/book/facts.ts';
import type { OpenPiece } from '../../src/ledger/expected.ts';
import { overlayOn } from '../../src/ledger/overlay.ts';
import { checkReadings } from '../../src/ledger/plausible.ts';
import { type AnyEntry, entryType, type Values } from '../../src/ledger/registry.ts';
import { newThing, type Rest, type Thing } from '../../src/ledger/thing.ts';
import type { Ref, RefKind } from '../../src/units/ids.ts';
import { type MassUnit, massNg, parseMass } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';

const stepNg = massNg(10_000_000);
const ng = (text: string, unit: MassUnit = 'g') => {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) throw new Error(parsed.problem);
  return parsed.ng;
};
const bench = 'bench' as Ref<'balance'>;
const piece = 'ring' as Ref<'piece'>;
const read = (text: string, more: Partial<Reading> = {}): Reading => ({
  ...{ text, unit: 'g', ng: ng(text, more.unit), basis: 'weighed', balance: bench, stepNg, ...more },
});
const twice = (text: string) => ({ repeats: [text], because: 'so it is' });
const stated = (text: string): Reading => ({ text, unit: 'g', ng: ng(text), basis: 'estimate' });

const thing = (id: string, kind: RefKind, more: Partial<Thing> = {}): Thing => ({ ...newThing(id, kind, id, 1), ...more });
const ranges = (steps: readonly [string, string][]) => steps.map(([max, step]) => ({ maxNg: ng(max), stepNg: ng(step) }));
const balance = thing(bench, 'balance', {
  balance: {
    unit: 'g',
    ranges: ranges([
      ['10', '0.01'],
      ['100', '0.1'],
    ]),
  },
});
const shop = thing('shop', 'shop', { says: { 'tare:tray': `${ng('10.00')}`, terms: '4', 'tare:lid': `${ng('2.00')}` } });
const ring = (rests: readonly Rest[]) =>
  thing(piece, 'piece', {
    ...{ stream: 'job', begun: 7, stepNg, rests: Object.fromEntries(rests.map((one, index) => [`7.${index}`, one])) },
    expected: { ng: rests.reduce((sum, { sign, reading }) => sum + sign * reading.ng, 0), open: {} },
  });

/** A weighing of the ring as `weight`, another reading beside it that says nothing of it, and more of them in a list of parts. */
const entry = (doubt?: Doubt): AnyEntry => ({
  ...entryType('piece_weighed'),
  fields: { weight: weight(), other: optional(weight()) },
  doubt: () => doubt ?? null,
  facts: ({ weight: reading }) => [fact('reading', { of: piece, state: 'finished', reading: reading as Reading })],
});
const check = (
  data: Values,
  {
    rests = [],
    open = [],
    doubt,
    at = 'shop',
  }: { rests?: readonly Rest[]; open?: readonly OpenPiece[]; doubt?: Doubt; at?: string | null } = {},
) => {
  const things = [balance, shop, ring(rests)];
  const none = async () => undefined;
  const shelf = { head: none, entry: none, leaves: async () => [], openPieces: async () => open };
  const overlay = overlayOn({ ...shelf, thing: async (id) => things.find((one) => one.id === id) });
  return checkReadings(overlay, entry(doubt), data, {}, {} as never, at ?? undefined);
};
const inHand = (text: string): Rest => ({ sign: 1, reading: read(text) });

describe('a doubt of the entry itself', () => {
  const doubt = ask('too_much', 'More than there is.', 'other');
  it('is asked beside its field until that very reading has a second one and a reason', async () => {
    const asked = { answer: 'asked', line: 0, code: 'too_much', say: 'More than there is.', field: 'other' };
    const said = (weighed: object, other: object) => check({ weight: read('5.00', weighed), other: read('1.00', other) }, { doubt });
    expect(await said({}, {})).toEqual(asked);
    expect(await said(twice('5.00'), {})).toEqual(asked);
    expect(await said({}, { repeats: ['1.00'] })).toEqual(asked);
    expect(await said({}, { because: 'so it is' })).toEqual(asked);
    expect(await said({}, twice('1.00'))).toBeNull();
  });
  it('of no field is asked of the whole, and no reading answers it', async () => {
    expect(await check({ weight: read('5.00', twice('5.00')) }, { doubt: ask('too_much', 'Really?') })).toMatchObject({
      code: 'too_much',
      field: '',
    });
  });
  it('is not asked where there is none', async () => {
    expect(await check({ weight: read('5.00') })).toBeNull();
  });
});

describe('a reading on a balance', () => {
  it('is held against the range it falls in', async () => {
    const code = async (text: string) => (await check({ weight: read(text) }))?.answer;
    expect(await Promise.all(['9.99', '10.00', '10.01', '10.1', '100.0', '100.1'].map(code))).toEqual([
      ...[undefined, undefined, 'asked', undefined, undefined, 'refused'],
    ]);
  });
  it('is none where no balance is named, and each of several is looked at', async () => {
    expect(await check({ weight: stated('5.003') })).toBeNull();
    expect(await check({ weight: read('5.00'), other: read('5.003') })).toMatchObject({ code: 'not_a_step', field: 'other' });
    expect(await check({ weight: read('5.003', twice('5.003')), other: read('101') })).toMatchObject({
      code: 'over_largest_load',
      field: 'other',
    });
  });
});

describe('a tare', () => {
  const on = (text: string, ...things: readonly [string, string | undefined][]) =>
    read(text, { onPan: things.map(([name, grams]) => (grams === undefined ? { thing: name } : { thing: name, tareNg: ng(grams) })) });
  it('is on the shop’s list, as it stands there, each once; without a shop there is no list', async () => {
    expect(await check({ weight: on('15.0', ['tray', '10.00'], ['lid', '2.00']) })).toBeNull();
    for (const [name, grams] of [
      ['cup', '1.00'],
      ['terms', '4.00'],
      ['lid', '2.01'],
      ['lid', undefined],
    ] as const)
      expect(await check({ weight: on('15.0', ['tray', '10.00'], [name, grams]) })).toMatchObject({
        code: 'tare_not_listed',
        field: 'weight',
      });
    expect(await check({ weight: on('25.0', ['tray', '10.00'], ['tray', '10.00']) })).toMatchObject({ code: 'tare_not_listed' });
    expect(await check({ weight: on('15.0', ['tray', '10.00']) }, { at: 'elsewhere' })).toMatchObject({ code: 'tare_not_listed' });
    expect(await check({ weight: on('15.0', ['tray', '10.00']) }, { at: null })).toMatchObject({ code: 'tare_not_listed' });
  });
  it('leaves more than nothing, all of them together', async () => {
    const left = async (text: string) => (await check({ weight: on(text, ['tray', '10.00'], ['lid', '2.00']) }))?.answer ?? 'good';
    expect(await Promise.all(['12.0', '12.1', '9.00'].map(left))).toEqual(['refused', 'good', 'refused']);
    const say = await check({ weight: on('12.0', ['tray', '10.00'], ['lid', '2.00']) });
    expect(say).toMatchObject({ code: 'nothing_left', say: expect.stringContaining('tray and lid') });
  });
});

describe('what is expected', () => {
  const odd = { answer: 'asked', line: 0, code: 'not_expected', field: 'weight' };
  it('is asked about where the reading is far from it, and not where it is near, or was read again', async () => {
    expect(await check({ weight: read('5.43') }, { rests: [inHand('5.34')] })).toMatchObject(odd);
    expect(await check({ weight: read('5.34') }, { rests: [inHand('5.34')] })).toBeNull();
    expect(await check({ weight: read('5.43', twice('5.43')) }, { rests: [inHand('5.34')] })).toBeNull();
    expect(await check({ weight: read('5.43', { repeats: ['5.43'] }) }, { rests: [inHand('5.34')] })).toMatchObject(odd);
  });
  it('is asked of the reading that is of the thing, and of no other beside it', async () => {
    expect(await check({ weight: read('5.34'), other: read('1.00') }, { rests: [inHand('5.34')] })).toBeNull();
    expect(await check({ weight: read('5.43'), other: read('5.34') }, { rests: [inHand('5.34')] })).toMatchObject(odd);
  });
  it('is nothing where nothing was read before, or the reading is wet', async () => {
    expect(await check({ weight: read('5.43') })).toBeNull();
    expect(await check({ weight: read('5.43', { dry: 'no' }) }, { rests: [inHand('5.34')] })).toBeNull();
  });
  it('rests on readings of balances that are there no more, or never were', async () => {
    const elsewhere = (at: string): Rest => ({ sign: 1, reading: read('5.34', { balance: at as Ref<'balance'> }) });
    for (const at of ['gone', 'shop']) {
      expect(await check({ weight: read('5.43') }, { rests: [elsewhere(at)] })).toBeNull();
      expect(await check({ weight: read('9.43') }, { rests: [elsewhere(at)] })).toMatchObject(odd);
    }
    expect(await check({ weight: stated('9.43') }, { rests: [{ sign: 1, reading: stated('5.34') }] })).toMatchObject(odd);
  });
  it('names a listed tare that may have been left on, by the name it is listed under', async () => {
    const say = await check({ weight: read('7.34') }, { rests: [inHand('5.34')] });
    expect(say).toMatchObject({ say: expect.stringContaining('the lid was on the pan') });
    const none = await check({ weight: read('7.34') }, { rests: [inHand('5.34')], at: null });
    expect(none).toMatchObject({ ...odd, say: expect.not.stringContaining('the lid') });
    const nowhere = await check({ weight: read('7.34') }, { rests: [inHand('5.34')], at: 'elsewhere' });
    expect(nowhere).toMatchObject({ ...odd, say: expect.not.stringContaining('the lid') });
  });
  it('asks after the piece of another job, and never after one of the same', async () => {
    const open = [
      { stream: 'job', name: 'the pair of this job', ng: ng('7.77') },
      { stream: 'another', name: 'a brooch of bag B', ng: ng('7.77') },
    ];
    const say = await check({ weight: read('7.77') }, { rests: [inHand('5.34')], open });
    expect(say).toMatchObject({ say: expect.stringContaining('A brooch of bag B weighs 7.77\u00a0g') });
    const same = await check({ weight: read('7.77') }, { rests: [inHand('5.34')], open: open.slice(0, 1) });
    expect(same).toMatchObject({ ...odd, say: expect.not.stringContaining('in your hand') });
  });
});
