import { describe, expect, it } from 'vitest';
import { baselineAccepted } from '../../src/entries/baseline-accepted.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, stamp } from './views.ts';

const { shop, safe } = THINGS;
const decide = deciding(baselineAccepted);
const shopSaying = (says: Record<string, string>) => ({ shop: { kind: 'shop', id: shop, says } }) as const;

describe('baseline_accepted', () => {
  it('is refused where one is accepted already, for the same bench, work and metal', () => {
    expect(decide(shopSaying({ [`baseline:${safe}|polish|gold`]: '300' }))).toBe('baseline_accepted_before');
    expect(decide(shopSaying({ [`baseline:${safe}|size|gold`]: '300', 'baseline:bench not said|polish|gold': '300' }))).toBe(null);
  });
  it('is refused where one is accepted already for work at no bench that was said', () => {
    const noBench = { shop: { kind: 'shop', id: shop, says: { 'baseline:bench not said|polish|gold': '300' } }, bench: undefined } as const;
    expect(decide(noBench, { bench: undefined })).toBe('baseline_accepted_before');
    expect(decide({ bench: undefined }, { bench: undefined })).toBe(null);
  });
  it('is refused below twenty jobs', () => {
    expect(decide(shopSaying({}), { jobs: 19 })).toBe('baseline_too_few_jobs');
    expect(decide(shopSaying({}), { jobs: 20 })).toBe(null);
  });
  it('keeps how long the ledger was, under the name of the chart', () => {
    expect(baselineAccepted.facts(SAMPLES.baseline_accepted, stamp)).toEqual([
      { fact: 'policy', of: shop, name: `baseline:${safe}|polish|gold`, says: '412' },
    ]);
  });
});
