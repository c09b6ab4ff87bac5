// Days and instants in a shop's own zone (ISO 8601-1; zones by the IANA database in the run time).
import { afterEach, describe, expect, it, vi } from 'vitest';
import { civilDateOf, formatCivilDate, formatInstant, instant, isCivilDate, localText } from '../../src/units/dates.ts';

afterEach(() => vi.restoreAllMocks());

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

  it('is written in the zone asked for, however many zones were asked for before', () => {
    const at = instant(Date.parse('2026-07-08T18:05:00Z'));
    for (const zone of Intl.supportedValuesOf('timeZone').slice(0, 50)) formatInstant(at, zone);
    expect([formatInstant(at, 'Asia/Kathmandu'), localText(at, 'Asia/Kathmandu')]).toEqual(['Wed 8 Jul 2026, 23:50', '2026-07-08T23:50']);
    expect(formatInstant(at, 'Europe/London')).toBe('Wed 8 Jul 2026, 19:05');
  });

  it('makes its formatters once for a zone, not once for a date: each holds memory outside the heap', () => {
    const Real = Intl.DateTimeFormat;
    const made = vi.spyOn(Intl, 'DateTimeFormat').mockImplementation(function make(...args) {
      return new Real(...args);
    });
    for (let day = 0; day < 100; day++) {
      const at = instant(day * 86_400_000);
      expect([formatInstant(at, 'America/Lima').length > 0, localText(at, 'America/Lima').slice(0, 10)]).toEqual([
        true,
        civilDateOf(at, 'America/Lima'),
      ]);
    }
    expect(made.mock.calls.length).toBe(3);
  });

  it('before 1970 or after 9999 is no instant', () => {
    for (const ms of [-1, 0.5, 253_402_300_800_000]) expect(() => instant(ms)).toThrow(RangeError);
  });
});
