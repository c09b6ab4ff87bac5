import { describe, expect, it } from 'vitest';
import { lemelGathered } from '../../src/entries/lemel-gathered.ts';
import { deciding, skin } from './views.ts';

describe('lemel_gathered', () => {
  const decides = deciding(lemelGathered);

  it('is refused when a skin that is known is given a bench', () => {
    expect(decides({ skin: skin() }, { metal: undefined })).toBe('skin_is_known');
  });
  it('is refused when a skin that is known is given a metal', () => {
    expect(decides({ skin: skin() }, { bench: undefined })).toBe('skin_is_known');
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
