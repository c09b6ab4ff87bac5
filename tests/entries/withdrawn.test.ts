import { describe, expect, it } from 'vitest';
import { withdrawn } from '../../src/entries/withdrawn.ts';
import { deciding, job } from './views.ts';

describe('withdrawn', () => {
  const decides = deciding(withdrawn);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
  it('is refused when a piece came in on it', () => {
    expect(decides({ job: job({ piecesIn: 1 }) })).toBe('job_holds_things');
  });
  it('is refused when a stone of it is out', () => {
    expect(decides({ job: job({ stonesOut: 1 }) })).toBe('job_holds_things');
  });
  it('is refused when its work is finished', () => {
    expect(decides({ job: job({ status: 'finished' }) })).toBe('job_holds_things');
  });
});
