import { describe, expect, it } from 'vitest';
import { valueStated } from '../../src/entries/value-stated.ts';
import { deciding, piece } from './views.ts';

describe('value_stated', () => {
  const decides = deciding(valueStated);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused with a value and a band at once', () => {
    expect(decides({}, { band: 'over' })).toBe('value_or_band');
  });
  it('is refused with neither', () => {
    expect(decides({}, { value: undefined })).toBe('value_or_band');
  });
  it('takes a band alone', () => {
    expect(decides({}, { value: undefined, band: 'to-2000' })).toBeNull();
  });
});
