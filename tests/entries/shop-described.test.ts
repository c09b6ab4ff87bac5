import { describe, expect, it } from 'vitest';
import { shopDescribed } from '../../src/entries/shop-described.ts';
import { SAMPLES } from '../vectors/samples.ts';
import { deciding, now, stamp } from './views.ts';

describe('shop_described', () => {
  it('takes one change beside fields that were left empty, and says nothing of those', () => {
    expect(deciding(shopDescribed)({}, { address: undefined, email: undefined })).toBeNull();
    const { shop, phone } = SAMPLES.shop_described;
    expect(phone).toBeDefined();
    expect(shopDescribed.facts({ shop, ...(phone && { phone }) }, stamp)).toEqual([
      { fact: 'policy', of: shop, name: 'phone', says: phone },
    ]);
    const empty = { shop, address: undefined, phone: undefined, email: undefined } as never;
    expect(shopDescribed.decide({} as never, empty, now)).toMatchObject({ refused: 'nothing_said' });
  });
  it('is refused where nothing changes', () => {
    expect(deciding(shopDescribed)({}, { address: undefined, phone: undefined, email: undefined })).toBe('nothing_said');
  });
});
