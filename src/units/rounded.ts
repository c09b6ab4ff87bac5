// How a weight is shown, the same on every page and paper: a mass to the step it was read in, a limit up to the next step, so that what is promised is kept.
import { decimalsOfStep, formatMassWithUnit, type MassUnit, massNg } from './mass.ts';

/** The step where none is known: a hundredth of a gram. */
const UNKNOWN_STEP_NG = massNg(10_000_000);

/** A mass in ng to the nearest step, with its unit: "8.42 g". */
export const toStep = (ng: number, stepNg: number, unit: MassUnit = 'g'): string => {
  const step = stepNg || UNKNOWN_STEP_NG;
  return formatMassWithUnit(massNg(Math.round(ng / step) * step), unit, decimalsOfStep(massNg(step), unit));
};

/** A limit in ng (±, what would have shown, what is usual) up to the next step; noise of the last digits does not lift it. */
export const upToStep = (ng: number, stepNg: number, unit: MassUnit = 'g'): string => {
  const step = stepNg || UNKNOWN_STEP_NG;
  return toStep(Math.ceil(Number((ng / step).toPrecision(9))) * step, step, unit);
};

/** A difference as it is shown: its size to the step and the side it lies on, decided once it is rounded, with the step itself. */
export interface Gap {
  readonly size: string;
  readonly side: 'more' | 'less' | 'none';
  readonly step: string;
}
/** The gap of a difference in ng, where more is positive. */
export function gapOf(ng: number, stepNg: number, unit: MassUnit = 'g'): Gap {
  const step = stepNg || UNKNOWN_STEP_NG;
  const isNone = Math.round(Math.abs(ng) / step) === 0;
  return { size: toStep(Math.abs(ng), step, unit), side: isNone ? 'none' : ng > 0 ? 'more' : 'less', step: toStep(step, step, unit) };
}

/** "0.17 g more", or "no difference to 0.01 g", in the words given for each side; `none` follows where there is no difference. */
export const gapWords = ({ size, side, step }: Gap, words: Readonly<Record<'more' | 'less', string>>, none = ''): string =>
  side === 'none' ? `no difference to ${step}${none}` : `${size} ${words[side]}`;
