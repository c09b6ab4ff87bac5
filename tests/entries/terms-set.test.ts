import { describe, expect, it } from 'vitest';
import { termsSet } from '../../src/entries/terms-set.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, stamp } from './views.ts';

const { shop } = THINGS;

describe('terms_set', () => {
  it('is refused for the terms in force', () => {
    expect(deciding(termsSet)({ shop: { kind: 'shop', id: shop, says: { terms: SAMPLES.terms_set.digest.slice(0, 12) } } })).toBe(
      'terms_are_these',
    );
  });
  it('keeps every text under its name, and the name of the one in force', () => {
    const { text, digest } = SAMPLES.terms_set;
    expect(termsSet.facts(SAMPLES.terms_set, stamp)).toEqual([
      { fact: 'policy', of: shop, name: 'terms', says: digest.slice(0, 12) },
      { fact: 'policy', of: shop, name: `terms:${digest.slice(0, 12)}`, says: text },
    ]);
  });
});
