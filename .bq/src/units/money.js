// Money as whole minor units with an ISO 4217 code.
import { decimalText } from './muldiv.js';

/** Minor units in one unit of the currency (ISO 4217 list one, column "minor unit"). */
const MINOR_DIGITS = { GBP: 2, USD: 2, EUR: 2, CHF: 2, JPY: 0, CAD: 2, AUD: 2, NZD: 2 };
const SYMBOL = { GBP: '£', USD: '$', EUR: '€' };
export const CURRENCIES = Object.keys(MINOR_DIGITS);
/** Reads "28", "28.50" or "28,50"; null when it is not an amount of zero or more with at most the currency's decimals. */
export function parseMoney(text, currency) {
  const digits = MINOR_DIGITS[currency];
  const match = /^(\d{1,9})(?:[.,](\d+))?$/.exec(
    text
      .trim()
      .replace(SYMBOL[currency] ?? currency, '')
      .trim(),
  );
  const fraction = match?.[2] ?? '';
  if (!match || fraction.length > digits) return null;
  return { minor: Number((match[1] ?? '') + fraction.padEnd(digits, '0')), currency };
}
/** "£28.00", or "CHF 28.00" where the currency has no sign of its own. */
export function formatMoney({ minor, currency }) {
  const digits = MINOR_DIGITS[currency];
  const amount = decimalText(BigInt(Math.abs(minor)), digits);
  return `${minor < 0 ? '\u2212' : ''}${SYMBOL[currency] ?? `${currency}\u00a0`}${amount}`;
}
