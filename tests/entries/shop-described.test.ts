import { describe, expect, it } from 'vitest';
import { shopDescribed } from '../../src/entries/shop-described.ts';
import { deciding } from './views.ts';

describe('shop_described', () => {
  it('is refused where nothing changes', () => {
    expect(deciding(shopDescribed)({}, { address: undefined, phone: undefined, email: undefined })).toBe('nothing_said');
  });
});
