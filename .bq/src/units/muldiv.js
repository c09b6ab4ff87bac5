// Products of large integers: the one place where integers are multiplied beyond 2^53 (100 g in ng × an assay overflows).
/** `a × b ÷ c` over safe integers, c > 0, rounded as named; 'exact' throws when it does not divide. Result must be a safe integer. */
export function mulDiv(a, b, c, rounding) {
  for (const x of [a, b, c]) if (!Number.isSafeInteger(x)) throw new RangeError(`mulDiv needs safe integers, got ${x}`);
  if (c <= 0) throw new RangeError(`mulDiv needs a positive divisor, got ${c}`);
  const result = Number(divideRounded(BigInt(a) * BigInt(b), BigInt(c), rounding));
  if (!Number.isSafeInteger(result)) throw new RangeError(`mulDiv result is beyond 2^53: ${a} × ${b} ÷ ${c}`);
  return result;
}
/** `n ÷ d` for d > 0. 'down' and 'up' are toward and away from zero; halves go away from zero, or to the even neighbour. */
export function divideRounded(n, d, rounding) {
  const sign = n < 0n ? -1n : 1n;
  const whole = (n * sign) / d;
  const twice = ((n * sign) % d) * 2n;
  if (twice === 0n) return sign * whole;
  if (rounding === 'exact') throw new RangeError(`${n} ÷ ${d} is not a whole number`);
  const up = rounding === 'up' || (rounding !== 'down' && (twice > d || (twice === d && (rounding === 'half up' || whole % 2n === 1n))));
  return sign * (up ? whole + 1n : whole);
}
/** A count of steps of 10^-`decimals` as decimal text: (517n, 2) is "5.17". Zero or more. */
export function decimalText(steps, decimals) {
  const digits = steps.toString().padStart(decimals + 1, '0');
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}
