// The one entry that most likely comes next on a job, and the others that may; a suggestion, never a rule.
import { ENTRIES, type EntryName } from '../../entries/index.ts';
import type { Thing } from '../../ledger/thing.ts';
import { SHEETS } from '../../sheets/index.ts';

export interface NextEntries {
  readonly next: EntryName | 'finish' | 'hand-back' | null;
  readonly others: readonly EntryName[];
}

const ANY_TIME: readonly EntryName[] = ['note_added', 'photo_added', 'customer_told', 'moved'];
const AT_BENCH: readonly EntryName[] = [
  'taken',
  'setting_noted',
  'mark_read',
  'inspected_before_work',
  'piece_cleaned',
  'piece_weighed',
  'stone_unset',
  'stone_weighed',
  'metal_cut',
  'metal_added',
  'piece_sized',
  'stone_supplied',
  'stone_set',
  'piece_checked',
  'work_finished',
];

/** From the state of the job and its things; a short ticket of one piece goes straight to its finish sheet. */
export function nextEntries(job: Thing, things: readonly Thing[], me: string, isShort: boolean): NextEntries {
  const pieces = things.filter(({ kind, gone }) => kind === 'piece' && !gone);
  const holder = pieces[0]?.custody?.says ?? job.custody?.says;
  switch (job.status) {
    case 'open':
      if (pieces.length === 0) return { next: 'piece_received', others: ['withdrawn', ...ANY_TIME] };
      return { next: 'work_agreed', others: ['setting_noted', 'mark_read', 'value_stated', 'piece_received', 'taken', ...ANY_TIME] };
    case 'agreed': {
      if (isShort && pieces.length === 1)
        return { next: 'finish', others: [...AT_BENCH, 'promise_moved', 'released', 'accepted', ...ANY_TIME] };
      const latest = Math.max(job.custody?.seq ?? -1, pieces[0]?.custody?.seq ?? -1);
      const mine = (job.custody?.seq === latest ? job.custody?.says : holder) === me;
      if (!mine) return { next: 'taken', others: [...AT_BENCH.slice(1), ...ANY_TIME] };
      if (job.stonesOut > 0) return { next: 'stone_set', others: [...AT_BENCH, 'promise_moved', 'released', 'accepted', ...ANY_TIME] };
      return { next: 'piece_weighed', others: [...AT_BENCH, 'promise_moved', 'released', 'accepted', ...ANY_TIME] };
    }
    case 'finished':
      return {
        next: pieces.length > 0 ? 'hand-back' : 'job_closed',
        others: ['piece_checked', 'identity_checked', 'piece_weighed', 'returned_with_exception', 'old_parts_returned', ...ANY_TIME],
      };
    default:
      return { next: null, others: ['note_added', 'difference_explained'] };
  }
}

export const isSheet = (name: string): name is 'finish' | 'hand-back' => name === 'finish' || name === 'hand-back';

export const titleOf = (name: EntryName | 'finish' | 'hand-back'): string =>
  isSheet(name) ? SHEETS[name].form.title : ENTRIES[name].form.title;
