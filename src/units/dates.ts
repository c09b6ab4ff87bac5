// Two kinds of time: instants in milliseconds, and civil dates in the shop's own zone.

export type Instant = number & { readonly __unit: 'ms' };
export type CivilDate = string & { readonly __unit: 'day' };

/** A known instant in milliseconds since 1970 UTC; throws outside the years 1970 to 9999. */
export function instant(ms: number): Instant {
  if (!Number.isSafeInteger(ms) || ms < 0 || ms > 253_402_300_799_999) throw new RangeError(`not an instant: ${ms}`);
  return ms as Instant;
}

/** Whether `text` is a real day, "2026-12-08" (ISO 8601-1, 5.2.2.1). */
export function isCivilDate(text: string): text is CivilDate {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const at = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}

/** The day on the calendar in `zone` (an IANA name) at that instant. */
export const civilDateOf = (at: Instant, zone: string): CivilDate => clockIn(zone).day.format(at) as CivilDate;

/** "Tue 8 Dec 2026, 18:05" in `zone`. */
export function formatInstant(at: Instant, zone: string): string {
  const { weekday, day, month, year, hour, minute } = partsOf(clockIn(zone).words.formatToParts(at));
  return `${weekday} ${day} ${month} ${year}, ${hour}:${minute}`;
}

/** "2026-12-08T14:30" in `zone`, as a form asks for a time. */
export const localText = (at: number, zone: string): string => clockIn(zone).local.format(at).replace(' ', 'T');

interface Clock {
  readonly day: Intl.DateTimeFormat;
  readonly words: Intl.DateTimeFormat;
  readonly local: Intl.DateTimeFormat;
}
/** Making a formatter costs a hundred times what it takes to use one, and each holds native memory: one set a zone is kept. What a zone answers never depends on it. */
const clocks = new Map<string, Clock>();
/** A shop has one zone; more come only from zones that are tried. */
const CLOCKS_MAX = 20;

function clockIn(zone: string): Clock {
  const known = clocks.get(zone);
  if (known) return known;
  const clock: Clock = {
    day: new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }),
    words: new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...IN_WORDS }),
    local: new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' }),
  };
  if (clocks.size >= CLOCKS_MAX) clocks.clear();
  clocks.set(zone, clock);
  return clock;
}
const IN_WORDS: Intl.DateTimeFormatOptions = {
  weekday: 'short',
  ...{ day: 'numeric', month: 'short', year: 'numeric' },
  ...{ hour: '2-digit', minute: '2-digit', hour12: false },
};

const partsOf = (parts: readonly Intl.DateTimeFormatPart[]): Readonly<Record<string, string>> =>
  Object.fromEntries(parts.map(({ type, value }) => [type, value]));

/** "Tue 8 Dec 2026". */
export function formatCivilDate(day: CivilDate): string {
  return formatInstant(instant(Date.parse(`${day}T12:00:00Z`)), 'UTC').replace(/,.*$/, '');
}

/** Gives moments, in milliseconds since 1970 UTC, their day in the zone: "Tue 8 Dec 2026". */
export const dayIn =
  (zone: string) =>
  (atMs: number): string =>
    formatCivilDate(civilDateOf(instant(atMs), zone));
