// How a weight is shown, the same on every page and paper: a mass to the step it was read in, a limit up to the next step, so that what is promised is kept.
import { decimalsOfStep, formatMassWithUnit, massNg } from './mass.js';

/** The step where none is known: a hundredth of a gram. */
const UNKNOWN_STEP_NG = massNg(10_000_000);
/** A mass in ng to the nearest step, with its unit: "8.42 g". */
export const toStep = (ng, stepNg, unit = 'g') => {
  const step = stepNg || UNKNOWN_STEP_NG;
  return formatMassWithUnit(massNg(Math.round(ng / step) * step), unit, decimalsOfStep(massNg(step), unit));
};
/** A limit in ng (±, what would have shown, what is usual) up to the next step; noise of the last digits does not lift it. */
export const upToStep = (ng, stepNg, unit = 'g') => {
  const step = stepNg || UNKNOWN_STEP_NG;
  return toStep(Math.ceil(Number((ng / step).toPrecision(9))) * step, step, unit);
};
