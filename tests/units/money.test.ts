// Amounts as typed and as shown; minor digits by ISO 4217.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CURRENCIES, formatMoney, parseMoney } from '../../src/units/money.ts';

describe('an amount', () => {
  it('reads back as it was shown, in every currency', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), fc.constantFrom(...CURRENCIES), (minor, currency) => {
        expect(parseMoney(formatMoney({ minor, currency }), currency)).toEqual({ minor, currency });
      }),
    );
  });

  it.each([
    ['28', 'GBP', 2800],
    ['28.5', 'GBP', 2850],
    ['28,50', 'EUR', 2850],
    ['£28.00', 'GBP', 2800],
    ['2800', 'JPY', 2800],
  ] as const)('%s in %s is %d minor units', (text, currency, minor) => {
    expect(parseMoney(text, currency)).toEqual({ minor, currency });
  });

  it.each([
    ['28.505', 'GBP'],
    ['28.5', 'JPY'],
    ['-1', 'GBP'],
    ['1,000.00', 'GBP'],
    ['', 'GBP'],
    ['$5', 'GBP'],
  ] as const)('%s in %s is refused', (text, currency) => {
    expect(parseMoney(text, currency)).toBeNull();
  });

  it('is shown with its sign, or its code where it has none', () => {
    expect(formatMoney({ minor: 2805, currency: 'GBP' })).toBe('£28.05');
    expect(formatMoney({ minor: -5, currency: 'USD' })).toBe('−$0.05');
    expect(formatMoney({ minor: 2800, currency: 'CHF' })).toBe('CHF\u00a028.00');
    expect(formatMoney({ minor: 2800, currency: 'JPY' })).toBe('JPY\u00a02800');
  });
});
