// Glue from check rows to the functions of src/reckoning. Rows are in grams (carats where a balance shows carats); a loss is positive.

import { adjust, explain, reconciledOf } from '../../src/reckoning/adjustment.ts';
import { closure, type Weighing } from '../../src/reckoning/closure.ts';
import { reckonAssayed } from '../../src/reckoning/composition.ts';
import { chiSquaredUpper, normalUpper, studentUpper } from '../../src/reckoning/distributions.ts';
import { averageRunLength, runningSums, selfStarting, usualRate, whitened } from '../../src/reckoning/drift.ts';
import { checkSettlement, type LotItem, sumLot } from '../../src/reckoning/fine-metal.ts';
import { bestAssignment, pairCosts, pairProbabilities } from '../../src/reckoning/labels.ts';
import { levelAt } from '../../src/reckoning/loss-law.ts';
import { diagonal, type Matrix, times, type Vector } from '../../src/reckoning/matrix.ts';
import { OUTSIDE, reckon, type Stream } from '../../src/reckoning/network.ts';
import { benjaminiHochberg, sidak } from '../../src/reckoning/periods.ts';
import { findSlips, type Slip, type SlipKind } from '../../src/reckoning/slip.ts';
import { compareWeights, identityWorth } from '../../src/reckoning/stone-agreement.ts';
import { type MassUnit, massNg, NG_PER_UNIT, parseMass } from '../../src/units/mass.ts';
import { covariance, type Factor, readingVariance, uOfSum, type Worth } from '../../src/weighing/uncertainty.ts';
import type { Fns } from './compare.ts';
import { WEIGHING_FNS } from './weighing.fns.ts';

interface RowBalance {
  readonly id: string;
  readonly epoch: string;
  readonly d: number;
  readonly d0: number;
  readonly s: number;
  readonly uGain: number;
  readonly linHalf: number;
}
interface RowWeighing {
  readonly name: string;
  readonly sign: 0 | 1 | -1;
  readonly v: number;
  readonly bal: string;
  readonly unit: MassUnit;
}
interface RowNetwork {
  readonly A: Matrix;
  readonly y: Vector;
}
const grams = (unit: MassUnit): number => NG_PER_UNIT[unit] / 1e9;

/** Worth in grams of a reading `v` in `unit`; all the row's balances are taken as known from many readings. */
function worth({ id, epoch, d, d0, s, uGain, linHalf }: RowBalance, v: number, unit: MassUnit): Worth {
  const scale = grams(unit);
  const uRandomG = scale * Math.sqrt(readingVariance({ s, step: d, zeroStep: d0, linearity: linHalf }));
  return { uRandomG, factors: [{ id: `gain:${id}:${epoch}`, sensitivityG: uGain * v * scale }] };
}

const balanceOf = (balances: Readonly<Record<string, RowBalance>>, { bal }: RowWeighing): RowBalance => {
  const found = balances[bal];
  if (!found) throw new Error(`no balance ${bal} in the row`);
  return found;
};

/** Judges of what a source printed beside its data: its reconciled column to its two decimals, and the largest difference from ours. */
function columns(x: Vector) {
  const furthest = (column: Vector) => Math.max(...column.map((value, j) => Math.abs(value - (x[j] ?? Number.NaN))));
  const judged = () => {
    let most = Number.NaN;
    return [
      (column: Vector) => {
        most = furthest(column);
        return column.length === x.length && most <= 0.01;
      },
      (difference: number) => Math.abs(most - difference) <= 1e-6,
    ] as const;
  };
  const [published, fromPublished] = judged();
  const [mitsas, fromMitsas] = judged();
  return { published_x: published, max_abs_diff_from_published: fromPublished, mitsas_x: mitsas, max_abs_diff_from_mitsas: fromMitsas };
}

function statistics(a: Matrix, y: Vector, sigma: Matrix) {
  const r = times(a, y);
  const adjustment = adjust({ a, covariance: sigma, residuals: r });
  const weighings = y.map((_, j) =>
    explain(
      adjustment,
      a.map((row) => row[j] ?? 0),
    ),
  );
  const leaks = a.map((_, i) =>
    explain(
      adjustment,
      a.map((_row, k) => (k === i ? 1 : 0)),
    ),
  );
  const { corrections, zCorrections, uReconciled, zResiduals, gamma, p } = adjustment;
  return {
    r,
    x: reconciledOf(y, corrections),
    ux: uReconciled,
    gamma,
    p,
    zAdj: zCorrections,
    z: weighings.map((one) => one?.z),
    bias: weighings.map((one) => one?.size),
    node: zResiduals,
    leakZ: leaks.map((one) => one?.z),
    leakB: leaks.map((one) => one?.size),
  };
}

/** The largest |value|; among equals (within rounding) the first. */
const foremost = (values: readonly (number | undefined)[]): number => {
  const sizes = values.map((value) => Math.abs(value ?? 0));
  return sizes.findIndex((size) => size > Math.max(...sizes) - 1e-9);
};

function chain({
  balances,
  weighings,
  A,
}: {
  readonly balances: Readonly<Record<string, RowBalance>>;
  readonly weighings: readonly RowWeighing[];
  readonly A: Matrix;
}) {
  const y = weighings.map(({ v, unit }) => v * grams(unit));
  const found = statistics(A, y, covariance(weighings.map((one) => worth(balanceOf(balances, one), one.v, one.unit))));
  const names = weighings.map(({ name }) => name);
  return { ...found, names, topBias: names[foremost(found.z)], topLeak: foremost(found.leakZ) };
}

function network({
  nodes,
  flows,
  A,
  y,
  Sigma,
}: RowNetwork & { readonly nodes: readonly string[]; readonly flows: readonly string[]; readonly Sigma: Matrix }) {
  const found = statistics(A, y, Sigma);
  return { ...found, topLeak: nodes[foremost(found.leakZ)], topBias: flows[foremost(found.z)] };
}

/** Streams of an incidence matrix: +1 in the row it goes to, −1 in the row it comes from. */
function streamsOf(a: Matrix, ngOf: (j: number) => number | null, uOf: (j: number) => number): readonly Stream[] {
  const end = (j: number, sign: number) => {
    const i = a.findIndex((row) => row[j] === sign);
    return i === -1 ? OUTSIDE : `${i}`;
  };
  return (a[0] ?? []).map((_, j) => {
    const ng = ngOf(j);
    return { id: `${j}`, from: end(j, -1), to: end(j, 1), ng: ng === null ? null : massNg(ng), uRandomG: uOf(j), factors: [] };
  });
}

function unmeasured({ A, measured, y, sd }: RowNetwork & { readonly measured: readonly number[]; readonly sd: Vector }) {
  const at = (j: number) => measured.indexOf(j);
  const streams = streamsOf(
    A,
    (j) => (at(j) === -1 ? null : Math.round((y[at(j)] ?? 0) * 1e9)),
    (j) => sd[at(j)] ?? 0,
  );
  const found = reckon({ nodes: A.map((_, i) => `${i}`), streams });
  return {
    x: found.streams.map(({ reconciledG }) => reconciledG),
    gamma: found.gamma,
    rank: found.rank,
    p: found.p,
    xu: found.unmeasured.map(({ g }) => g),
  };
}

function bilinear({ y, sd }: { readonly y: Vector; readonly sd: Vector }) {
  const [feed = 0, top = 0, bottom = 0, ...shares] = y;
  const stream = (id: string, from: string, to: string, massG: number, at: number) => ({
    id,
    from,
    to,
    massG,
    shares: shares.slice(at, at + 2),
  });
  const streams = [
    stream('feed', OUTSIDE, 'column', feed, 0),
    stream('top', 'column', OUTSIDE, top, 2),
    stream('bottom', 'column', OUTSIDE, bottom, 4),
  ];
  return reckonAssayed({ nodes: ['column'], streams, complete: true }, diagonal(sd.map((u) => u * u)));
}

function job({
  balances,
  weighings,
}: {
  readonly balances: Readonly<Record<string, RowBalance>>;
  readonly weighings: readonly RowWeighing[];
}) {
  const terms = weighings.map((one): Weighing => {
    const read = parseMass(`${one.v}`, one.unit);
    if ('problem' in read || one.sign === 0) throw new Error(`not a weighing: ${one.name}`);
    return { id: one.name, sign: one.sign, ng: read.ng, worth: worth(balanceOf(balances, one), one.v, one.unit) };
  });
  const alone = terms.map((term, i) => ({ ...term, worth: { ...term.worth, factors: renamed(term.worth.factors, i) } }));
  const { lossNg, uG, z, plainP, mostLostG, note } = closure(terms);
  return {
    loss: lossNg / 1e9,
    u: uG,
    u_if_uncorrelated: uOfSum(alone),
    z,
    p2: plainP,
    Lc: note.flagNg / 1e9,
    Ld: note.detectableG,
    lossUpper95: mostLostG,
  };
}
const renamed = (factors: readonly Factor[], i: number): readonly Factor[] =>
  factors.map((factor) => ({ ...factor, id: `${factor.id}:${i}` }));

function stone({ balance, xin, xout }: { readonly balance: RowBalance; readonly xin: number; readonly xout: number }) {
  const measured = (v: number) => ({ g: v, worth: worth(balance, v, 'g') });
  const { differenceG, uG, en, z, p } = compareWeights(measured(xin), measured(xout));
  return { d: differenceG, u: uG, En: en, z, p };
}

interface AssignRow {
  readonly C: Matrix;
  readonly win?: Vector;
  readonly wout?: Vector;
  readonly u?: number;
}
function assign({ C, win, wout, u = 0 }: AssignRow) {
  const { columns, cost } = bestAssignment(C);
  if (!win || !wout) return { assign: columns, cost };
  return { assign: columns, cost, post: pairProbabilities(pairCosts(win, wout, Math.SQRT2 * u)) };
}

interface RowItem {
  readonly m: number;
  readonly um: number;
  readonly gain: number;
  readonly lo: number;
  readonly hi: number;
  readonly alloy: string;
}
const lotOf = (items: readonly RowItem[]) =>
  sumLot(
    items.map(({ m, um, gain, lo, hi, alloy }): LotItem => {
      const itsWorth = { uRandomG: um, factors: [{ id: 'gain', sensitivityG: gain }] };
      return { massG: m, worth: itsWorth, lowShare: lo, highShare: hi, alloy };
    }),
  );

function lot({ items }: { readonly items: readonly RowItem[] }) {
  const { massG, uMassG, fineG, uFineG, share, uShare } = lotOf(items);
  return { M: massG, uM: uMassG, F: fineG, uF: uFineG, phi: share, uPhi: uShare };
}

interface SettleRow {
  readonly items: readonly RowItem[];
  readonly ref: { readonly m: number; readonly um: number; readonly phi: number; readonly uphi: number };
  readonly price: number;
}
function settle({ items, ref, price }: SettleRow) {
  const found = checkSettlement(lotOf(items), { massG: ref.m, uMassG: ref.um, share: ref.phi, uShare: ref.uphi }, price);
  return {
    Fref: found.fineG,
    uFref: found.uFineG,
    d: found.shortG,
    u: found.uG,
    z: found.z,
    En: found.en,
    p1: found.pShort,
    money: found.money?.short,
    moneyU: found.money?.U,
    weightPart: found.byWeightG,
    finenessPart: found.byFinenessG,
    zMass: found.zWeight,
    zFineness: found.zFineness,
  };
}

interface SlipRow {
  readonly balance: RowBalance;
  readonly rows: readonly (readonly [text: string, sign: 1 | -1])[];
  readonly tares: readonly (readonly [name: string, g: number])[];
}
/** A slip as the rows write it. */
const ROW_WORDS: Readonly<Record<SlipKind, (slip: Slip) => string>> = {
  'digits swapped': ({ text, instead }) => `digits swapped: ${text} for ${instead}`,
  'decimal place': ({ text, instead }) => `decimal place: ${text} for ${instead}`,
  'other unit': ({ text, instead }) => `other unit: ${text} was in ${instead}`,
  'coarser balance': ({ text, instead }) => `another balance: ${text} to ${instead}`,
  'counted twice': ({ text }) => `counted twice: ${text}`,
  'wrong direction': ({ text, instead }) => `wrong direction: ${text} went ${instead}`,
  'tare left on': ({ text, instead }) => `tare ${instead} not taken off: ${text}`,
  'another piece': ({ text, instead }) => `another piece in the hand: ${text} is what ${instead} weighs`,
};

/** Judges: every slip of `found` must be named, none of `absent` may be. */
function slip({ balance, rows, tares }: SlipRow) {
  const weighings = rows.map(([text, sign], i) => {
    const read = parseMass(text, 'g');
    if ('problem' in read) throw new Error(`not a mass: ${text}`);
    return { id: `${i}`, sign, ng: read.ng, text, unit: 'g' as const, worth: worth(balance, read.ng / 1e9, 'g') };
  });
  const slips = findSlips(
    weighings,
    tares.map(([name, g]) => ({ name, ng: Math.round(g * 1e9) })),
  );
  const named = slips.map((one) => `${ROW_WORDS[one.kind](one)} ${one.weighing}`);
  const isNamed = ([words, at]: readonly [string, number]) => named.includes(`${words} ${at}`);
  return {
    found: (list: readonly (readonly [string, number])[]) => list.every(isNamed),
    absent: (list: readonly (readonly [string, number])[]) => !list.some(isNamed),
  };
}

export const RECKONING_FNS = {
  rss: WEIGHING_FNS.rss,
  reconcile: ({ A, y, sd }: RowNetwork & { readonly sd: Vector }) => {
    const found = statistics(A, y, diagonal(sd.map((u) => u * u)));
    return { ...found, ...columns(found.x) };
  },
  reconcileUnmeasured: unmeasured,
  chain,
  network,
  bilinear,
  job,
  stone,
  assign,
  lot,
  settle,
  slip,
  factorSum: ({ n, u }: { readonly n: number; readonly u: number }) => {
    const resistors = (id: (i: number) => string) =>
      Array.from({ length: n }, (_, i) => ({ sign: 1, worth: { uRandomG: 0, factors: [{ id: id(i), sensitivityG: u }] } }));
    return { correlated: uOfSum(resistors(() => 'standard')), independent: uOfSum(resistors((i) => `standard ${i}`)) };
  },
  dist: ({ p, df }: { readonly p: number | Vector; readonly df?: Vector }) => {
    if (typeof p !== 'number') return { q: p.map((one) => normalUpper(1 - one)) };
    return { q: df?.map((n) => (p === 0.975 ? studentUpper(1 - p, n) : chiSquaredUpper(1 - p, n))) };
  },
  identity: ({ feats }: { readonly feats: readonly (readonly [number, number, number])[] }) => {
    const found = identityWorth(feats.map(([difference, u, spread]) => ({ difference, u, spread })));
    return { log10LR: found.log10Ratio, D2: found.distance, p: found.p };
  },
  lattice: ({ u, d, alpha }: { readonly u: number; readonly d: number; readonly alpha: number }) => {
    const level = levelAt(alpha, { uG: u, stepNg: Math.round(d * 1e9) });
    return { flagAt: level.flagNg / 1e9, trueAlpha: level.trueAlpha, Ld: level.detectableG };
  },
  cusum: ({ z, k, h }: { readonly z: Vector; readonly k: number; readonly h: number }) => {
    const { high, low, alarms } = runningSums(z, k, h, false);
    return { hi: high, lo: low, alarms: alarms.map(({ at }) => at + 1) };
  },
  arl: ({ rows }: { readonly rows: readonly (readonly [number, number, number])[] }) => ({
    arl: rows.map((row) => averageRunLength(...row)),
  }),
  sitmuf: ({ muf, Sigma }: { readonly muf: Vector; readonly Sigma: Matrix }) => ({ z: whitened(muf, Sigma) }),
  qstat: ({ x }: { readonly x: Vector }) => ({ q: selfStarting(x) }),
  bh: ({ p, q }: { readonly p: Vector; readonly q: number }) => ({ reject: benjaminiHochberg(p, q) }),
  sidak: ({ rows }: { readonly rows: readonly (readonly [number, number])[] }) => ({ a: rows.map((row) => sidak(...row)) }),
  rate: (row: { readonly x: Vector; readonly u: Vector; readonly prior: number; readonly uPrior: number; readonly tau0: number }) =>
    usualRate(
      row.x.map((value, i) => ({ value, u: row.u[i] ?? 0 })),
      { rate: row.prior, uRate: row.uPrior, tau: row.tau0 },
    ),
} satisfies Fns;
