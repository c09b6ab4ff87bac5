// Glue from check rows to the functions of src/weighing. Figures come as decimal strings in the row's unit; balances count in ng.
import { type MassNg, type MassUnit, massNg, NG_PER_UNIT } from '../../src/units/mass.ts';
import { enScore, guardBand, sameItem } from '../../src/weighing/agreement.ts';
import {
  type AccuracyClass,
  coarsestStep,
  leastDivisionsUs,
  leastLoadNg,
  maintenanceToleranceNg,
  permissibleError,
  stepProblem,
} from '../../src/weighing/balance.ts';
import { dailyCheck, uspAccuracy, uspLeastWeight } from '../../src/weighing/check.ts';
import { type Component, combined, readingVariance, uFromCalibration, uOfDifference } from '../../src/weighing/uncertainty.ts';
import type { Fns } from './compare.ts';

type RowUnit = MassUnit | 'mg';
interface Balance {
  readonly class: AccuracyClass;
  readonly e: string;
  readonly d: string;
  readonly unit: MassUnit;
}
const ngPer = (unit: RowUnit): number => (unit === 'mg' ? 1_000_000 : NG_PER_UNIT[unit]);
const ngOf = (text: string, unit: RowUnit): MassNg => massNg(Math.round(Number(text) * ngPer(unit)));
const inUnit = (ng: number, unit: RowUnit): number => ng / ngPer(unit);
/** A second figure of a row, printed to fewer digits than the row's tolerance speaks of. */
const printed = (value: number, digits: number): string => value.toPrecision(digits);
const component = ([, shape, value, k]: readonly string[]): Component => {
  if (shape === 'rect_halfwidth') return { shape: 'rectangular', half: Number(value) };
  if (shape === 'expanded_k') return { shape: 'expanded', U: Number(value), k: Number(k) };
  return { shape: 'normal', u: Number(value) };
};

function permissible({ class: accuracyClass, e, unit, load }: Balance & { readonly load: string }) {
  const [eNg, loadNg] = [ngOf(e, unit), ngOf(load, unit)];
  const allowed = permissibleError(accuracyClass, eNg, loadNg);
  const count = { n_e: loadNg / eNg, in_range: allowed !== null };
  if (allowed === null) return count;
  const { initialNg, inServiceNg } = allowed;
  return { ...count, mpe_initial_e: initialNg / eNg, mpe_initial: inUnit(initialNg, unit), mpe_in_service: inUnit(inServiceNg, unit) };
}

function comparison({ before, after, U_in, U_out, T }: { before: string; after: string; U_in: string; U_out: string; T: string }) {
  const { difference, U, en, zeta, verdict } = sameItem(Number(before), Number(after), Number(U_in), Number(U_out), Number(T));
  return { diff: difference, U_diff: U, en, zeta, verdict };
}

function difference(row: Readonly<Record<string, string>> & { readonly zero_rounding: boolean }) {
  const terms = (end: 'in' | 'out') => ({
    s: Number(row[`s_${end}`]),
    step: Number(row[`d_${end}`]),
    zeroStep: row.zero_rounding ? Number(row[`d_${end}`]) : 0,
    linearity: Number(row[`mpe_${end}`]),
  });
  const u = uOfDifference(terms('in'), terms('out'), Number(row.drift_halfwidth));
  return { u_diff: u, U_diff_k2: 2 * u };
}

/** The constants the program rests on, by the way a source writes them. */
const CONSTANTS: Readonly<Record<string, () => number>> = {
  'sqrt(2)/sqrt(12)': () => Math.sqrt(readingVariance({ s: 0, step: 1, zeroStep: 1 })),
};

export const WEIGHING_FNS = {
  mpe: permissible,
  min_capacity: ({ class: accuracyClass, e, d, unit }: Balance) => ({
    min: inUnit(leastLoadNg(accuracyClass, ngOf(e, unit), ngOf(d, unit)), unit),
    unit,
  }),
  hb44_min_load: ({ class: accuracyClass, d, unit }: Balance) => {
    const divisions = leastDivisionsUs(accuracyClass, ngOf(d, unit));
    return { min_divisions: divisions, min: inUnit(divisions * ngOf(d, unit), unit) };
  },
  hb44_maint_tol: ({ class: accuracyClass, d, unit, load }: Balance & { readonly load: string }) => ({
    maintenance_tolerance: inUnit(maintenanceToleranceNg(accuracyClass, ngOf(d, unit), ngOf(load, unit)), unit),
  }),
  suitability_50d: ({ min_load }: { readonly min_load: string }) => ({ max_d: coarsestStep(Number(min_load)) }),
  e_d_valid: ({ class: accuracyClass, e, d, unit }: Balance) => ({
    valid: stepProblem(accuracyClass, unit, ngOf(e, unit), ngOf(d, unit)) === null,
  }),
  rss: (
    row:
      | { readonly components_g: readonly (readonly string[])[] }
      | { readonly rep: number; readonly drift_half: number; readonly read_half: number },
  ) => {
    if ('components_g' in row) {
      const u = combined(row.components_g.map(component));
      return { u, U_k2: printed(2 * u, 3) };
    }
    const { rep, drift_half, read_half } = row;
    return {
      u: combined([
        { shape: 'normal', u: rep },
        { shape: 'rectangular', half: drift_half },
        { shape: 'rectangular', half: read_half },
      ]),
    };
  },
  reading_cg18: ({
    reading_g,
    d_mg,
    s_mg,
    ecc_load_g,
    ecc_mg,
  }: Readonly<Record<'reading_g' | 'd_mg' | 's_mg' | 'ecc_load_g' | 'ecc_mg', string>>) => {
    const step = Number(d_mg) / 1000;
    const relative = Number(ecc_mg) / 1000 / (2 * Number(ecc_load_g));
    const u2 = readingVariance({ s: Number(s_mg) / 1000, step, zeroStep: step, eccentricity: { relative, load: Number(reading_g) } });
    return { u2_g2: u2, u_mg: printed(Math.sqrt(u2) * 1000, 5) };
  },
  cal_interp: ({
    reading_g,
    points_g: [a, b],
    U_mg_k2: [ua, ub],
  }: {
    readonly reading_g: string;
    readonly points_g: string[];
    readonly U_mg_k2: string[];
  }) => ({
    u_g: uFromCalibration(Number(reading_g), { load: Number(a), U: Number(ua) / 1000 }, { load: Number(b), U: Number(ub) / 1000 }),
  }),
  rss2: ({ u1_g, u2_g }: { readonly u1_g: string; readonly u2_g: string }) => ({
    u_g: combined([
      { shape: 'normal', u: Number(u1_g) },
      { shape: 'normal', u: Number(u2_g) },
    ]),
  }),
  u_diff: difference,
  const: ({ expr }: { readonly expr: string }) => ({ value: CONSTANTS[expr]?.() }),
  usp_min_weight: ({ s, d, unit }: { readonly s: string; readonly d: string; readonly unit: RowUnit }) => {
    const { sNg, leastNg } = uspLeastWeight(ngOf(s, unit), ngOf(d, unit));
    return { s_eff: inUnit(sNg, unit), min_weight: inUnit(leastNg, unit) };
  },
  usp_accuracy: ({ check_weight_g, capacity_g, reading_g }: Readonly<Record<'check_weight_g' | 'capacity_g' | 'reading_g', string>>) => {
    const { percent, pass } = uspAccuracy(ngOf(check_weight_g, 'g'), ngOf(capacity_g, 'g'), ngOf(reading_g, 'g'));
    return { pass, deviation_pct: percent };
  },
  in_service_check: (row: {
    readonly class: AccuracyClass;
    readonly e: string;
    readonly check_weight_g: string;
    readonly reading_g: string;
  }) => {
    const check = dailyCheck(row.class, ngOf(row.e, 'g'), ngOf(row.check_weight_g, 'g'), ngOf(row.reading_g, 'g'));
    return (
      check && { deviation: inUnit(check.deviationNg, 'g'), mpe_in_service: inUnit(check.allowedNg, 'g'), pass: check.result !== 'fail' }
    );
  },
  en_raw: ({ x, x_ref, U_x, U_ref }: Readonly<Record<'x' | 'x_ref' | 'U_x' | 'U_ref', string>>) => ({
    en: enScore(Number(x), Number(x_ref), Number(U_x), Number(U_ref)),
  }),
  same_item: (row: Readonly<Record<'in' | 'out' | 'U_in' | 'U_out' | 'fitness_limit_T', string>>) =>
    comparison({ before: row.in, after: row.out, U_in: row.U_in, U_out: row.U_out, T: row.fitness_limit_T }),
  guard_band_nonbinary: ({ abs_diff, TL, w }: Readonly<Record<'abs_diff' | 'TL' | 'w', string>>) => ({
    state: guardBand(ngOf(abs_diff, 'g'), ngOf(TL, 'g'), ngOf(w, 'g')),
  }),
} satisfies Fns;
