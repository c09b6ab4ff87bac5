// Normal, chi-squared and Student distributions with true upper tails, so that a probability of 1e-40 is not 0.
// Everything rests on two functions: the incomplete gamma and the incomplete beta (NIST DLMF 8 and 8.17).
const EPSILON = 1e-16;
const TINY = 1e-300;
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
/** ln Γ(x) for x > 0 (Lanczos, g = 7, nine terms: Godfrey's coefficients, from memory). */
export function lnGamma(x) {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x);
  const t = x + 6.5;
  const sum = LANCZOS.reduce((total, c, i) => (i === 0 ? c : total + c / (x - 1 + i)), 0);
  return Math.log(2 * Math.PI) / 2 + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}
/** A continued fraction b0 + a1/(b1 + a2/(b2 + …)) by the modified Lentz method (Thompson & Barnett 1986). */
function continuedFraction(b0, term) {
  let f = b0 || TINY;
  let c = f;
  let d = 0;
  for (let i = 1; i <= 1000; i++) {
    const [a, b] = term(i);
    d = 1 / (b + a * d || TINY);
    c = b + a / c || TINY;
    f *= c * d;
    if (Math.abs(c * d - 1) < EPSILON) return f;
  }
  return f;
}
/** Q(a, x) = Γ(a, x)/Γ(a), the upper regularised incomplete gamma (DLMF 8.7.1 and 8.9.2). */
function upperGamma(a, x) {
  if (x <= 0) return 1;
  const scale = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x >= a + 1) return scale / continuedFraction(x + 1 - a, (i) => [i * (a - i), x + 2 * i + 1 - a]);
  let term = 1 / a;
  let sum = term;
  for (let i = 1; i <= 1000 && term > sum * EPSILON; i++) sum += term *= x / (a + i);
  return 1 - scale * sum;
}
/** I_x(a, b), the regularised incomplete beta, given x and 1 − x so that neither loses its digits (DLMF 8.17.22). */
export function incompleteBeta(x, y, a, b) {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  return x > (a + 1) / (a + b + 2) ? 1 - betaSeries(y, x, b, a) : betaSeries(x, y, a, b);
}
/** I_x(a, b) by its continued fraction, which settles quickly up to the mean: reflected once and never again, since rounding may put both sides beyond theirs. */
function betaSeries(x, y, a, b) {
  const scale = Math.exp(a * Math.log(x) + b * Math.log(y) + lnGamma(a + b) - lnGamma(a) - lnGamma(b)) / a;
  const even = (m) => (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
  const odd = (m) => (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
  return scale / continuedFraction(1, (i) => [i % 2 === 0 ? even(i / 2) : odd((i - 1) / 2), 1]);
}
/** P(Z > z) of the standard normal. */
export function normalTail(z) {
  const half = upperGamma(0.5, (z * z) / 2) / 2;
  return z >= 0 ? half : 1 - half;
}
export const normalDensity = (z) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
/** P(|Z| > |z|), both tails. */
export const normalTails = (z) => upperGamma(0.5, (z * z) / 2);
/** P(χ² > x) with `df` degrees of freedom. */
export const chiSquaredTail = (x, df) => upperGamma(df / 2, x / 2);
/** From here on Student's t is the normal to better than one part in a thousand out to five standard deviations, and Γ loses its digits. */
const NORMAL_FROM_DF = 1e6;
/** P(T > t) of Student's t with `df` > 0 degrees of freedom; from a million on (and for `Infinity`) the normal. Throws on what is no probability. */
export function studentTail(t, df) {
  if (df >= NORMAL_FROM_DF) return probability(normalTail(t));
  const half = incompleteBeta(df / (df + t * t), (t * t) / (df + t * t), df / 2, 0.5) / 2;
  return probability(t >= 0 ? half : 1 - half);
}
function probability(p) {
  if (p >= 0 && p <= 1) return p;
  throw new RangeError(`${p} is no probability`);
}
/** The x in [low, high] where a falling function passes `target`, by bisection to the last bit. */
function fallsTo(target, falling, low, high) {
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (falling(middle) > target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
/** The smallest power of two from 1 up at which a falling function is no more than `target`. */
function above(target, falling) {
  let high = 1;
  while (falling(high) > target) high *= 2;
  return high;
}
/** The z with P(Z > z) = `tail`, 0 < tail < 1. */
export function normalUpper(tail) {
  return tail > 0.5 ? -normalUpper(1 - tail) : fallsTo(tail, normalTail, 0, 40);
}
/** The x with P(χ² > x) = `tail`. */
export function chiSquaredUpper(tail, df) {
  const falling = (x) => chiSquaredTail(x, df);
  return fallsTo(tail, falling, 0, above(tail, falling));
}
/** The t with P(T > t) = `tail`. */
export function studentUpper(tail, df) {
  if (tail > 0.5) return -studentUpper(1 - tail, df);
  const falling = (t) => studentTail(t, df);
  return fallsTo(tail, falling, 0, above(tail, falling));
}
