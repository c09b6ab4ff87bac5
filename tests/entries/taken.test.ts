import { describe, expect, it } from 'vitest';
import { taken } from '../../src/entries/taken.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, job, stamp, stone } from './views.ts';

describe('taken', () => {
  const decides = deciding(taken);

  it('is refused for a job that is closed', () => {
    expect(decides({ of: job({ status: 'closed' }) })).toBe('thing_is_gone');
  });
  it('is refused for a stone that has gone home', () => {
    expect(decides({ of: stone({ gone: true }) })).toBe('thing_is_gone');
  });
  it('makes the one who writes it answer for the thing', () => {
    expect(taken.facts(SAMPLES.taken, stamp)).toEqual([{ fact: 'custody', of: THINGS.job, is: 'with', holder: stamp.by }]);
  });
});
