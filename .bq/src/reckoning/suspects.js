import { explain } from './adjustment.js';
import { normalUpper } from './distributions.js';
import { dot } from './matrix.js';
import { sidak } from './periods.js';
/** Level of the global test, and of all hypotheses together. */
export const GLOBAL_ALPHA = 0.05;
/** A hypothesis this much below the best T is a likelihood ratio of about 7 worse (rule of thumb). */
const WITHIN_BEST = 3.84;
/** Every weighing first, in order; then a loss at every group; then every shared factor. `a`: groups × weighings; `reconciledG`: their reconciled masses. */
export function hypothesesOf(groups, measured, a, reconciledG) {
  const columns = measured.map((_, j) => a.map((row) => row[j] ?? 0));
  const weighings = measured.map(({ id }, j) => ({ hypothesis: { fault: 'weighing wrong', stream: id }, signature: columns[j] ?? [] }));
  const losses = groups.map(({ nodes }, i) => ({ hypothesis: { fault: 'loss', nodes }, signature: groups.map((_, k) => Number(k === i)) }));
  return [...weighings, ...losses, ...driftsOf(measured, a, reconciledG)];
}
function driftsOf(measured, a, reconciledG) {
  const parts = new Map();
  for (const [j, { factors, ng }] of measured.entries())
    for (const { id, sensitivityG } of factors) parts.set(id, [...(parts.get(id) ?? []), { j, sensitivityG, ng }]);
  return [...parts].map(([factor, its]) => {
    const effect = effectOf(its, measured.length, reconciledG);
    return { hypothesis: { fault: 'factor drifted', factor }, signature: a.map((row) => netEffect(row, effect)) };
  });
}
/** A factor that is one share of every reading, such as a gain, acts on the true masses: taken from the readings, a gain shared by all would have the gap itself as its signature. */
function effectOf(parts, size, reconciledG) {
  const shares = parts.filter(({ ng }) => ng !== 0).map(({ sensitivityG, ng }) => (sensitivityG * 1e9) / ng);
  const [share = 0] = shares;
  const proportional = shares.length > 0 && shares.every((other) => Math.abs(other - share) <= 1e-6 * Math.abs(share));
  const effect = new Array(size).fill(0);
  for (const { j, sensitivityG } of parts) effect[j] = proportional ? share * (reconciledG[j] ?? 0) : sensitivityG;
  return effect;
}
/** Effects that cancel but for rounding are no effect. */
function netEffect(row, effect) {
  const net = dot(row, effect);
  const most = row.reduce((sum, sign, j) => sum + Math.abs(sign * (effect[j] ?? 0)), 0);
  return Math.abs(net) > 1e-9 * most ? net : 0;
}
/** Explains the residuals by each hypothesis, and puts those whose signatures are proportional into one set. */
export function weighed(hypotheses, adjustment) {
  const explained = hypotheses.map(({ signature }) => explain(adjustment, signature));
  const sets = [];
  for (const [i, { hypothesis }] of hypotheses.entries()) {
    const one = explained[i];
    if (!one) continue;
    const suspect = { ...hypothesis, size: one.size, u: one.u };
    const same = sets.find(({ best }) => Math.abs(dot(best.direction, one.direction)) > 1 - 1e-9);
    if (same) same.suspects.push(suspect);
    else sets.push({ best: one, suspects: [suspect] });
  }
  return { explained, sets, criticalZ: sets.length === 0 ? 0 : normalUpper(sidak(GLOBAL_ALPHA, sets.length) / 2) };
}
/** The sets within 3.84 of the best T, best first. */
export function nearBest({ sets, criticalZ }) {
  const most = Math.max(...sets.map(({ best }) => best.t));
  return sets
    .filter(({ best }) => best.t > most - WITHIN_BEST)
    .sort((one, other) => other.best.t - one.best.t)
    .map(({ best, suspects }) => ({ suspects, z: best.z, t: best.t, significant: Math.abs(best.z) >= criticalZ }));
}
