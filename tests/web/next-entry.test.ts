// What is suggested on a job page, the bench and the lists: one function of the job's state (the order of work is common practice, no source).
import { describe, expect, it } from 'vitest';
import { newThing, type Thing } from '../../src/ledger/thing.ts';
import { nextEntries } from '../../src/web/job/next-entry.ts';

const [ME, OTHER] = ['person-me', 'person-other'] as never[];
const job = (over: Partial<Thing>): Thing => ({ ...newThing('job-1', 'job', 'job-1', 1), ...over });
const ring = newThing('ring-1', 'piece', 'job-1', 2);
const mine = { says: ME, seq: 9 } as unknown as NonNullable<Thing['custody']>;
const next = (over: Partial<Thing>, things: readonly Thing[] = [ring], isShort = false) =>
  nextEntries(job(over), things, String(ME), isShort);

describe('what comes next', () => {
  it.each<[string, Partial<Thing>, readonly Thing[], boolean, string | null]>([
    ['receives the piece first', { status: 'open' }, [], false, 'piece_received'],
    ['agrees on the work', { status: 'open' }, [ring], false, 'work_agreed'],
    ['takes it in hand', { status: 'agreed' }, [ring], false, 'taken'],
    ['takes it from a colleague', { status: 'agreed', custody: { ...mine, says: OTHER } as never }, [ring], false, 'taken'],
    ['weighs it', { status: 'agreed', custody: mine }, [ring], false, 'piece_weighed'],
    ['sets the stones that are out', { status: 'agreed', custody: mine, stonesOut: 1 }, [ring], false, 'stone_set'],
    ['finishes a short ticket in one sheet', { status: 'agreed' }, [ring], true, 'finish'],
    ['writes two pieces one by one', { status: 'agreed', custody: mine }, [ring, { ...ring, id: 'ring-2' }], true, 'piece_weighed'],
    ['hands back', { status: 'finished' }, [ring], false, 'hand-back'],
    ['closes what has gone home', { status: 'finished' }, [{ ...ring, gone: true }], false, 'job_closed'],
    ['is nothing when it is over', { status: 'closed' }, [{ ...ring, gone: true }], false, null],
  ])('%s', (_, over, things, isShort, expected) => {
    expect(next(over, things, isShort).next).toBe(expected);
  });
  it('offers the rest in the order of work, and never twice', () => {
    const { next: first, others } = next({ status: 'agreed', custody: mine });
    expect(others).not.toContain(first);
    const order = ['taken', 'piece_cleaned', 'stone_unset', 'metal_cut', 'stone_set', 'work_finished', 'released', 'note_added'];
    expect(others.filter((name) => order.includes(name))).toEqual(order);
    expect(next({ status: 'withdrawn' }).others).toEqual(['note_added', 'difference_explained']);
  });
});
