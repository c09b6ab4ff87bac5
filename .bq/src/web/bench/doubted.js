import { entryType, readingsIn } from '../../ledger/registry.js';
import { entriesNaming } from '../../queries/entries.js';
import { shownLines } from '../job/ledger-lines.js';
import { policyFor } from '../session/context.js';
/** Weighings on this balance between a failed check and the passes on either side of it, newest first, at most 200. */
export async function inDoubt(web, c, balance, known) {
  const doubted = [];
  for (const within of failing(known.checksOf(balance)).toReversed()) {
    if (doubted.length >= DOUBTED_MAX) break;
    const kept = await entriesNaming(web.store, balance, within, LOOKED_AT);
    doubted.push(...kept.filter(({ leaf }) => isDoubted(leaf, balance, known)));
  }
  return (await shownLines(web, policyFor(c), doubted.slice(0, DOUBTED_MAX))).toReversed();
}
const DOUBTED_MAX = 200;
const LOOKED_AT = 1000;
/** So many entries after the pass are looked through for weighings that were written late. */
const LATE_MAX = 2000;
const isDoubted = ({ type, data, occurredAt }, balance, known) =>
  type !== 'balance_checked' &&
  readingsIn(entryType(type), data).some(({ reading }) => reading.balance === balance && known.isDoubted(reading, occurredAt));
/** From the last pass before each run of failed checks to the first after it, as numbers of entries. */
function failing(checks) {
  return checks.flatMap(({ result }, index) => {
    if (result !== 'fail' || checks[index - 1]?.result === 'fail') return [];
    const after = checks.slice(index).find((check) => check.result !== 'fail');
    return [[checks[index - 1]?.seq ?? 0, after ? after.seq + LATE_MAX : Number.MAX_SAFE_INTEGER]];
  });
}
