import { describe, expect, it } from 'vitest';
import { stoneUnset } from '../../src/entries/stone-unset.ts';
import { nameOf, SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, piece, stamp, stone } from './views.ts';

describe('stone_unset', () => {
  const decides = deciding(stoneUnset);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused with a stone and a packet at once', () => {
    expect(decides({}, { packet: THINGS.melee })).toBe('one_destination');
  });
  it('is refused with neither', () => {
    expect(decides({}, { stone: undefined })).toBe('one_destination');
  });
  it('is refused for a stone that has gone home', () => {
    expect(decides({ stone: stone({ gone: true }) })).toBe('thing_is_gone');
  });
  it('is refused for a stone that is out already', () => {
    expect(decides({ stone: stone({ loose: true }) })).toBe('stone_is_loose');
  });
  it('is refused when more come out than are in', () => {
    expect(decides({}, { stone: undefined, packet: THINGS.melee, stones: 4 })).toBe('more_than_are_in');
  });
  it('takes all that are in', () => {
    expect(decides({}, { stone: undefined, packet: THINGS.melee, stones: 3 })).toBeNull();
  });
  it('is refused when one stone counts as two', () => {
    expect(decides({ stone: stone({ loose: false }) }, { stones: 2 })).toBe('one_stone_is_one');
  });
  it('refuses nothing on a piece whose stones were never counted', () => {
    expect(decides({ piece: piece({ stonesIn: null }) }, { stone: undefined, packet: THINGS.melee, stones: 40 })).toBeNull();
  });
  it('takes a stone that was not noted before', () => {
    expect(decides({ stone: undefined })).toBeNull();
  });
  it('says which stone, or how many into which packet', () => {
    const { stone: _one, ...said } = SAMPLES.stone_unset;
    expect(stoneUnset.say(SAMPLES.stone_unset, nameOf)).toContain('the sapphire');
    expect(stoneUnset.say({ ...said, packet: THINGS.melee, stones: 11 }, nameOf)).toContain('11 stones into the melee');
  });
  it('moves the stones with their weight', () => {
    const { stone: _one, ...said } = SAMPLES.stone_unset;
    const matter = { kind: 'stones', count: 3 };
    const facts = stoneUnset.facts({ ...said, packet: THINGS.melee, stones: 3 }, stamp);
    expect(facts[0]).toEqual({ fact: 'flow', from: THINGS.ring, to: THINGS.melee, matter, reading: said.weight });
  });
});
