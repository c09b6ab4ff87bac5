// What an entry may know of a thing: the latest of what was said of it and of its job, sums that are known or not, and a view for each kind.
import { describe, expect, it } from 'vitest';
import { addOpen, EMPTY, holderOf, mergeTallies, newThing, placeOf, stateOf, sumOf, type Thing } from '../../src/ledger/thing.ts';
import type { Ref, RefKind } from '../../src/units/ids.ts';
import { massNg } from '../../src/units/mass.ts';

const thing = (kind: RefKind, more: Partial<Thing> = {}): Thing => ({ ...newThing(`one ${kind}`, kind, 'a job', 3), ...more });
const [ada, ben] = ['ada', 'ben'] as [Ref<'person'>, Ref<'person'>];
const said = <T>(says: T, seq: number) => ({ says, seq });

describe('a tally', () => {
  it('adds sums and counts open flows; those that came back are no longer open', () => {
    const a = { ng: 5, open: { '1.0': 1, '2.0': -1, '3.0': 1 } };
    expect(mergeTallies(a, { ng: 7, open: { '2.0': 1, '3.0': 1, '4.0': -1 } })).toEqual({
      ng: 12,
      open: { '1.0': 1, '3.0': 2, '4.0': -1 },
    });
    expect(a.open).toEqual({ '1.0': 1, '2.0': -1, '3.0': 1 });
  });
  it('of a pool counts on its first open flow; of anything else it keeps each', () => {
    expect(addOpen('lot', EMPTY, '1.0', -1)).toEqual({ ng: 0, open: { '1.0': -1 } });
    expect(addOpen('lot', { ng: 4, open: { '1.0': 2 } }, '2.0', -1)).toEqual({ ng: 4, open: { '1.0': 3 } });
    expect(addOpen('piece', { ng: 4, open: { '1.0': 1 } }, '2.0', -1)).toEqual({ ng: 4, open: { '1.0': 1, '2.0': -1 } });
  });
  it('is known while nothing is open, and otherwise not since the first open entry', () => {
    expect(sumOf({ ng: 5, open: {} })).toEqual({ ng: 5 });
    expect(sumOf({ ng: 5, open: { '12.0': 1, '9.1': -1, '30.0': 1 } })).toEqual({ unknownSince: 9 });
  });
});

describe('who holds a thing and where it is', () => {
  it('is the latest of what was said of it and of its job', () => {
    const own = thing('piece', { custody: said(ada, 5), place: said('safe', 5) });
    const job = (seq: number) => thing('job', { custody: said(ben, seq), place: said('tray', seq) });
    expect([holderOf(own, job(4)), placeOf(own, job(4))]).toEqual([ada, 'safe']);
    expect([holderOf(own, job(6)), placeOf(own, job(6))]).toEqual([ben, 'tray']);
    expect([holderOf(own, undefined), placeOf(own, undefined)]).toEqual([ada, 'safe']);
    expect([holderOf(thing('piece'), job(6)), placeOf(thing('piece'), job(6))]).toEqual([ben, 'tray']);
    expect([holderOf(thing('piece'), thing('job')), placeOf(thing('piece'), undefined)]).toEqual([null, null]);
  });
  const offer = (own: Partial<Thing>, job: Partial<Thing> = {}) => {
    const state = stateOf(thing('piece', own), thing('job', job));
    return 'offeredTo' in state ? state.offeredTo : 'no such member';
  };
  it('is offered until somebody took it, it or its whole job', () => {
    expect(offer({ offered: said(ada, 5) })).toBe(ada);
    expect(offer({ offered: said(ada, 0) })).toBe(ada);
    expect(offer({ offered: said(ada, 5), custody: said(ben, 4) })).toBe(ada);
    expect(offer({ offered: said(ada, 5), custody: said(ada, 6) })).toBeNull();
    expect(offer({ offered: said(ada, 5), custody: said(ada, 5) })).toBeNull();
    expect(offer({ offered: said(ada, 5) }, { custody: said(ada, 6) })).toBeNull();
    expect(offer({ offered: said(ada, 5), custody: said(ben, 3) }, { custody: said(ben, 4) })).toBe(ada);
    expect(offer({ offered: said(ada, 5) }, { offered: said(ben, 6) })).toBe(ben);
    expect(offer({ offered: said(ada, 7) }, { offered: said(ben, 6) })).toBe(ada);
    expect(offer({}, {})).toBeNull();
  });
});

describe('the view of a thing', () => {
  const [posted, expected] = [
    { ng: 5, open: {} },
    { ng: 4, open: { '7.0': 1 } },
  ];
  const job = thing('job', { status: 'agreed', holds: ['estate'], stonesOut: 2, custody: said(ada, 4) });
  const held = { holder: ada, offeredTo: null, holds: ['theft', 'estate'] };
  const mass = { balance: { ng: 5 }, expected: { unknownSince: 7 }, gone: false };
  const own = { posted, expected, holds: ['theft'] };
  it.each(['shop', 'customer', 'place', 'bag'] as const)('of a %s is what was said of it', (kind) =>
    expect(stateOf(thing(kind, { says: { name: 'x' } }), undefined)).toEqual({ kind, id: `one ${kind}`, says: { name: 'x' } }),
  );
  it('of a person has a role; of one that none was given to, that of one who left', () => {
    expect(stateOf(thing('person', { role: 'bench' }), undefined)).toMatchObject({ kind: 'person', role: 'bench' });
    expect(stateOf(thing('person'), undefined)).toMatchObject({ role: 'left' });
  });
  it('of a balance has its unit and ranges', () => {
    const ranges = [{ maxNg: massNg(9), stepNg: massNg(3) }];
    expect(stateOf(thing('balance', { balance: { unit: 'ct', ranges } }), undefined)).toMatchObject({ unit: 'ct', ranges });
    expect(stateOf(thing('balance'), undefined)).toMatchObject({ unit: 'g', ranges: [] });
  });
  it('of a job has its status, owners and counts', () => {
    const full = thing('job', {
      status: 'finished',
      title: { 'cut metal': 'customer', dust: 'shop' },
      pieces: 2,
      stonesOut: 3,
      holds: ['a'],
    });
    expect(stateOf(full, undefined)).toMatchObject({
      ...{ kind: 'job', status: 'finished', cutMetal: 'customer', dust: 'shop', piecesIn: 2, stonesOut: 3, holds: ['a'], holder: null },
    });
    expect(stateOf(thing('job'), undefined)).toMatchObject({ status: 'open', cutMetal: null, dust: null });
  });
  it('of a piece, a stone and a packet says what is in it and how its job stands', () => {
    const more = { ...own, stones: 3 };
    const common = { ...mass, ...held, jobStatus: 'agreed' };
    expect(stateOf(thing('piece', more), job)).toMatchObject({ kind: 'piece', ...common, stonesIn: 3, stonesOut: 2, says: {} });
    expect(stateOf(thing('stone', more), job)).toMatchObject({ kind: 'stone', ...common, loose: true });
    expect(stateOf(thing('stone', { ...own, stones: 0 }), job)).toMatchObject({ loose: false });
    expect(stateOf(thing('stone', own), job)).toMatchObject({ loose: false });
    expect(stateOf(thing('packet', more), job)).toMatchObject({ kind: 'packet', ...common, stonesIn: 3 });
    expect(stateOf(thing('packet', own), job)).toMatchObject({ stonesIn: null });
    expect(stateOf(thing('piece', { ...own, gone: true }), undefined)).toMatchObject({
      gone: true,
      jobStatus: 'open',
      stonesIn: null,
      stonesOut: 0,
    });
  });
  it('of a lot, stock or skin has its metal', () => {
    const said = { ...own, says: { metal: 'gold-750' } };
    expect(stateOf(thing('lot', { ...said, status: 'sealed' }), undefined)).toMatchObject({
      kind: 'lot',
      ...mass,
      status: 'sealed',
      metal: 'gold-750',
    });
    expect(stateOf(thing('lot', own), undefined)).toMatchObject({ status: 'open', metal: 'other' });
    expect(stateOf(thing('stock', said), undefined)).toMatchObject({ kind: 'stock', ...mass, metal: 'gold-750' });
    expect(stateOf(thing('skin', said), undefined)).toMatchObject({ kind: 'skin', ...mass, metal: 'gold-750' });
  });
  it('is none for an entry', () => expect(() => stateOf(thing('entry'), undefined)).toThrow('not a thing'));
});
