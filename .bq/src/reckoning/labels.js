// Lost labels: which stone is which, by the best assignment and the exact probability of every pair.
import { chiSquaredTail } from './distributions.js';

/** A label goes back on only from this probability up. */
const RESTORE_FROM = 0.99;
/** Pairs further apart than this many u are never the same stone; it splits a large lot into blocks. */
const GATE_Z = 4;
/** Largest block for which every permutation is summed (2^n · n steps). */
const LARGEST_BLOCK = 16;
/** Cost of taking each stone found for each stone recorded: ½ Σ (difference/u)². */
export const pairCosts = (recorded, found, uPair) => recorded.map((one) => found.map((other) => ((other - one) / uPair) ** 2 / 2));
/** Cheapest assignment of a square cost matrix by shortest augmenting paths (Hungarian method; Jonker & Volgenant 1987). */
export function bestAssignment(costs) {
  const n = costs.length;
  const rowPotentials = new Array(n).fill(0);
  const columnPotentials = new Array(n).fill(0);
  const rowOf = new Array(n).fill(-1);
  for (let start = 0; start < n; start++) augment(costs, start, rowPotentials, columnPotentials, rowOf);
  const columns = new Array(n).fill(-1);
  for (const [column, row] of rowOf.entries()) columns[row] = column;
  const cost = columns.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? 0), 0);
  return { columns, cost, rowPotentials, columnPotentials };
}
/** Adds row `start` to the assignment along the cheapest path, keeping every reduced cost ≥ 0 and 0 on the assigned pairs. */
function augment(costs, start, u, v, rowOf) {
  const n = costs.length;
  const distance = new Array(n).fill(Number.POSITIVE_INFINITY);
  const from = new Array(n).fill(-1);
  const done = new Set();
  let row = start;
  let reached = 0;
  let end = -1;
  for (let column = -1; row !== -1; ) {
    let next = -1;
    for (let j = 0; j < n; j++) {
      if (done.has(j)) continue;
      const length = reached + (costs[row]?.[j] ?? 0) - (u[row] ?? 0) - (v[j] ?? 0);
      if (length < (distance[j] ?? 0)) {
        distance[j] = length;
        from[j] = column;
      }
      if (next === -1 || (distance[j] ?? 0) < (distance[next] ?? 0)) next = j;
    }
    reached = distance[next] ?? 0;
    done.add(next);
    column = next;
    end = next;
    row = rowOf[next] ?? -1;
  }
  u[start] = (u[start] ?? 0) + reached;
  for (const j of done) {
    const slack = reached - (distance[j] ?? 0);
    v[j] = (v[j] ?? 0) - slack;
    const owner = rowOf[j] ?? -1;
    if (owner !== -1) u[owner] = (u[owner] ?? 0) + slack;
  }
  for (let column = end; column !== -1; column = from[column] ?? -1) {
    const before = from[column] ?? -1;
    rowOf[column] = before === -1 ? start : (rowOf[before] ?? -1);
  }
}
/** Probability of every pair when each permutation weighs e^(−cost): ratio of permanents, summed over subsets of columns, n ≤ 16. */
export function pairProbabilities(costs) {
  const n = costs.length;
  if (n > LARGEST_BLOCK) throw new RangeError(`${n} stones are too many to sum every permutation of`);
  const { rowPotentials, columnPotentials } = bestAssignment(costs);
  // Reduced by the potentials the best permutation weighs exactly 1, so nothing underflows that matters.
  const weights = costs.map((row, i) => row.map((cost, j) => Math.exp((rowPotentials[i] ?? 0) + (columnPotentials[j] ?? 0) - cost)));
  const forward = subsetSums(weights);
  const backward = subsetSums(weights.toReversed());
  const full = 2 ** n - 1;
  const pairs = costs.map(() => new Array(n).fill(0));
  for (let used = 0; used < full; used++) {
    const i = bitCount(used);
    for (let j = 0; j < n; j++) {
      if (used & (1 << j)) continue;
      const rest = full & ~used & ~(1 << j);
      const row = pairs[i];
      if (row) row[j] = (row[j] ?? 0) + (forward[used] ?? 0) * (weights[i]?.[j] ?? 0) * (backward[rest] ?? 0);
    }
  }
  const total = forward[full] ?? 1;
  return pairs.map((row) => row.map((sum) => sum / total));
}
/** For each set of columns, the summed weight of giving them to the first rows. */
function subsetSums(weights) {
  const n = weights.length;
  const sums = new Float64Array(2 ** n);
  sums[0] = 1;
  for (let used = 0; used < sums.length; used++) {
    const row = weights[bitCount(used)];
    for (let j = 0; j < n && row; j++) {
      const with_ = used | (1 << j);
      if (with_ !== used) sums[with_] = (sums[with_] ?? 0) + (sums[used] ?? 0) * (row[j] ?? 0);
    }
  }
  return sums;
}
function bitCount(bits) {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
/** Restores labels where a pair is at least 0.99 certain and all the stones can belong; rows recorded, columns found, as many of each. */
export function restoreLabels(costs) {
  const { columns: best, cost } = bestAssignment(costs);
  const p = chiSquaredTail(2 * cost, costs.length);
  const probabilities = new Array(costs.length).fill(null);
  for (const { rows, columns } of blocksOf(costs)) {
    if (rows.length !== columns.length || rows.length > LARGEST_BLOCK) continue;
    const pairs = pairProbabilities(rows.map((row) => columns.map((column) => costs[row]?.[column] ?? 0)));
    for (const [i, row] of rows.entries()) probabilities[row] = pairs[i]?.[columns.indexOf(best[row] ?? -1)] ?? null;
  }
  const certain = p >= 0.001;
  const restored = best.map((column, row) => (certain && (probabilities[row] ?? 0) >= RESTORE_FROM ? column : null));
  return { columns: restored, best, probabilities, p };
}
/** Sets of rows and columns that share no possible pair with the rest. */
function blocksOf(costs) {
  const possible = (row, column) => (costs[row]?.[column] ?? 0) <= GATE_Z ** 2 / 2;
  const left = new Set(costs.keys());
  const blocks = [];
  for (const start of costs.keys()) {
    if (!left.delete(start)) continue;
    const rows = [start];
    const columns = new Set();
    for (const row of rows) {
      for (const column of costs.keys()) if (possible(row, column)) columns.add(column);
      for (const other of [...left]) if ([...columns].some((column) => possible(other, column)) && left.delete(other)) rows.push(other);
    }
    blocks.push({ rows, columns: [...columns] });
  }
  return blocks;
}
