import { describe, expect, it } from 'vitest';
import { lemelGathered } from '../../src/entries/lemel-gathered.ts';
import { SAMPLES } from '../vectors/samples.ts';
import { deciding, now, skin } from './views.ts';

describe('lemel_gathered', () => {
  const decides = deciding(lemelGathered);

  it('is refused when a skin that is known is given a bench', () => {
    expect(decides({ skin: skin() }, { metal: undefined })).toBe('skin_is_known');
  });
  it('is refused when a skin that is known is given a metal', () => {
    expect(decides({ skin: skin() }, { bench: undefined })).toBe('skin_is_known');
  });
  it('says beside which field the skin is known already', () => {
    const { bench: _bench, metal: _metal, ...said } = SAMPLES.lemel_gathered;
    const refusedFor = (what: object) => lemelGathered.decide({ skin: skin() }, { ...said, ...what }, now);
    expect(refusedFor({ bench: 'Bench 1' })).toMatchObject({ field: 'bench' });
    expect(refusedFor({ metal: 'gold-750' })).toMatchObject({ field: 'metal' });
  });
  it('is refused when a new skin has no bench', () => {
    expect(decides({}, { bench: undefined })).toBe('bench_missing');
  });
  it('is refused when a new skin has no metal', () => {
    expect(decides({}, { metal: undefined })).toBe('metal_missing');
  });
  it('takes lemel in a skin that is known', () => {
    expect(decides({ skin: skin() }, { bench: undefined, metal: undefined })).toBeNull();
  });
});
