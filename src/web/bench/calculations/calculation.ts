// One calculation: its fields, and what they give: rows, an estimate where it is a mass, the formula and where it was read. It writes nothing.
import type { Problem } from '../../../book/codec.ts';
import type { Data, Fields } from '../../../book/entry.ts';
import type { MassEstimate } from '../../../trade/estimate.ts';
import type { SourceId } from '../../../trade/sources.ts';
import { formatMass, formatMassWithUnit, type MassNg } from '../../../units/mass.ts';

export interface Result {
  readonly rows: readonly (readonly [words: string, value: string])[];
  /** A stable id of the formula and its version. */
  readonly formula: string;
  readonly sources: readonly SourceId[];
  /** A mass that an entry may take as an estimate. */
  readonly estimate?: MassEstimate;
  readonly unit?: 'g' | 'ct';
  readonly note?: string;
}
export type Outcome = Result | Problem;
export interface Calculation<F extends Fields = Fields> {
  readonly title: string;
  readonly asks: string;
  readonly fields: F;
  readonly labels: { readonly [N in keyof F]: string };
  readonly hints?: { readonly [N in keyof F]?: string };
  /** What the form begins with. */
  readonly start?: { readonly [N in keyof F]?: string };
  run(data: Data<F>): Outcome;
}
export const calculation = <const F extends Fields>(of: Calculation<F>): Calculation<F> => of;

const DECIMALS = { g: 3, ct: 3 } as const;

/** "0.420" as an entry's weight field takes it. */
export const estimateText = ({ massNg }: MassEstimate, unit: 'g' | 'ct'): string => formatMass(massNg, unit, DECIMALS[unit]);

/** "0.420 g ± 0.013 g". */
export const estimateWords = ({ massNg, plusMinusNg }: MassEstimate, unit: 'g' | 'ct' = 'g'): string =>
  `${formatMassWithUnit(massNg, unit, DECIMALS[unit])} ± ${formatMassWithUnit(plusMinusNg, unit, DECIMALS[unit])}`;

export const grams = (ng: MassNg): string => formatMassWithUnit(ng, 'g', 3);
export const millimetres = (mm: number): string => `${mm.toFixed(2)}\u00a0mm`;
