import { describe, expect, it } from 'vitest';
import { ticketLost } from '../../src/entries/ticket-lost.ts';
import { deciding, job } from './views.ts';

describe('ticket_lost', () => {
  const decides = deciding(ticketLost);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
});
