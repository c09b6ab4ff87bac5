// Weighted least squares under conservation of mass: what the readings say together, and how far each hypothesis explains a gap.
import { chiSquaredTail } from './distributions.js';
import { cholesky, dot, sparseTimes, times, transposed, unwhiten, whiten } from './matrix.js';
/** Least squares under A·x = b: V = AΣAᵀ, corrections ΣAᵀV⁻¹r, Cov(x) = Σ − ΣAᵀV⁻¹AΣ (Narasimhan & Jordache 2000, eqs 7-3 and 7-13). */
export function adjust({ a, covariance, residuals }) {
  const shared = sparseTimes(a, covariance);
  const v = sparseTimes(a, transposed(shared, covariance.length));
  const factor = cholesky(v);
  const white = whiten(factor, residuals);
  const whiteShared = transposed(shared, covariance.length).map((column) => whiten(factor, column));
  const taken = whiteShared.map((column) => dot(column, column));
  const variances = covariance.map((row, i) => (row[i] ?? 0) - (taken[i] ?? 0));
  const gamma = dot(white, white);
  const rank = factor.kept.length;
  const corrections = times(whiteShared, white);
  const uResiduals = v.map((row, i) => Math.sqrt(row[i] ?? 0));
  return {
    corrections,
    uReconciled: variances.map((variance) => Math.sqrt(Math.max(0, variance))),
    zCorrections: corrections.map((value, i) => value / Math.sqrt(taken[i] ?? 0)),
    uResiduals,
    zResiduals: residuals.map((value, i) => value / (uResiduals[i] ?? 0)),
    gamma,
    rank,
    p: rank === 0 ? 1 : chiSquaredTail(gamma, rank),
    factor,
    white,
  };
}
/** The measured values with their corrections taken off. */
export const reconciledOf = (y, corrections) => y.map((value, i) => value - (corrections[i] ?? 0));
/** Generalised likelihood ratio of a signature f: b = fᵀV⁻¹r / fᵀV⁻¹f, T = b²·fᵀV⁻¹f (Narasimhan & Jordache 2000, eqs 7-29 to 7-32). */
export function explain({ factor, white }, signature) {
  const f = whiten(factor, signature);
  const length = Math.sqrt(dot(f, f));
  if (length === 0) return null;
  const direction = f.map((x) => x / length);
  const z = dot(direction, white);
  return { size: z / length, u: 1 / length, z, t: z * z, direction };
}
/** Least squares under curved constraints by successive linearisation: at each step g(x) + G·(X − x) = 0 is solved anew from the readings. */
export function adjustCurved(y, covariance, constraints, mostSteps = 50) {
  let x = y;
  for (let steps = 1; steps <= mostSteps; steps++) {
    const { values, slopes } = constraints(x);
    const moved = y.map((value, i) => value - (x[i] ?? 0));
    const residuals = values.map((value, i) => value + dot(slopes[i] ?? [], moved));
    const { corrections, gamma } = adjust({ a: slopes, covariance, residuals });
    const next = reconciledOf(y, corrections);
    const still = next.every((value, i) => Math.abs(value - (x[i] ?? 0)) <= 1e-12 * Math.max(1, Math.abs(value)));
    x = next;
    if (still) return { x, gamma, steps };
  }
  throw new RangeError(`no solution in ${mostSteps} steps`);
}
/** Least squares with x ≥ 0, from the free solution: a value that comes out below zero is fixed at zero, and freed again when the rest would lift it. */
export function atLeastZero(balances, y, free) {
  let fixed = [];
  let { corrections, factor, white } = free;
  for (let round = 0; round <= 2 * y.length; round++) {
    const x = reconciledOf(y, corrections).map((value, i) => (fixed.includes(i) ? 0 : value));
    const pull = unwhiten(factor, white, balances.a.length + fixed.length);
    const freed = fixed.find((_, k) => (pull[balances.a.length + k] ?? 0) > 0);
    const below = x.reduce((least, value, i) => (value < (x[least] ?? 0) ? i : least), 0);
    if (freed === undefined && (x[below] ?? 0) >= -1e-12) return { x, fixed };
    fixed = freed === undefined ? [...fixed, below] : fixed.filter((j) => j !== freed);
    const units = fixed.map((j) => y.map((_, i) => Number(i === j)));
    const residuals = [...balances.residuals, ...fixed.map((j) => y[j] ?? 0)];
    ({ corrections, factor, white } = adjust({ ...balances, a: [...balances.a, ...units], residuals }));
  }
  throw new RangeError('the values fixed at zero do not settle');
}
