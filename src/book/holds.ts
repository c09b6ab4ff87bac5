// Holds: what stops hand-back, melting and shipment. A hold until a day ends by itself when that day comes.
import type { CivilDate } from '../units/dates.ts';

const UNTIL = 'until ';

/** The reason of a hold that ends when `day` comes. */
export const holdUntil = (day: CivilDate): string => UNTIL + day;

/** The reasons that still hold on `today`, in the order given. */
export const standing = (holds: readonly string[], today: CivilDate): readonly string[] =>
  holds.filter((why) => !why.startsWith(UNTIL) || why.slice(UNTIL.length) > today);
