// The days a page is asked about: from and to in the address, the last thirty days where they are silent.
import { readControl } from '../../book/codec.js';
import { civilDateOf, instant, isCivilDate } from '../../units/dates.js';
import { policyFor } from '../session/context.js';

const DAY_MS = 24 * 3_600_000;
/** The days that the address names. */
export function daysOf(web, c) {
  const { zone } = policyFor(c);
  const day = (name, ms) => {
    const asked = c.req.query(name) ?? '';
    return isCivilDate(asked) ? asked : civilDateOf(instant(ms), zone);
  };
  return { from: day('from', web.clock() - 30 * DAY_MS), to: day('to', web.clock()) };
}
/** From the first moment of the first day up to the first after the last, in ms, in the shop's zone. */
export function rangeOf({ from, to }, policy) {
  const at = (day) => {
    const read = readControl({ kind: 'instant' }, new Map([['at', [`${day}T00:00`]]]), 'at', policy);
    return read && 'value' in read ? Number(read.value) : 0;
  };
  return [at(from), at(civilDateOf(instant(at(to) + 1.5 * DAY_MS), policy.zone))];
}
