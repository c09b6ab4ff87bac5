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
export function civilDateOf(at: Instant, zone: string): CivilDate {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(at);
  return parts as CivilDate;
}

/** "Tue 8 Dec 2026, 18:05" in `zone`. */
export function formatInstant(at: Instant, zone: string): string {
  const part = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...options }).format(at);
  const day = `${part({ weekday: 'short' })} ${part({ day: 'numeric' })} ${part({ month: 'short' })} ${part({ year: 'numeric' })}`;
  return `${day}, ${part({ hour: '2-digit', minute: '2-digit', hour12: false })}`;
}

/** "Tue 8 Dec 2026". */
export function formatCivilDate(day: CivilDate): string {
  return formatInstant(instant(Date.parse(`${day}T12:00:00Z`)), 'UTC').replace(/,.*$/, '');
}
