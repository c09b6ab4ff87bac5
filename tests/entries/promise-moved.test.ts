import { describe, expect, it } from 'vitest';
import { promiseMoved } from '../../src/entries/promise-moved.ts';
import { day, nameOf, SAMPLES } from '../vectors/samples.ts';
import { deciding, job } from './views.ts';

describe('promise_moved', () => {
  const decides = deciding(promiseMoved);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
  it('is refused before any day was promised', () => {
    expect(decides({ job: job({ status: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused with a day that has passed', () => {
    expect(decides({}, { promise: day('2026-12-01') })).toBe('promise_is_past');
  });
  it('says that the customer was told, or not yet', () => {
    const { say } = promiseMoved;
    expect(say(SAMPLES.promise_moved, nameOf)).toContain('customer told');
    expect(say({ ...SAMPLES.promise_moved, told: 'not yet' }, nameOf)).toContain('customer not yet told');
  });
});
