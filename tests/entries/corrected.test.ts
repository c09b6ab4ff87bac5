import { describe, expect, it } from 'vitest';
import { anyStaff, anyStaffByPin, ownerByPassword } from '../../src/book/may.ts';
import { corrected } from '../../src/entries/corrected.ts';
import { SAMPLES, THINGS, weighed } from '../vectors/samples.ts';
import { deciding, entry, part, stamp } from './views.ts';

const WAS = SAMPLES.corrected.was;

describe('corrected', () => {
  const decides = deciding(corrected);

  it('is refused for an entry of another number', () => {
    expect(decides({}, { seq: 40 })).toBe('other_number');
  });
  it('is refused for a part that the entry does not have', () => {
    expect(decides({}, { field: 'colour' })).toBe('no_such_field');
  });
  it('is refused for what was said or agreed', () => {
    expect(decides({ target: entry({ fields: [part('weight', WAS, { correctable: false })] }) })).toBe('not_correctable');
  });
  it('is refused when nothing is given', () => {
    expect(decides({}, { was: undefined, is: undefined })).toBe('nothing_given');
  });
  it('is refused when the entry says something else by now', () => {
    expect(decides({}, { was: weighed('5.70') })).toBe('says_otherwise');
  });
  it('is refused when it says that already', () => {
    expect(decides({}, { is: WAS })).toBe('nothing_changes');
  });
  it('is refused when the entry’s own form would not take it', () => {
    expect(decides({ target: entry({ fields: [part('weight', WAS, { takes: () => false })] }) })).toBe('not_taken');
  });
  it('takes a weight that was left out at first', () => {
    expect(decides({ target: entry({ fields: [part('weight', undefined)] }) }, { was: undefined })).toBeNull();
  });
  it('takes a weight away', () => {
    expect(decides({}, { is: undefined })).toBeNull();
  });
  it('asks who may of whoever may write what it corrects, and a PIN of another hand or after hand-back', () => {
    const may = (over: Parameters<typeof entry>[0], by = THINGS.owner) => {
      if (typeof corrected.may !== 'function') throw new Error('asks the same of everybody');
      return corrected.may({ target: entry(over) }, SAMPLES.corrected, { by });
    };
    expect(may({})).toEqual(anyStaff);
    expect(may({}, THINGS.setter)).toEqual(anyStaffByPin);
    expect(may({ afterHandBack: true })).toEqual(anyStaffByPin);
    expect(may({ may: ownerByPassword })).toEqual(ownerByPassword);
    expect(may({ may: ownerByPassword, afterHandBack: true }, THINGS.setter)).toEqual(ownerByPassword);
  });
  it('takes a part away where nothing is said instead', () => {
    const { is: _gone, ...said } = SAMPLES.corrected;
    expect(corrected.facts(said, stamp)).toStrictEqual([{ fact: 'correction', of: THINGS.entry, field: 'weight' }]);
  });
});
