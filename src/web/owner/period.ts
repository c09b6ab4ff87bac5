// The days a page is asked about: from and to in the address, the last thirty days where they are silent.
import { readControl } from '../../book/codec.ts';
import { type CivilDate, civilDateOf, instant, isCivilDate } from '../../units/dates.ts';
import { type Ctx, type Policy, policyFor, type Web } from '../session/context.ts';

export interface Days {
  readonly from: CivilDate;
  readonly to: CivilDate;
}
const DAY_MS = 24 * 3_600_000;

/** The days that the address names. */
export function daysOf(web: Web, c: Ctx): Days {
  const { zone } = policyFor(c);
  const day = (name: string, ms: number) => {
    const asked = c.req.query(name) ?? '';
    return isCivilDate(asked) ? asked : civilDateOf(instant(ms), zone);
  };
  return { from: day('from', web.clock() - 30 * DAY_MS), to: day('to', web.clock()) };
}

/** From the first moment of the first day up to the first after the last, in ms, in the shop's zone. */
export function rangeOf({ from, to }: Days, policy: Policy): readonly [fromMs: number, toMs: number] {
  const at = (day: CivilDate) => {
    const read = readControl({ kind: 'instant' }, new Map([['at', [`${day}T00:00`]]]), 'at', policy);
    return read && 'value' in read ? Number(read.value) : 0;
  };
  return [at(from), at(civilDateOf(instant(at(to) + 1.5 * DAY_MS), policy.zone))];
}
