// The days of a story, told from the day it is read: "12 days ago 09:40", "yesterday 16:30", "today 09:15", "in 5 days". A shop is shut on Sundays.
import { localInstant } from '../src/book/codec.ts';
import { type CivilDate, civilDateOf, type Instant, instant } from '../src/units/dates.ts';

export interface Calendar {
  /** The day of "3 days ago", "yesterday", "today", "in 5 days", counted in days the shop is open; throws on other words. */
  day(words: string): CivilDate;
  /** The moment of "3 days ago 09:40" in the shop's zone; throws on other words. */
  moment(words: string): Instant;
}

/** The calendar of a shop in `zone` as it hangs on the wall at `now`. */
export function calendarAt(now: Instant, zone: string): Calendar {
  const today = civilDateOf(now, zone);
  const day = (words: string) => openDay(today, daysOf(words));
  return {
    day,
    moment(words) {
      const match = /^(.+) (\d\d:\d\d)$/.exec(words);
      const ms = match && localInstant(`${day(match[1] ?? '')}T${match[2]}`, zone);
      if (!ms) throw new Error(`no moment of a story: ${words}`);
      return instant(ms);
    },
  };
}

function daysOf(words: string): number {
  if (words === 'today') return 0;
  if (words === 'yesterday') return -1;
  const match = /^(?:in (\d+) days?|(\d+) days? ago)$/.exec(words);
  if (!match) throw new Error(`no day of a story: ${words}`);
  return match[1] === undefined ? -Number(match[2]) : Number(match[1]);
}

const DAY_MS = 86_400_000;

/** So many open days from a day; Sundays are passed over, whatever day it is counted from. */
function openDay(from: CivilDate, days: number): CivilDate {
  let at = Date.parse(`${from}T12:00:00Z`);
  for (let left = Math.abs(days); left > 0; ) {
    at += Math.sign(days) * DAY_MS;
    if (new Date(at).getUTCDay() !== 0) left--;
  }
  return new Date(at).toISOString().slice(0, 10) as CivilDate;
}
