// Any number of holdings and the flows between them: is all accounted for, and which single faults would explain it if not?
// Nothing is ever corrected here; hypotheses that look the same are named together.
import type { MassNg } from '../units/mass.ts';
import { covariance, type Worth } from '../weighing/uncertainty.ts';
import { type Adjustment, adjust, atLeastZero, type Balances } from './adjustment.ts';
import { CALC_VERSION } from './closure.ts';
import { LEAST_U_G, Z95 } from './loss-law.ts';
import { dot, type Vector } from './matrix.ts';
import { GLOBAL_ALPHA, hypothesesOf, nearBest, type SuspectSet, weighed } from './suspects.ts';
import { type Together, together } from './together.ts';

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
interface NodeGroup {
  readonly nodes: readonly string[];
  readonly testable: boolean;
  /** In − out, exact; a loss is positive. */
  readonly residualNg: number;
  readonly uG: number;
  readonly z: number;
}
interface ReconciledStream {
  readonly id: string;
  readonly reconciledG: number;
  readonly uG: number;
  readonly fixedAtZero: boolean;
  /** False when nothing else would show a fault in this weighing. */
  readonly checkable: boolean;
  /** A fault this large would be found 95 times in 100; null when it cannot be checked. */
  readonly detectableG: number | null;
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
  /** Single faults: empty while the whole agrees; else every set within 3.84 of the best (a likelihood ratio of about 7), best first. */
  readonly suspects: readonly SuspectSet[];
  /** Faults that only together explain the gaps, where no single one does; best first. Null where not even three do. */
  readonly together: readonly Together[] | null;
}

/** Reckons a network of holdings and flows: reconciled flows, the global test and the sets of suspects. */
export function reckon(network: Network): NetworkReckoning {
  const groups = groupsOf(network);
  const tested = groups.filter(({ testable }) => testable);
  const measured = network.streams.filter((stream): stream is Stream & { ng: MassNg } => stream.ng !== null);
  const groupOf = new Map(tested.flatMap(({ nodes }, i) => nodes.map((node) => [node, i] as const)));
  const a = tested.map((_, i) => measured.map(({ from, to }) => Number(groupOf.get(to) === i) - Number(groupOf.get(from) === i)));
  const readNg = measured.map(({ ng }): number => ng);
  const residualsNg = a.map((row) => dot(row, readNg));
  const worths = measured.map(({ uRandomG, factors }) => ({ uRandomG: Math.max(LEAST_U_G, uRandomG), factors }));
  const balances: Balances = { a, covariance: covariance(worths), residuals: residualsNg.map((ng) => ng / 1e9) };
  const adjustment = adjust(balances);
  const kept = atLeastZero(
    balances,
    readNg.map((ng) => ng / 1e9),
    adjustment,
  );
  const found = weighed(hypothesesOf(tested, measured, a, kept.x), adjustment);
  const { explained, criticalZ } = found;
  const isOff = adjustment.p < GLOBAL_ALPHA;
  const streams = measured.map(({ id }, j): ReconciledStream => {
    const shown = explained[j] ?? null;
    const detectableG = shown && (criticalZ + Z95) * shown.u;
    const [reconciledG, uG] = [kept.x[j] ?? 0, adjustment.uReconciled[j] ?? 0];
    return { id, reconciledG, uG, fixedAtZero: kept.fixed.includes(j), checkable: shown !== null, detectableG };
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
    suspects: isOff ? nearBest(found) : [],
    together: isOff ? together(found, adjustment) : [],
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
        seen.add(other);
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

/** An unmeasured flow is settled where nothing else unmeasured joins its two ends: all that is measured across the edge of one side then says what it was. */
function unmeasuredOf({ streams }: Network, reconciled: readonly ReconciledStream[]): NetworkReckoning['unmeasured'] {
  const known = new Map(reconciled.map(({ id, reconciledG }) => [id, reconciledG]));
  const open = streams.filter(({ ng }) => ng === null);
  return open.map((stream) => {
    const others = open.filter((one) => one !== stream);
    for (const [end, sign] of [[stream.to, -1] as const, [stream.from, 1] as const]) {
      const side = joinedBy(others, end);
      if (side.has(OUTSIDE) || (side.has(stream.from) && side.has(stream.to))) continue;
      const netG = streams.reduce(
        (sum, { id, from, to }) => sum + (Number(side.has(to)) - Number(side.has(from))) * (known.get(id) ?? 0),
        0,
      );
      return { id: stream.id, g: sign * netG };
    }
    return { id: stream.id, g: null };
  });
}

/** The ends that these flows join to one end, itself among them. */
function joinedBy(flows: readonly Stream[], start: string): ReadonlySet<string> {
  const side = new Set([start]);
  for (const end of side)
    for (const { from, to } of flows) {
      if (from === end) side.add(to);
      if (to === end) side.add(from);
    }
  return side;
}
