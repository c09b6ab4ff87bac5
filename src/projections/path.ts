// Which path a job is on: small work stays a short ticket until something in its entries asks for more; it then stays on the full path.
import type { Thing } from '../ledger/thing.ts';

/** Steps that bring heat to the piece. */
const HEAT = ['solder', 'laser', 'size-up', 'size-down', 'half-shank', 're-shank', 're-tip', 're-claw', 're-head', 'remount', 'remodel'];
const UNSEEN = ['closed', 'foiled', 'not seen'];

/** What of a job is not in its things: a high stated value (sealed), and metal added near what a hallmark lets through. */
export interface Beside {
  readonly isHighValue: boolean;
  readonly nearsGate: boolean;
}

/** Why a job is on the full path, in words; none while it is a short ticket. `things` are those of the job, the job itself among them. */
export function fullPathReasons(things: readonly Thing[], { isHighValue, nearsGate }: Beside): readonly string[] {
  const stones = things.filter(({ kind }) => kind === 'stone' || kind === 'packet');
  const work = things.find(({ kind }) => kind === 'job')?.says.work?.split(' ') ?? [];
  const isHot = work.some((step) => HEAT.includes(step));
  // The condition out of the mount is said of every stone that came out, and of no other.
  const isOut = stones.some(({ says }) => says.condition !== undefined);
  const isSupplied = stones.some(({ says, stones: counted }) => says.condition === undefined && counted !== undefined);
  const isUnseen = stones.some(({ says }) => says.species === 'unknown' || UNSEEN.includes(says.backing ?? ''));
  const isOutside = things.some(({ custody, offered, gone }) => !gone && (custody?.says === 'outside' || offered?.says === 'outside'));
  const reasons: readonly (readonly [boolean, string])[] = [
    [isOut, 'a stone came out'],
    [isSupplied, 'a stone is supplied'],
    [!isOut && work.includes('take-out'), 'stones are to come out'],
    [isHot && isUnseen, 'heat is planned and a stone or its backing is not known'],
    [nearsGate, 'what is added nears what the hallmark lets through'],
    [isHighValue, 'the stated value is high'],
    [isOutside, 'it leaves the building'],
    [things.some(({ holds }) => holds.length > 0), 'it is held'],
  ];
  return reasons.filter(([holds]) => holds).map(([, words]) => words);
}
