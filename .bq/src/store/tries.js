const FREE_TRIES = 3;
/** Longer than a burst of requests takes to be answered, shorter than a cup of tea. */
const FIRST_WAIT_MS = 30_000;
const LONGEST_WAIT_MS = 5 * 60_000;
const waitAfter = (failures) => (failures < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (failures - FREE_TRIES)));
/** `elapsed` is any clock in ms that only ever goes forward. */
export function openTries(file, elapsed) {
  const startedAt = elapsed();
  const endsAt = new Map();
  const nameOf = ({ person, kind, place }) => `${person} ${kind} ${place}`;
  const whole = ({ person, kind, place }) => [person, kind, place];
  const tryNow = async (of, verify) => {
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
  let last = Promise.resolve();
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
