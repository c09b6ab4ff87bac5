// Which single faults would explain a gap: a wrong weighing, a loss at a holding, a factor that drifted. Those that look alike are named together.
import type { MassNg } from '../units/mass.ts';
import type { Worth } from '../weighing/uncertainty.ts';
import { type Adjustment, type Explanation, explain } from './adjustment.ts';
import { normalUpper } from './distributions.ts';
import { dot, type Matrix, type Vector } from './matrix.ts';
import { sidak } from './periods.ts';

export type Hypothesis =
  | { readonly fault: 'weighing wrong'; readonly stream: string }
  | { readonly fault: 'loss'; readonly nodes: readonly string[] }
  | { readonly fault: 'factor drifted'; readonly factor: string };
/** One hypothesis with its size: grams too heavy, grams lost, or standard uncertainties of drift. */
export type Suspect = Hypothesis & { readonly size: number; readonly u: number };
/** Hypotheses that the figures cannot tell apart. */
export interface SuspectSet {
  readonly suspects: readonly Suspect[];
  readonly z: number;
  readonly t: number;
  /** Beyond the critical value for the number of different signatures. */
  readonly significant: boolean;
}
/** Level of the global test, and of all hypotheses together. */
export const GLOBAL_ALPHA = 0.05;
/** A hypothesis this much below the best T is a likelihood ratio of about 7 worse (rule of thumb). */
export const WITHIN_BEST = 3.84;

export interface Signed {
  readonly hypothesis: Hypothesis;
  readonly signature: Vector;
}
type Measured = Worth & { readonly id: string; readonly ng: MassNg };

/** Every weighing first, in order; then a loss at every group; then every shared factor. `a`: groups × weighings; `reconciledG`: their reconciled masses. */
export function hypothesesOf(
  groups: readonly { readonly nodes: readonly string[] }[],
  measured: readonly Measured[],
  a: Matrix,
  reconciledG: Vector,
): readonly Signed[] {
  const columns = measured.map((_, j) => a.map((row) => row[j] ?? 0));
  const weighings = measured.map(
    ({ id }, j): Signed => ({ hypothesis: { fault: 'weighing wrong', stream: id }, signature: columns[j] ?? [] }),
  );
  const losses = groups.map(
    ({ nodes }, i): Signed => ({ hypothesis: { fault: 'loss', nodes }, signature: groups.map((_, k) => Number(k === i)) }),
  );
  return [...weighings, ...losses, ...driftsOf(measured, a, reconciledG)];
}

function driftsOf(measured: readonly Measured[], a: Matrix, reconciledG: Vector): readonly Signed[] {
  const parts = new Map<string, Part[]>();
  for (const [j, { factors, ng }] of measured.entries())
    for (const { id, sensitivityG } of factors) parts.set(id, [...(parts.get(id) ?? []), { j, sensitivityG, ng }]);
  return [...parts].map(([factor, its]) => {
    const effect = effectOf(its, measured.length, reconciledG);
    return { hypothesis: { fault: 'factor drifted', factor }, signature: a.map((row) => netEffect(row, effect)) };
  });
}

type Part = { readonly j: number; readonly sensitivityG: number; readonly ng: number };

/** A factor that is one share of every reading, such as a gain, acts on the true masses: taken from the readings, a gain shared by all would have the gap itself as its signature. */
function effectOf(parts: readonly Part[], size: number, reconciledG: Vector): Vector {
  const shares = parts.filter(({ ng }) => ng !== 0).map(({ sensitivityG, ng }) => (sensitivityG * 1e9) / ng);
  const [share = 0] = shares;
  const proportional = shares.length > 0 && shares.every((other) => Math.abs(other - share) <= 1e-6 * Math.abs(share));
  const effect = new Array<number>(size).fill(0);
  for (const { j, sensitivityG } of parts) effect[j] = proportional ? share * (reconciledG[j] ?? 0) : sensitivityG;
  return effect;
}

/** Effects that cancel but for rounding are no effect. */
function netEffect(row: Vector, effect: Vector): number {
  const net = dot(row, effect);
  const most = row.reduce((sum, sign, j) => sum + Math.abs(sign * (effect[j] ?? 0)), 0);
  return Math.abs(net) > 1e-9 * most ? net : 0;
}

export interface Alike {
  readonly best: Explanation;
  readonly suspects: Suspect[];
}
export interface Weighed {
  /** In the order of the hypotheses; null where nothing would show the fault. */
  readonly explained: readonly (Explanation | null)[];
  readonly sets: readonly Alike[];
  /** Two-sided critical |z| for the number of different signatures (Šidák). */
  readonly criticalZ: number;
}

/** Explains the residuals by each hypothesis, and puts those whose signatures are proportional into one set. */
export function weighed(hypotheses: readonly Signed[], adjustment: Adjustment): Weighed {
  const explained = hypotheses.map(({ signature }) => explain(adjustment, signature));
  const sets: Alike[] = [];
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

/** A balance is no suspect of a drift many times what it could be. */
const DRIFT_MOST = 5;
export const isPlausible = (one: Suspect): boolean => one.fault !== 'factor drifted' || Math.abs(one.size) <= DRIFT_MOST;

/** The sets within 3.84 of the best T, best first. */
export function nearBest({ sets, criticalZ }: Weighed): readonly SuspectSet[] {
  const most = Math.max(...sets.map(({ best }) => best.t));
  return sets
    .filter(({ best }) => best.t > most - WITHIN_BEST)
    .sort((one, other) => other.best.t - one.best.t)
    .map(({ best, suspects }) => ({ suspects, z: best.z, t: best.t, significant: Math.abs(best.z) >= criticalZ }));
}
