// Weighted least squares under conservation of mass: what the readings say together, and how far each hypothesis explains a gap.
import { chiSquaredTail } from './distributions.ts';
import { type Cholesky, cholesky, dot, type Matrix, sparseTimes, times, transposed, unwhiten, type Vector, whiten } from './matrix.ts';

/** Balances A·x = b of a measured vector with its covariance, and the residuals r = A·y − b as found (exactly where they can be). */
export interface Balances {
  readonly a: Matrix;
  readonly covariance: Matrix;
  readonly residuals: Vector;
}
export interface Adjustment {
  /** Subtract from the measured values to get the reconciled ones. */
  readonly corrections: Vector;
  readonly uReconciled: Vector;
  /** Each correction over its own u: which reading had to move most for what it is worth. */
  readonly zCorrections: Vector;
  /** u of each balance's residual by itself, and the residual over it. */
  readonly uResiduals: Vector;
  readonly zResiduals: Vector;
  /** Global test γ = rᵀV⁻¹r ~ χ²(rank) and its upper tail. */
  readonly gamma: number;
  readonly rank: number;
  readonly p: number;
  readonly factor: Cholesky;
  /** L⁻¹·r */
  readonly white: Vector;
  /** L⁻¹·AΣ by measured value: Cov(x) = Σ − its Gram matrix. */
  readonly whiteShared: Matrix;
}

/** Least squares under A·x = b: V = AΣAᵀ, corrections ΣAᵀV⁻¹r, Cov(x) = Σ − ΣAᵀV⁻¹AΣ (Narasimhan & Jordache 2000, eqs 7-3 and 7-13). */
export function adjust({ a, covariance, residuals }: Balances): Adjustment {
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
    p: chiSquaredTail(gamma, rank),
    factor,
    white,
    whiteShared,
  };
}

/** The measured values with their corrections taken off. */
export const reconciledOf = (y: Vector, corrections: Vector): Vector => y.map((value, i) => value - (corrections[i] ?? 0));

/** How well one signature explains the residuals: its size ± u, z, and T = z², the drop of γ if it is true; null when no balance would show it. */
export interface Explanation {
  readonly size: number;
  readonly u: number;
  readonly z: number;
  readonly t: number;
  /** L⁻¹·f, of unit length: equal (or opposite) for hypotheses that cannot be told apart. */
  readonly direction: Vector;
}

/** Generalised likelihood ratio of a signature f: b = fᵀV⁻¹r / fᵀV⁻¹f, T = b²·fᵀV⁻¹f (Narasimhan & Jordache 2000, eqs 7-29 to 7-32). */
export function explain({ factor, white }: Pick<Adjustment, 'factor' | 'white'>, signature: Vector): Explanation | null {
  const f = whiten(factor, signature);
  const length = Math.sqrt(dot(f, f));
  if (length === 0) return null;
  const direction = f.map((x) => x / length);
  const z = dot(direction, white);
  return { size: z / length, u: 1 / length, z, t: z * z, direction };
}

/** Constraints g(x) = 0 and their slopes at x. */
export type Constraints = (x: Vector) => { readonly values: Vector; readonly slopes: Matrix };
export interface Reconciled {
  readonly x: Vector;
  readonly gamma: number;
  readonly steps: number;
}

/** Least squares under curved constraints by successive linearisation: at each step g(x) + G·(X − x) = 0 is solved anew from the readings. */
export function adjustCurved(y: Vector, covariance: Matrix, constraints: Constraints, mostSteps = 50): Reconciled {
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

/** Least squares with x ≥ 0, from the free solution: a value that comes out below zero is fixed at zero, and freed again when the rest would lift it. Fixing the values F moves the free solution by −C·C_FF⁻¹·x_F, C its covariance: only a matrix of the size of F is solved. */
export function atLeastZero(
  { covariance }: Pick<Balances, 'covariance'>,
  y: Vector,
  { corrections, whiteShared }: Adjustment,
): { readonly x: Vector; readonly fixed: readonly number[] } {
  const free = reconciledOf(y, corrections);
  const columns = new Map<number, Vector>();
  const columnOf = (j: number): Vector => {
    const known = columns.get(j);
    if (known) return known;
    const column = free.map((_, i) => (covariance[i]?.[j] ?? 0) - dot(whiteShared[i] ?? [], whiteShared[j] ?? []));
    columns.set(j, column);
    return column;
  };
  let fixed: readonly number[] = [];
  for (let round = 0; round <= 2 * y.length; round++) {
    const held = fixed.map(columnOf);
    const factor = cholesky(held.map((column) => fixed.map((i) => column[i] ?? 0)));
    const values = fixed.map((j) => free[j] ?? 0);
    const pull = unwhiten(factor, whiten(factor, values), fixed.length);
    const x = reconciledOf(
      free,
      free.map((_, i) => held.reduce((sum, column, k) => sum + (column[i] ?? 0) * (pull[k] ?? 0), 0)),
    );
    const kept = x.map((value, i) => (fixed.includes(i) ? 0 : value));
    const freed = fixed.find((_, k) => (pull[k] ?? 0) > 0);
    const below = kept.reduce((least, value, i) => (value < (kept[least] ?? 0) ? i : least), 0);
    if (freed === undefined && (kept[below] ?? 0) >= -1e-12) return { x: kept, fixed };
    fixed = freed === undefined ? [...fixed, below] : fixed.filter((j) => j !== freed);
  }
  throw new RangeError('the values fixed at zero do not settle');
}
