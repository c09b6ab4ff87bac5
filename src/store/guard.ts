// Whether anything may be written: what forbids it once forbids it for as long as the program runs, but for a full disk, which may get room again.
import { DAMAGED, isDamage } from './at-start.ts';
import type { Lock } from './lock.ts';
import type { Spare } from './spare.ts';
import type { SqliteFile } from './sqlite.ts';

/** Nothing may be written until the sentence it carries is dealt with. */
export class ReadOnly extends Error {}
const LOCK_LOST =
  'lock.db was deleted or replaced while the program runs, so nothing is written any more. Stop every Lemel on these data, then start one.';

/** `trouble` is what was found at the start, as a sentence, or null; the first there is stands. */
export function guardOf(file: SqliteFile, lock: Lock, spare: Spare, trouble: string | null) {
  let first = trouble;
  const whyNot = () => {
    if (!lock.isHeld()) first ??= LOCK_LOST;
    return first ?? spare.trouble();
  };
  /** False where something had stopped it before. */
  const stop = (why: string): boolean => {
    const isFirst = first === null;
    first ??= why;
    return isFirst;
  };
  return {
    /** The file: whoever comes upon a damaged page of it stops the writing. */
    file: watching(file, () => stop(DAMAGED)),
    whyNot,
    stop,
    mayWrite() {
      const why = whyNot();
      if (why !== null) throw new ReadOnly(why);
    },
  };
}

/** The file, with whoever must know told when a page of it turns out to be damaged. */
function watching(file: SqliteFile, onDamage: () => void): SqliteFile {
  const watched = <T>(work: Promise<T>): Promise<T> =>
    work.catch((error: unknown) => {
      if (isDamage(error)) onDamage();
      throw error;
    });
  return {
    ...file,
    read: (sql, args) => watched(file.read(sql, args)),
    snapshot: (work) => watched(file.snapshot(work)),
    write: (work) => watched(file.write(work)),
  };
}
