import { describe, expect, it } from 'vitest';
import { settingNoted } from '../../src/entries/setting-noted.ts';
import { nameOf, SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, piece, stamp } from './views.ts';

describe('setting_noted', () => {
  const decides = deciding(settingNoted);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused with a stone and a group at once', () => {
    expect(decides({}, { packet: THINGS.melee })).toBe('stone_or_group');
  });
  it('is refused when an empty seat is said to hold a stone', () => {
    expect(decides({}, { state: 'empty' })).toBe('empty_seat_has_stone');
  });
  it('is refused when a group is not counted', () => {
    expect(decides({}, { stone: undefined, packet: THINGS.melee })).toBe('group_not_counted');
  });
  it('takes a channel of 11 as one group', () => {
    expect(decides({}, { stone: undefined, packet: THINGS.melee, stones: 11 })).toBeNull();
  });
  it('takes an empty seat', () => {
    expect(decides({}, { stone: undefined, state: 'empty' })).toBeNull();
  });
  it('moves nothing, whatever it tells', () => {
    expect(settingNoted.facts(SAMPLES.setting_noted, stamp).every(({ fact }) => fact === 'identity')).toBe(true);
  });
  it('says of an empty seat no more than that, and of a seat or group what was observed', () => {
    const { stone: _none, stones: _all, cut: _cut, sizeMm: _size, ...least } = SAMPLES.setting_noted;
    const { say } = settingNoted;
    expect(say({ ...least, state: 'empty' }, nameOf)).not.toContain('apphire');
    expect(say(least, nameOf).split(', ')).toHaveLength(3);
    expect(
      say({ ...least, cut: 'old', sizeMm: '6.2' }, nameOf)
        .split(', ')
        .slice(2, 4),
    ).toEqual(['old cut', '6.2\u00a0mm']);
    expect(say(least, nameOf)).not.toContain('×');
    expect(say({ ...least, packet: THINGS.melee, stones: 11 }, nameOf)).toContain('11 × ');
  });
  it('tells of a seat without a stone at the piece itself', () => {
    const { stone: _none, ...said } = SAMPLES.setting_noted;
    const empty = { ...said, state: 'empty' } as const;
    expect(settingNoted.facts(empty, stamp)).toEqual([{ fact: 'identity', of: THINGS.ring, mark: 'seat centre', says: 'empty' }]);
  });
});
