// Whether anything may be written: what forbids it once forbids it for as long as the program runs, but for a full disk, which may get room again.
import type { Lock } from './lock.ts';
import type { Spare } from './spare.ts';

/** Nothing may be written until the sentence it carries is dealt with. */
export class ReadOnly extends Error {}
const LOCK_LOST =
  'lock.db was deleted or replaced while the program runs, so nothing is written any more. Stop every Lemel on these data, then start one.';

/** `trouble` is what was found at the start, as a sentence, or null; the first there is stands. */
export function guardOf(lock: Lock, spare: Spare, trouble: string | null) {
  let first = trouble;
  const whyNot = () => {
    if (!lock.isHeld()) first ??= LOCK_LOST;
    return first ?? spare.trouble();
  };
  return {
    whyNot,
    mayWrite() {
      const why = whyNot();
      if (why !== null) throw new ReadOnly(why);
    },
    /** False where something had stopped it before. */
    stop(why: string): boolean {
      const isFirst = first === null;
      first ??= why;
      return isFirst;
    },
  };
}
