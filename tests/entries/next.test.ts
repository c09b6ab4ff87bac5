// What one does next on a job, and what may be done besides, in the order in which it is offered.
import { describe, expect, it } from 'vitest';
import { DOES_NEXT, type JobNow } from '../../src/book/next.ts';
import { table } from './views.ts';

const job = (over: Partial<JobNow>): JobNow => ({ status: 'agreed', pieces: 1, stonesOut: 0, isMine: true, ...over });
const always = ['note_added', 'photo_added', 'customer_told', 'moved'];
const over = ['note_added', 'difference_explained'];
const beforeWork = ['setting_noted', 'mark_read'];
const inspected = [...beforeWork, 'inspected_before_work', 'piece_cleaned'];
const taking = ['stone_unset', 'stone_weighed', 'metal_cut', 'metal_added', 'filings_gathered', 'piece_sized', 'stone_supplied'];
const ending = ['piece_checked', 'work_finished', 'promise_moved', 'released', 'accepted', ...always];
const finished = ['piece_checked', 'identity_checked', 'piece_weighed', 'returned_with_exception', 'old_parts_returned', ...always];

/** A job as it stands, what one does next, and what may be done. */
const CASES: readonly (readonly [string, JobNow, readonly string[], readonly string[]])[] = [
  ['nothing came in yet', job({ status: 'open', pieces: 0 }), ['piece_received'], ['withdrawn', ...always]],
  ['a piece came in', job({ status: 'open' }), ['work_agreed'], [...beforeWork, 'value_stated', 'piece_received', 'taken', ...always]],
  ['it is in my hands', job({}), ['piece_weighed'], ['taken', ...inspected, ...taking, 'stone_set', ...ending]],
  [
    'it is in my hands, with stones out',
    job({ stonesOut: 1 }),
    ['stone_set', 'piece_weighed'],
    ['taken', ...inspected, ...taking, ...ending],
  ],
  [
    'somebody else has it, with stones out',
    job({ stonesOut: 1, isMine: false }),
    ['taken'],
    [...inspected, 'piece_weighed', ...taking, 'stone_set', ...ending],
  ],
  ['its work is done', job({ status: 'finished' }), [], finished],
  ['its work is done and all went home', job({ status: 'finished', pieces: 0 }), ['job_closed'], finished],
  [
    'nothing is left of it though work was agreed',
    job({ pieces: 0 }),
    ['piece_weighed'],
    ['taken', ...inspected, ...taking, 'stone_set', ...ending],
  ],
  ['it is closed', job({ status: 'closed', pieces: 0 }), [], over],
  ['it was withdrawn', job({ status: 'withdrawn', pieces: 0 }), [], over],
];

describe('a job', () => {
  it.each(CASES)('where %s', (_, now, next, besides) => {
    const offered = table
      .flatMap(([type, entry]) => {
        const rank = entry.next?.(now) ?? null;
        return rank === null ? [] : [{ type, rank }];
      })
      .toSorted((a, b) => a.rank - b.rank);
    expect(offered.filter(({ rank }) => rank < DOES_NEXT).map(({ type }) => type)).toEqual(next);
    expect(offered.filter(({ rank }) => rank >= DOES_NEXT).map(({ type }) => type)).toEqual(besides);
  });
});
