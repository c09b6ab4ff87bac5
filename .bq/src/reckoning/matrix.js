// Small dense matrices in plain rows: the Cholesky factor of a covariance, with dependent rows dropped, and solving with it.
export function dot(a, b) {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}
export const times = (matrix, vector) => matrix.map((row) => dot(row, vector));
export const transposed = (matrix, columns) => Array.from({ length: columns }, (_, j) => matrix.map((row) => row[j] ?? 0));
export const diagonal = (values) => values.map((value, i) => values.map((_, j) => (i === j ? value : 0)));
/** A·S for a sparse A: only the entries of A that are not zero are touched. */
export function sparseTimes(a, s) {
  const columns = s[0]?.length ?? 0;
  return a.map((row) => {
    const out = new Array(columns).fill(0);
    for (const [k, factor] of row.entries()) {
      const from = s[k];
      if (factor === 0 || from === undefined) continue;
      for (let j = 0; j < columns; j++) out[j] = (out[j] ?? 0) + factor * (from[j] ?? 0);
    }
    return out;
  });
}
/** Below this share of its own variance a pivot is rounding noise. */
const DEPENDENT = 1e-11;
/** Cholesky factor of a positive semidefinite matrix, dropping each row that depends on rows before it. */
export function cholesky(v) {
  const lower = [];
  const kept = [];
  for (const [i, row] of v.entries()) {
    const next = [];
    for (const [k, done] of lower.entries()) next.push(((row[kept[k] ?? 0] ?? 0) - dot(next, done)) / (done[k] ?? 1));
    const variance = row[i] ?? 0;
    const pivot = variance - dot(next, next);
    if (pivot <= DEPENDENT * variance) continue;
    lower.push([...next, Math.sqrt(pivot)]);
    kept.push(i);
  }
  return { lower, kept };
}
/** L⁻¹·b over the kept rows: values that are independent with variance 1 when b has the covariance V. */
export function whiten({ lower, kept }, b) {
  const out = [];
  for (const [k, row] of lower.entries()) out.push(((b[kept[k] ?? 0] ?? 0) - dot(out, row)) / (row[k] ?? 1));
  return out;
}
/** Lᵀ⁻¹·w, put back to the length of the whole matrix with 0 at the dropped rows. */
export function unwhiten({ lower, kept }, w, size) {
  const short = [...w];
  const out = new Array(size).fill(0);
  for (let k = lower.length - 1; k >= 0; k--) {
    const value = (short[k] ?? 0) / (lower[k]?.[k] ?? 1);
    for (let i = 0; i < k; i++) short[i] = (short[i] ?? 0) - (lower[k]?.[i] ?? 0) * value;
    out[kept[k] ?? 0] = value;
  }
  return out;
}
/** x of A·x = b for a square A by elimination with row exchange; throws when A is singular. */
export function solve(a, b) {
  const rows = a.map((row, i) => [...row, b[i] ?? 0]);
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    const best = rows.reduce((at, row, i) => (i > k && Math.abs(row[k] ?? 0) > Math.abs(rows[at]?.[k] ?? 0) ? i : at), k);
    const [pivot, other] = [rows[best], rows[k]];
    const head = pivot?.[k] ?? 0;
    if (!pivot || !other || head === 0) throw new RangeError('singular matrix');
    rows[k] = pivot;
    rows[best] = other;
    for (let i = k + 1; i < n; i++) {
      const row = rows[i] ?? [];
      const factor = (row[k] ?? 0) / head;
      if (factor !== 0) for (let j = k; j <= n; j++) row[j] = (row[j] ?? 0) - factor * (pivot[j] ?? 0);
    }
  }
  const x = new Array(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    const row = rows[k] ?? [];
    x[k] = ((row[n] ?? 0) - dot(row.slice(0, n), x)) / (row[k] ?? 1);
  }
  return x;
}
