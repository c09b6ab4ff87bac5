import { describe, expect, it } from 'vitest';
import { jobClosed } from '../../src/entries/job-closed.ts';
import { deciding, job } from './views.ts';

describe('job_closed', () => {
  const decides = deciding(jobClosed);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
  it('is refused while a piece is in the shop', () => {
    expect(decides({ job: job({ piecesIn: 1 }) })).toBe('pieces_still_in');
  });
  it('is refused while a stone is out of its piece', () => {
    expect(decides({ job: job({ stonesOut: 2 }) })).toBe('stones_still_out');
  });
});
