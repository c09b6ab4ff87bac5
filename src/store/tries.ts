// Tries at a PIN or password: each is reserved before it is verified, one at a time, and wrong ones in a row make the next one wait.
// A wait is counted in the program's own elapsed time, never by the clock, which may be wrong by years; after a start it begins anew.
import type { Ref } from '../units/ids.ts';
import type { SqliteFile } from './sqlite.ts';

export type Credential = 'pin' | 'password';
/** Whose, of what, and where: one's own session or screen by name, or '' for anywhere else, so that nobody's mistakes elsewhere stop whoever types right on a screen of theirs. */
export interface TryOf {
  readonly person: Ref<'person'>;
  readonly kind: Credential;
  readonly place: string;
}
/** What came of a try: right; wrong, with the wait before the next in ms; or not tried at all, since there is still so long to wait. */
export type Tried =
  | { readonly is: 'right' }
  | { readonly is: 'wrong'; readonly waitMs: number }
  | { readonly is: 'not tried'; readonly waitMs: number };
export interface Tries {
  /** Verifies as one try, after all that came before it. */
  attempt(of: TryOf, verify: () => Promise<boolean>): Promise<Tried>;
  /** Wrong PINs in a row of each person, at most over all places. */
  wrongPins(): Promise<ReadonlyMap<string, number>>;
  /** Lets a person try their PIN again at once, everywhere. */
  clearPins(person: Ref<'person'>): Promise<void>;
}

const FREE_TRIES = 3;
/** Longer than a burst of requests takes to be answered, shorter than a cup of tea. */
const FIRST_WAIT_MS = 30_000;
const LONGEST_WAIT_MS = 5 * 60_000;

const waitAfter = (failures: number): number =>
  failures < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (failures - FREE_TRIES));

/** `elapsed` is any clock in ms that only ever goes forward. */
export function openTries(file: SqliteFile, elapsed: () => number): Tries {
  const startedAt = elapsed();
  const endsAt = new Map<string, number>();
  const nameOf = ({ person, kind, place }: TryOf) => `${person} ${kind} ${place}`;
  const whole = ({ person, kind, place }: TryOf) => [person, kind, place];

  const tryNow = async (of: TryOf, verify: () => Promise<boolean>): Promise<Tried> => {
    const [row] = await file.read('SELECT failures FROM attempt WHERE person = ? AND kind = ? AND place = ?', whole(of));
    const before = Number(row?.failures ?? 0);
    const waitMs = (endsAt.get(nameOf(of)) ?? startedAt + waitAfter(before)) - elapsed();
    if (before > 0 && waitMs > 0) return { is: 'not tried', waitMs };
    const sql = 'INSERT OR REPLACE INTO attempt (person, kind, place, failures) VALUES (?, ?, ?, ?)';
    await file.write((tx) => tx.run(sql, [...whole(of), before + 1]));
    const right = await verify();
    endsAt.delete(nameOf(of));
    if (right) {
      await file.write((tx) => tx.run('DELETE FROM attempt WHERE person = ? AND kind = ? AND place = ?', whole(of)));
      return { is: 'right' };
    }
    endsAt.set(nameOf(of), elapsed() + waitAfter(before + 1));
    return { is: 'wrong', waitMs: waitAfter(before + 1) };
  };

  let last: Promise<unknown> = Promise.resolve();
  return {
    attempt(of, verify) {
      const next = last.then(() => tryNow(of, verify));
      last = next.catch(() => undefined);
      return next;
    },
    async wrongPins() {
      const rows = await file.read("SELECT person, MAX(failures) AS n FROM attempt WHERE kind = 'pin' GROUP BY person");
      return new Map(rows.map(({ person, n }) => [String(person), Number(n)]));
    },
    clearPins: (person) => file.write((tx) => tx.run("DELETE FROM attempt WHERE person = ? AND kind = 'pin'", [person])),
  };
}
