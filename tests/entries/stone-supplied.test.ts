import { describe, expect, it } from 'vitest';
import { stoneSupplied } from '../../src/entries/stone-supplied.ts';
import { day } from '../vectors/samples.ts';
import { deciding, piece } from './views.ts';

describe('stone_supplied', () => {
  const decides = deciding(stoneSupplied);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused when the customer was not told what the stone is', () => {
    expect(decides({}, { told: undefined })).toBe('customer_not_told');
  });
  it('is refused when they were told on a day to come', () => {
    expect(decides({}, { told: day('2026-12-09') })).toBe('told_to_come');
  });
  it('takes the customer’s own stone without telling them', () => {
    expect(decides({}, { whose: 'customer', told: undefined })).toBeNull();
  });
});
