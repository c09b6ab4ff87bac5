// What is expected on the pan, how far off is odd, and which plain mistakes are named. Masses are invented; uncertainties are reckoned by hand.
import { describe, expect, it } from 'vitest';
import { expectedOf, isOdd, lastReading, type OpenPiece, oddWords, usualOff } from '../../src/ledger/expected.ts';
import { newThing, type Rest, type Thing } from '../../src/ledger/thing.ts';
import type { Ref, RefKind } from '../../src/units/ids.ts';
import { type MassUnit, massNg, parseMass } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { parametersOf } from '../../src/weighing/worth.ts';

const bench = 'bench' as Ref<'balance'>;
const step = massNg(10_000_000);
const ng = (text: string, unit: MassUnit = 'g') => {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) throw new Error(parsed.problem);
  return parsed.ng;
};
const read = (text: string, more: Partial<Reading> = {}): Reading => ({
  ...{ text, unit: 'g', ng: ng(text, more.unit), basis: 'weighed', balance: bench, stepNg: step, ...more },
});
/** An amount that no balance showed. */
const stated = (text: string): Reading => ({ text, unit: 'g', ng: ng(text), basis: 'estimate', stepNg: step });
const stepless = ({ stepNg: _, ...reading }: Reading): Reading => reading;
const balances = new Map([[bench, parametersOf(bench, { unit: 'g', ranges: [{ maxNg: ng('4000'), stepNg: step }] }, {})]]);
const none = new Map<string, never>();
const rest = (text: string, sign: 1 | -1 = 1): Rest => ({ sign, reading: read(text) });
/** A thing begun by entry 3 that rests on these readings. */
const thing = (rests: Thing['rests'], kind: RefKind = 'piece', more: Partial<Thing> = {}): Thing => {
  const sum = Object.values(rests).reduce((all, { sign, reading }) => all + sign * reading.ng, 0);
  return { ...newThing('it', kind, 'a job', 3), rests, stepNg: step, expected: { ng: sum, open: {} }, ...more };
};

describe('what is expected', () => {
  it('is the sum of what it rests on, give or take two standard uncertainties of them and of one reading more, up to the next step', () => {
    // A stated tenth either way, rectangular: u = 0.2/√12 = 0.0577 g each, 2u of both 0.163 g, of all three 0.2 g (JCGM 100, 4.3.7 and 5.1.2).
    const one = thing({ '3.0': { sign: 1, reading: stated('1.00') } });
    expect(expectedOf(one, none, stated('1.00'))).toEqual({ ng: ng('1'), marginNg: ng('0.17'), stepNg: step });
    const two = thing({ '3.0': { sign: 1, reading: stated('1.00') }, '5.0': { sign: -1, reading: stated('1.00') } });
    expect(expectedOf(two, none, stated('1.00'))).toEqual({ ng: 0, marginNg: ng('0.20'), stepNg: step });
  });
  it('shares the error of one balance with what is read next: a large thing is known as well as a small one', () => {
    const margin = (text: string) => expectedOf(thing({ '3.0': rest(text) }), balances, read(text))?.marginNg;
    expect(margin('1000.00')).toBe(margin('10.00'));
    expect(margin('10.00')).toBeLessThan(ng('0.06'));
  });
  it('is shown to the coarser of the two steps, and to 0.01 g where no balance had one', () => {
    const coarse = massNg(10 * step);
    const stepOf = (own: number, next?: number) =>
      expectedOf(
        thing({ '3.0': rest('5.00') }, 'piece', { stepNg: own }),
        balances,
        next === undefined ? stepless(read('5.00')) : read('5.00', { stepNg: massNg(next) }),
      )?.stepNg;
    expect([stepOf(step, coarse), stepOf(coarse, step), stepOf(coarse), stepOf(0, coarse), stepOf(0)]).toEqual([
      ...[coarse, coarse, coarse, coarse, step],
    ]);
  });
  it('is reckoned for another reading like the first that came in, where none is given', () => {
    const first = read('5.00');
    const rests = { '3.0': rest('1.00', -1), '4.0': { sign: 1, reading: first }, '5.0': rest('6.00') } as const;
    expect(lastReading(thing(rests))).toBe(first);
    expect(lastReading(thing({}))).toBeUndefined();
    expect(expectedOf(thing(rests), balances)).toEqual(expectedOf(thing(rests), balances, first));
    expect(expectedOf(thing(rests), balances, stated('5.00'))?.marginNg).toBeGreaterThan(expectedOf(thing(rests), balances)?.marginNg ?? 0);
  });
  it('is nothing where no reading came in, none is kept, or something went unweighed since', () => {
    expect(expectedOf(thing({ '3.0': rest('1.00', -1) }), balances)).toBeNull();
    expect(expectedOf(thing({}), balances, read('1.00'))).toBeNull();
    expect(expectedOf(thing({ '3.0': rest('5.00') }, 'piece', { expected: { ng: 0, open: { '4.0': -1 } } }), balances)).toBeNull();
  });
});

describe('what is usual', () => {
  const job = { ...newThing('a job', 'job', 'a job', 2), says: { work: 'size-up' } };
  const gold = { says: { metal: 'gold-750' } };
  it('is a fiftieth as dirt at the first cleaning, while all it rests on is as received', () => {
    const received = thing({ '3.0': rest('10.00'), '3.1': rest('2.00') }, 'piece', gold);
    expect(usualOff(received, job, 'cleaned and dry')).toEqual({ ng: ng('0.24'), as: 'dirt' });
    expect(usualOff(received, job, 'finished').as).toBe('dust');
    const since = thing({ '3.0': rest('10.00'), '7.0': rest('2.00') }, 'piece', gold);
    expect(usualOff(since, job, 'cleaned and dry').as).toBe('dust');
    expect(usualOff(thing({ '7.0': rest('10.00') }, 'piece', gold), job, 'cleaned and dry').as).toBe('dust');
  });
  it('is dust of the work agreed, and nothing without a job, off a stone, or where the weight is not known', () => {
    const received = thing({ '3.0': rest('12.00') }, 'piece', gold);
    // Between a loss of 0.4 % and one of 2 %: the table's own figures for a sizing (common practice, no source).
    expect(usualOff(received, job, 'finished').ng).toBeGreaterThan(ng('0.048'));
    expect(usualOff(received, job, 'finished').ng).toBeLessThan(ng('0.24'));
    expect(usualOff(received, undefined, 'finished')).toEqual({ ng: 0, as: 'dust' });
    expect(usualOff(received, { ...job, says: {} }, 'finished')).toEqual({ ng: 0, as: 'dust' });
    expect(usualOff({ ...received, kind: 'stone' }, job, 'cleaned and dry')).toEqual({ ng: 0, as: 'dust' });
    expect(usualOff({ ...received, expected: { ng: 5, open: { '4.0': -1 } } }, job, 'finished')).toEqual({ ng: 0, as: 'dust' });
  });
});

describe('odd', () => {
  it('is a reading beyond the margin above, or beyond the margin and what is usual below', () => {
    const odd = (text: string) => isOdd({ ng: ng('5.00'), marginNg: ng('0.03'), stepNg: step }, { ng: ng('0.10'), as: 'dust' }, ng(text));
    expect(['4.86', '4.87', '4.99', '5.03', '5.04'].map(odd)).toEqual([true, false, false, false, true]);
  });
});

describe('the question', () => {
  const ask = (
    rests: Thing['rests'],
    reading: Reading,
    {
      usualNg = 0,
      tares = [],
      others = [],
    }: { usualNg?: number; tares?: readonly { name: string; ng: number }[]; others?: OpenPiece[] } = {},
  ) => {
    const it = thing(rests);
    const expected = expectedOf(it, balances, reading);
    if (!expected) throw new Error('nothing is expected');
    return oddWords(it, reading, expected, { ng: usualNg, as: 'dust' }, { balances, tares, others });
  };
  const other = (name: string, text: string): OpenPiece => ({ stream: 'another', name, ng: ng(text) });

  it('gives both figures to the step and names a slip of the reading in hand, not of one that stands', () => {
    const say = ask({ '3.0': rest('12.34') }, read('12.43'));
    expect(say).toContain('12.43\u00a0g was read and 12.34\u00a0g is expected');
    expect(say).toContain('12.43 written for 12.34');
    expect(say).not.toContain('12.34 written for');
  });
  it('names none where none would explain it', () => {
    const say = ask({ '3.0': rest('12.34') }, read('13.11'));
    expect(say).not.toMatch(/slip|written for|in your hand/);
  });
  it('says what is usual from one step on', () => {
    const usual = (usualNg: number) => ask({ '3.0': rest('12.34') }, read('13.11'), { usualNg });
    expect(usual(step)).toContain('Up to 0.01\u00a0g is usual as dust');
    expect(usual(step - 1)).not.toContain('usual as');
  });
  it('asks after the piece of another job that weighs as much, and only after that one', () => {
    const others = [other('brooch of bag B', '4.00'), other('ring of bag C', '7.77'), other('chain of bag D', '9.00')];
    const say = ask({ '3.0': rest('12.34') }, read('7.77'), { others });
    expect(say).toContain('Ring of bag C weighs 7.77\u00a0g. Is that the piece in your hand?');
    expect(say).not.toMatch(/slip of the pen|Brooch|Chain/);
    expect(ask({ '3.0': rest('12.34') }, read('7.77'), { others: [other('brooch of bag B', '4.00')] })).not.toContain('in your hand');
  });
  it('asks after it beside a slip of the pen, and takes no tray for a piece of the same name', () => {
    const tray = { name: 'tray', ng: ng('10.00') };
    const both = ask({ '3.0': rest('12.34') }, read('22.34'), { tares: [tray], others: [other('ring of bag C', '22.34')] });
    expect(both).toContain('Ring of bag C weighs');
    expect(both).toContain('It may be a slip of the pen: the tray was on the pan');
    const named = ask({ '3.0': rest('12.34') }, read('22.34'), { tares: [tray], others: [other('tray', '4.00')] });
    expect(named).not.toContain('in your hand');
  });
  it('names three slips at most', () => {
    const tares = ['cup', 'dish', 'lid', 'tray'].map((name) => ({ name, ng: ng('10.00') }));
    const say = ask({ '3.0': rest('12.34') }, read('22.34'), { tares });
    expect(say).toContain('the cup was on the pan when 22.34 was read, or the dish was on the pan when 22.34 was read, or the lid');
    expect(say).not.toContain('the tray');
  });
  it('says neither that a thing in the hand was counted twice nor that it went the other way', () => {
    const back = { '3.0': rest('5.00'), '4.0': rest('5.00', -1) };
    expect(ask(back, read('5.00'))).not.toContain('counted twice');
    expect(ask({ '3.0': rest('5.00'), '4.0': rest('10.00', -1) }, read('5.00'))).not.toContain('wrong direction');
  });
  it('takes off what is on the pan before it looks for a slip', () => {
    const onPan = [{ thing: 'tray', tareNg: ng('10.00') }];
    expect(ask({ '3.0': rest('5.34') }, read('15.43', { onPan }))).toContain('15.43 written for 15.34');
  });
  it('tells a coarser balance by its step, and nothing of the kind of a reading without one', () => {
    const rests = { '3.0': rest('12.44') };
    expect(ask(rests, read('12.50'))).toContain('12.50 is what one with steps of 0.1\u00a0g shows');
    expect(ask(rests, stepless(read('12.50')))).not.toContain('with steps of');
  });
});
