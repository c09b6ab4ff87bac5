// The machine's clock against the newest entry: neither may be right, and nobody but a person can say which.
import type { Instant } from '../units/dates.ts';

/** A clock may be so far behind what it said before. */
const SLACK_MS = 60_000;
/** No shop is shut for longer without somebody wondering. */
const SHUT_MS = 14 * 86_400_000;

/** How a clock that says `now` disagrees with the time the newest entry was written at, as a sentence; null where it does not. */
export function clockTrouble(newest: Instant, now: Instant): string | null {
  const day = new Date(newest).toISOString().slice(0, 10);
  if (newest > now + SLACK_MS) {
    return `The newest entry was written on ${day}, a day and time that this machine’s clock has not reached: the clock is behind now, or was ahead then. Set it right before anything is written.`;
  }
  if (now - newest <= SHUT_MS) return null;
  const today = new Date(now).toISOString().slice(0, 10);
  return `This machine’s clock says that today is ${today}, and the newest entry was written on ${day}. If the shop was not shut for so long, the clock is ahead: set it right before anything is written.`;
}
