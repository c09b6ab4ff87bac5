import { describe, expect, it } from 'vitest';
import { pieceReceived } from '../../src/entries/piece-received.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, job, stamp } from './views.ts';

describe('piece_received', () => {
  const decides = deciding(pieceReceived);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
  it('is refused on a job that was withdrawn', () => {
    expect(decides({ job: job({ status: 'withdrawn' }) })).toBe('job_is_closed');
  });
  it('is taken on a job that is finished, as another piece', () => {
    expect(decides({ job: job({ status: 'finished' }) })).toBeNull();
  });
  it('begins unmeasured where it was not weighed, in the hands of the one who received it', () => {
    const { weight: _left, ...said } = SAMPLES.piece_received;
    const facts = pieceReceived.facts(said, stamp);
    expect(facts[0]).toEqual({ fact: 'flow', from: 'outside', to: THINGS.ring, matter: { kind: 'mixed' } });
    expect(facts).toContainEqual({ fact: 'custody', of: THINGS.ring, is: 'with', holder: stamp.by });
    expect(facts.some(({ fact }) => fact === 'reading')).toBe(false);
  });
});
