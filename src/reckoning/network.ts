// Any number of holdings and the flows between them: is all accounted for, and which single faults would explain it if not?
// Nothing is ever corrected here; hypotheses that look the same are named together.
import type { MassNg } from '../units/mass.ts';
import { covariance, type Worth } from '../weighing/uncertainty.ts';
import { type Adjustment, adjust, adjustAtLeastZero, type Balances, type Explanation, explain } from './adjustment.ts';
import { CALC_VERSION, LEAST_U_G, Z95 } from './closure.ts';
import { normalUpper } from './distributions.ts';
import { dot, type Vector } from './matrix.ts';
import { sidak } from './periods.ts';

/** The end of a stream that no balance is struck over: customers, suppliers, the past and the future of a holding. */
export const OUTSIDE = 'outside';

/** A flow of matter; `ng` null when it was not measured. An opening stock comes from outside, a closing one goes there. */
export interface Stream extends Worth {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly ng: MassNg | null;
}
export interface Network {
  readonly nodes: readonly string[];
  readonly streams: readonly Stream[];
}

/** Nodes that unmeasured flows join into one: only their sum can be tested, and nothing when they reach the outside. */
export interface NodeGroup {
  readonly nodes: readonly string[];
  readonly testable: boolean;
  /** In − out, exact; a loss is positive. */
  readonly residualNg: number;
  readonly uG: number;
  readonly z: number;
}
export interface ReconciledStream {
  readonly id: string;
  readonly reconciledG: number;
  readonly uG: number;
  readonly fixedAtZero: boolean;
  /** False when nothing else would show a fault in this weighing. */
  readonly checkable: boolean;
  /** A fault this large would be found 95 times in 100; null when it cannot be checked. */
  readonly detectableG: number | null;
}
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
export interface NetworkReckoning {
  readonly calcVersion: string;
  readonly groups: readonly NodeGroup[];
  /** Over all groups together: flows between them cancel. */
  readonly total: { readonly residualNg: number; readonly uG: number; readonly z: number };
  readonly gamma: number;
  readonly rank: number;
  readonly p: number;
  readonly streams: readonly ReconciledStream[];
  /** What the balances say of flows that were not measured; null where they do not settle it. */
  readonly unmeasured: readonly { readonly id: string; readonly g: number | null }[];
  readonly criticalZ: number;
  /** Empty while the whole agrees; else every set within 3.84 of the best (a likelihood ratio of about 7), best first. */
  readonly suspects: readonly SuspectSet[];
}

const GLOBAL_ALPHA = 0.05;
const WITHIN_BEST = 3.84;

/** Reckons a network of holdings and flows: reconciled flows, the global test and the sets of suspects. */
export function reckon(network: Network): NetworkReckoning {
  const groups = groupsOf(network);
  const tested = groups.filter(({ testable }) => testable);
  const measured = network.streams.filter((stream): stream is Stream & { ng: MassNg } => stream.ng !== null);
  const groupOf = new Map(tested.flatMap(({ nodes }, i) => nodes.map((node) => [node, i] as const)));
  const a = tested.map((_, i) => measured.map(({ from, to }) => Number(groupOf.get(to) === i) - Number(groupOf.get(from) === i)));
  const residualsNg = a.map((row) =>
    dot(
      row,
      measured.map(({ ng }) => ng),
    ),
  );
  const worths = measured.map(({ uRandomG, factors }) => ({ uRandomG: Math.max(LEAST_U_G, uRandomG), factors }));
  const balances: Balances = { a, covariance: covariance(worths), residuals: residualsNg.map((ng) => ng / 1e9) };
  const adjustment = adjust(balances);
  const hypotheses = hypothesesOf(tested, measured, balances);
  const explained = hypotheses.map(({ signature }) => explain(adjustment, signature));
  const sets = suspectSets(hypotheses, explained);
  const criticalZ = sets.length === 0 ? 0 : normalUpper(sidak(GLOBAL_ALPHA, sets.length) / 2);
  const kept = adjustAtLeastZero(
    balances,
    measured.map(({ ng }) => ng / 1e9),
  );
  const streams = measured.map(({ id }, j) => {
    const shown = explained[j] ?? null;
    const detectableG = shown && (criticalZ + Z95) * shown.u;
    const reconciledG = kept.x[j] ?? 0;
    return {
      id,
      reconciledG,
      uG: adjustment.uReconciled[j] ?? 0,
      fixedAtZero: kept.fixed.includes(j),
      checkable: shown !== null,
      detectableG,
    };
  });
  return {
    calcVersion: CALC_VERSION,
    groups: judgedGroups(groups, residualsNg, adjustment),
    total: totalOf(balances, residualsNg),
    gamma: adjustment.gamma,
    rank: adjustment.rank,
    p: adjustment.p,
    streams,
    unmeasured: unmeasuredOf(network, streams),
    criticalZ,
    suspects: adjustment.p < GLOBAL_ALPHA ? nearBest(sets, criticalZ) : [],
  };
}

type Group = Pick<NodeGroup, 'nodes' | 'testable'>;

/** Joins nodes over unmeasured flows (Crowe, García Campos & Hrymak 1983: what remains after projecting them out of node balances). */
function groupsOf({ nodes, streams }: Network): readonly Group[] {
  const stray = streams.flatMap(({ from, to }) => [from, to]).find((end) => end !== OUTSIDE && !nodes.includes(end));
  if (stray !== undefined) throw new RangeError(`a flow ends at ${stray}, which is no node`);
  const unmeasured = streams.filter(({ ng }) => ng === null);
  const groups: Group[] = [];
  const seen = new Set<string>();
  for (const start of nodes) {
    if (seen.has(start)) continue;
    const members = [start];
    seen.add(start);
    let testable = true;
    for (const node of members) {
      for (const { from, to } of unmeasured) {
        const other = from === node ? to : to === node ? from : node;
        if (other === OUTSIDE) testable = false;
        else if (!seen.has(other)) members.push(other);
        if (other !== OUTSIDE) seen.add(other);
      }
    }
    groups.push({ nodes: members, testable });
  }
  return groups;
}

function judgedGroups(groups: readonly Group[], residualsNg: Vector, { uResiduals }: Adjustment): readonly NodeGroup[] {
  let i = 0;
  return groups.map((group) => {
    if (!group.testable) return { ...group, residualNg: 0, uG: 0, z: 0 };
    const [residualNg, uG] = [residualsNg[i] ?? 0, uResiduals[i] ?? 0];
    i += 1;
    return { ...group, residualNg, uG, z: uG > 0 ? residualNg / 1e9 / uG : 0 };
  });
}

function totalOf({ a, covariance: sigma }: Balances, residualsNg: Vector): NetworkReckoning['total'] {
  const net = sigma.map((_, j) => a.reduce((sum, row) => sum + (row[j] ?? 0), 0));
  const residualNg = residualsNg.reduce((sum, ng) => sum + ng, 0);
  const uG = Math.sqrt(
    dot(
      net,
      sigma.map((row) => dot(row, net)),
    ),
  );
  return { residualNg, uG, z: uG > 0 ? residualNg / 1e9 / uG : 0 };
}

type Signed = { readonly hypothesis: Hypothesis; readonly signature: Vector };

/** Every weighing first, in order; then a loss at every group; then every shared factor. */
function hypothesesOf(groups: readonly Group[], measured: readonly Stream[], { a }: Balances): readonly Signed[] {
  const columns = measured.map((_, j) => a.map((row) => row[j] ?? 0));
  const weighings = measured.map(
    ({ id }, j): Signed => ({ hypothesis: { fault: 'weighing wrong', stream: id }, signature: columns[j] ?? [] }),
  );
  const losses = groups.map(
    ({ nodes }, i): Signed => ({ hypothesis: { fault: 'loss', nodes }, signature: groups.map((_, k) => (k === i ? 1 : 0)) }),
  );
  const effects = new Map<string, number[]>();
  for (const [j, { factors }] of measured.entries()) {
    for (const { id, sensitivityG } of factors) {
      const sum = effects.get(id) ?? groups.map(() => 0);
      effects.set(
        id,
        sum.map((value, i) => value + sensitivityG * (columns[j]?.[i] ?? 0)),
      );
    }
  }
  const drifts = [...effects].map(([factor, signature]): Signed => ({ hypothesis: { fault: 'factor drifted', factor }, signature }));
  return [...weighings, ...losses, ...drifts];
}

type Explained = { readonly best: Explanation; readonly suspects: Suspect[] };

/** Puts hypotheses whose signatures are proportional into one set. */
function suspectSets(hypotheses: readonly Signed[], explained: readonly (Explanation | null)[]): readonly Explained[] {
  const sets: Explained[] = [];
  for (const [i, { hypothesis }] of hypotheses.entries()) {
    const one = explained[i];
    if (!one) continue;
    const suspect = { ...hypothesis, size: one.size, u: one.u };
    const same = sets.find(({ best }) => Math.abs(dot(best.direction, one.direction)) > 1 - 1e-9);
    if (same) same.suspects.push(suspect);
    else sets.push({ best: one, suspects: [suspect] });
  }
  return sets;
}

function nearBest(sets: readonly Explained[], criticalZ: number): readonly SuspectSet[] {
  const most = Math.max(...sets.map(({ best }) => best.t));
  return sets
    .filter(({ best }) => best.t > most - WITHIN_BEST)
    .sort((one, other) => other.best.t - one.best.t)
    .map(({ best, suspects }) => ({ suspects, z: best.z, t: best.t, significant: Math.abs(best.z) >= criticalZ }));
}

/** Finds unmeasured flows one by one, where a node has just one left. */
function unmeasuredOf({ nodes, streams }: Network, reconciled: readonly ReconciledStream[]): NetworkReckoning['unmeasured'] {
  const known = new Map(reconciled.map(({ id, reconciledG }) => [id, reconciledG]));
  for (let found = true; found; ) {
    found = false;
    for (const node of nodes) {
      const at = streams.filter(({ from, to }) => (from === node) !== (to === node));
      const [open, another] = at.filter(({ id }) => !known.has(id));
      if (open === undefined || another !== undefined) continue;
      const net = at.reduce((sum, { id, to }) => sum + (to === node ? 1 : -1) * (known.get(id) ?? 0), 0);
      known.set(open.id, open.to === node ? -net : net);
      found = true;
    }
  }
  return streams.filter(({ ng }) => ng === null).map(({ id }) => ({ id, g: known.get(id) ?? null }));
}
