// Days and instants in a shop's own zone (ISO 8601-1; zones by the IANA database in the run time).
import { describe, expect, it } from 'vitest';
import { civilDateOf, formatCivilDate, formatInstant, instant, isCivilDate } from '../../src/units/dates.ts';

describe('a day', () => {
  it.each([
    ['2026-12-08', true],
    ['2024-02-29', true],
    ['2026-02-29', false],
    ['2026-13-01', false],
    ['2026-1-01', false],
    ['2026-12-08T00:00', false],
    ['', false],
  ])('%s is one: %s', (text, is) => {
    expect(isCivilDate(text)).toBe(is);
  });

  it('is the one on the wall of the shop', () => {
    const late = instant(Date.parse('2026-12-08T23:30:00Z'));
    expect(civilDateOf(late, 'Europe/London')).toBe('2026-12-08');
    expect(civilDateOf(late, 'Asia/Tokyo')).toBe('2026-12-09');
    expect(civilDateOf(late, 'America/New_York')).toBe('2026-12-08');
  });

  it('and an instant are said in words', () => {
    expect(formatInstant(instant(Date.parse('2026-12-08T18:05:00Z')), 'Europe/London')).toBe('Tue 8 Dec 2026, 18:05');
    expect(formatInstant(instant(Date.parse('2026-07-08T18:05:00Z')), 'Europe/London')).toBe('Wed 8 Jul 2026, 19:05');
    const day = '2026-12-08';
    if (!isCivilDate(day)) throw new Error('not a day');
    expect(formatCivilDate(day)).toBe('Tue 8 Dec 2026');
  });

  it('before 1970 or after 9999 is no instant', () => {
    for (const ms of [-1, 0.5, 253_402_300_800_000]) expect(() => instant(ms)).toThrow(RangeError);
  });
});
