import { describe, expect, it } from 'vitest';
import { workFinished } from '../../src/entries/work-finished.ts';
import { deciding, job } from './views.ts';

describe('work_finished', () => {
  const decides = deciding(workFinished);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ job: job({ status: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused a second time', () => {
    expect(decides({ job: job({ status: 'finished' }) })).toBe('already_finished');
  });
});
