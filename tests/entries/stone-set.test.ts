import { describe, expect, it } from 'vitest';
import { stoneSet } from '../../src/entries/stone-set.ts';
import { nameOf, SAMPLES, THINGS, weighed } from '../vectors/samples.ts';
import { deciding, packet, piece, stamp, stone } from './views.ts';

const MELEE_VIEW = { stone: undefined, packet: packet() };
const MELEE = { stone: undefined, packet: THINGS.melee, stones: 11 };

describe('stone_set', () => {
  const decides = deciding(stoneSet);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused with a stone and a packet at once', () => {
    expect(decides({}, { packet: THINGS.melee })).toBe('one_source');
  });
  it('is refused with neither', () => {
    expect(decides({}, { stone: undefined })).toBe('one_source');
  });
  it('is refused when one stone counts as two', () => {
    expect(decides({}, { stones: 2 })).toBe('one_stone_is_one');
  });
  it('is refused for a stone that has gone home', () => {
    expect(decides({ stone: stone({ gone: true }) })).toBe('thing_is_gone');
  });
  it('is refused for a stone that is not out', () => {
    expect(decides({ stone: stone({ loose: false }) })).toBe('stone_not_loose');
  });
  it('is refused when those set and those left are not what the packet holds', () => {
    expect(decides(MELEE_VIEW, { ...MELEE, stones: 10 })).toBe('packet_count_differs');
  });
  it('is refused from a packet without stones', () => {
    expect(decides({ ...MELEE_VIEW, packet: packet({ stonesIn: null }) }, MELEE)).toBe('packet_count_differs');
  });
  it('takes all of a packet, or some with the rest counted', () => {
    expect([decides(MELEE_VIEW, MELEE), decides(MELEE_VIEW, { ...MELEE, stones: 8, left: 3 })]).toEqual([null, null]);
  });
  it('says which stone, or how many from which packet', () => {
    const { stone: _one, ...said } = SAMPLES.stone_set;
    expect(stoneSet.say(SAMPLES.stone_set, nameOf)).toContain('the sapphire');
    expect(stoneSet.say({ ...said, packet: THINGS.melee, stones: 11 }, nameOf)).toContain('11 stones from the melee');
  });
  it('moves the whole of what it came from, or the weight of those set where some are left', () => {
    const { stone: _stone, ...said } = SAMPLES.stone_set;
    const from = { from: THINGS.melee, to: THINGS.ring };
    const all = stoneSet.facts({ ...said, packet: THINGS.melee, stones: 11 }, stamp);
    expect(all).toEqual([{ fact: 'flow', ...from, matter: { kind: 'stones', count: 11 }, whole: true }]);
    const reading = weighed('0.40', 'ct');
    const some = stoneSet.facts({ ...said, packet: THINGS.melee, stones: 8, left: 3, weight: reading }, stamp);
    expect(some).toEqual([{ fact: 'flow', ...from, matter: { kind: 'stones', count: 8 }, reading }]);
  });
});
