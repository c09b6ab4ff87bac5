import { describe, expect, it } from 'vitest';
import { policySet } from '../../src/entries/policy-set.ts';
import { THINGS } from '../vectors/samples.ts';
import { deciding, stamp } from './views.ts';

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
  it('says nothing of what was left empty', () => {
    const { shop } = THINGS;
    expect(policySet.facts({ shop, zone: 'Europe/London' }, stamp)).toEqual([
      { fact: 'policy', of: shop, name: 'zone', says: 'Europe/London' },
    ]);
  });
  it('takes one change beside fields that were left empty', () => {
    const empty = { country: undefined, currency: undefined, staffing: undefined };
    const said = { shop: THINGS.shop, zone: 'Europe/London', words: undefined, ...empty };
    expect(policySet.decide({} as never, said as never, {} as never)).toBeNull();
    expect(policySet.decide({} as never, { ...said, zone: undefined } as never, {} as never)).toMatchObject({ refused: 'nothing_said' });
  });
  it('takes one change by itself', () => {
    expect(decides({}, { zone: undefined, country: undefined, currency: undefined, staffing: undefined })).toBeNull();
  });
});
