import { describe, expect, it } from 'vitest';
import { policySet } from '../../src/entries/policy-set.ts';
import { deciding } from './views.ts';

describe('policy_set', () => {
  const decides = deciding(policySet);

  it('is refused when nothing is said', () => {
    expect(decides({}, { zone: undefined, country: undefined, currency: undefined, staffing: undefined, words: undefined })).toBe(
      'nothing_said',
    );
  });
  it('is refused with a time zone that is not in the time zone database', () => {
    expect(decides({}, { zone: 'Europe/Atlantis' })).toBe('zone_not_known');
  });
  it('takes one change by itself', () => {
    expect(decides({}, { zone: undefined, country: undefined, currency: undefined, staffing: undefined })).toBeNull();
  });
});
