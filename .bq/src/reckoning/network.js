import { covariance } from '../weighing/uncertainty.js';
import { adjust, atLeastZero } from './adjustment.js';
import { CALC_VERSION } from './closure.js';
import { LEAST_U_G, Z95 } from './loss-law.js';
import { dot } from './matrix.js';
import { GLOBAL_ALPHA, hypothesesOf, nearBest, weighed } from './suspects.js';
/** The end of a stream that no balance is struck over: customers, suppliers, the past and the future of a holding. */
export const OUTSIDE = 'outside';
/** Reckons a network of holdings and flows: reconciled flows, the global test and the sets of suspects. */
export function reckon(network) {
  const groups = groupsOf(network);
  const tested = groups.filter(({ testable }) => testable);
  const measured = network.streams.filter((stream) => stream.ng !== null);
  const groupOf = new Map(tested.flatMap(({ nodes }, i) => nodes.map((node) => [node, i])));
  const a = tested.map((_, i) => measured.map(({ from, to }) => Number(groupOf.get(to) === i) - Number(groupOf.get(from) === i)));
  const readNg = measured.map(({ ng }) => ng);
  const residualsNg = a.map((row) => dot(row, readNg));
  const worths = measured.map(({ uRandomG, factors }) => ({ uRandomG: Math.max(LEAST_U_G, uRandomG), factors }));
  const balances = { a, covariance: covariance(worths), residuals: residualsNg.map((ng) => ng / 1e9) };
  const adjustment = adjust(balances);
  const kept = atLeastZero(
    balances,
    readNg.map((ng) => ng / 1e9),
    adjustment,
  );
  const found = weighed(hypothesesOf(tested, measured, a, kept.x), adjustment);
  const { explained, criticalZ } = found;
  const streams = measured.map(({ id }, j) => {
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
    suspects: adjustment.p < GLOBAL_ALPHA ? nearBest(found) : [],
  };
}
/** Joins nodes over unmeasured flows (Crowe, García Campos & Hrymak 1983: what remains after projecting them out of node balances). */
function groupsOf({ nodes, streams }) {
  const stray = streams.flatMap(({ from, to }) => [from, to]).find((end) => end !== OUTSIDE && !nodes.includes(end));
  if (stray !== undefined) throw new RangeError(`a flow ends at ${stray}, which is no node`);
  const unmeasured = streams.filter(({ ng }) => ng === null);
  const groups = [];
  const seen = new Set();
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
function judgedGroups(groups, residualsNg, { uResiduals }) {
  let i = 0;
  return groups.map((group) => {
    if (!group.testable) return { ...group, residualNg: 0, uG: 0, z: 0 };
    const [residualNg, uG] = [residualsNg[i] ?? 0, uResiduals[i] ?? 0];
    i += 1;
    return { ...group, residualNg, uG, z: uG > 0 ? residualNg / 1e9 / uG : 0 };
  });
}
function totalOf({ a, covariance: sigma }, residualsNg) {
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
/** Finds unmeasured flows one by one, where a node has just one left. */
function unmeasuredOf({ nodes, streams }, reconciled) {
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
