import { describe, expect, it } from 'vitest';
import { metalReceived } from '../../src/entries/metal-received.ts';
import { deciding, stock } from './views.ts';

describe('metal_received', () => {
  const decides = deciding(metalReceived);

  it('is refused into a stock of another metal', () => {
    expect(decides({ stock: stock({ metal: 'gold-585' }) }, { name: undefined })).toBe('other_metal');
  });
  it('is refused when a stock that has a name is given one', () => {
    expect(decides({ stock: stock() })).toBe('stock_has_a_name');
  });
  it('is refused when a new stock has none', () => {
    expect(decides({}, { name: undefined })).toBe('name_missing');
  });
  it('takes more of the same', () => {
    expect(decides({ stock: stock() }, { name: undefined })).toBeNull();
  });
});
