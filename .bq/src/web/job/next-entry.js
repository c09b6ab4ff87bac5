// What most likely comes next on a job, and the rest that may: each entry's own file says when. A suggestion, never a rule.
import { DOES_NEXT } from '../../book/next.js';
import { ENTRIES } from '../../entries/index.js';
import { entryType } from '../../ledger/registry.js';
import { holderOf } from '../../ledger/thing.js';
import { SHEETS } from '../../sheets/index.js';
/** From the state of the job and its things; a short ticket of one piece goes straight to its finish sheet. */
export function nextEntries(job, things, me, isShort) {
  const pieces = things.filter(({ kind, gone }) => kind === 'piece' && !gone);
  const now = {
    status: job.status ?? 'open',
    pieces: pieces.length,
    stonesOut: job.stonesOut,
    isMine: holderOf(pieces[0] ?? job, job) === me,
  };
  const ranked = Object.keys(ENTRIES)
    .map((name) => ({ name, rank: entryType(name).next?.(now) ?? null }))
    .filter((one) => one.rank !== null)
    .sort((a, b) => a.rank - b.rank);
  const first = ranked[0] && ranked[0].rank < DOES_NEXT ? ranked[0].name : null;
  const next = sheetNext(now, isShort) ?? first;
  return { next, others: ranked.map(({ name }) => name).filter((name) => name !== next) };
}
/** A sheet that does at once what its entries would do one by one. */
function sheetNext({ status, pieces }, isShort) {
  if (status === 'agreed' && isShort && pieces === 1) return 'finish';
  return status === 'finished' && pieces > 0 ? 'hand-back' : null;
}
export const isSheet = (name) => Object.hasOwn(SHEETS, name);
export const titleOf = (name) => (isSheet(name) ? SHEETS[name].form.title : entryType(name).form.title);
