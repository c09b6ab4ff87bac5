import { describe, expect, it } from 'vitest';
import { ticketIssued } from '../../src/entries/ticket-issued.ts';
import { deciding, job } from './views.ts';

describe('ticket_issued', () => {
  const decides = deciding(ticketIssued);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
});
