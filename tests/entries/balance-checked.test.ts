import { describe, expect, it } from 'vitest';
import { balanceChecked } from '../../src/entries/balance-checked.ts';
import { refFromBytes } from '../../src/units/ids.ts';
import { SAMPLES } from '../vectors/samples.ts';
import { deciding } from './views.ts';

const OTHER = refFromBytes('balance', new Uint8Array(16));

describe('balance_checked', () => {
  const decides = deciding(balanceChecked);

  it('is refused when the weight was read on another balance', () => {
    expect(decides({}, { shown: { ...SAMPLES.balance_checked.shown, balance: OTHER } })).toBe('other_balance');
  });
});
