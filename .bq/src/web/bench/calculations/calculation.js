import { formatMass, formatMassWithUnit } from '../../../units/mass.js';
export const calculation = (of) => of;
const DECIMALS = { g: 3, ct: 3 };
/** "0.420" as an entry's weight field takes it. */
export const estimateText = ({ massNg }, unit) => formatMass(massNg, unit, DECIMALS[unit]);
/** "0.420 g ± 0.013 g". */
export const estimateWords = ({ massNg, plusMinusNg }, unit = 'g') =>
  `${formatMassWithUnit(massNg, unit, DECIMALS[unit])} ± ${formatMassWithUnit(plusMinusNg, unit, DECIMALS[unit])}`;
export const grams = (ng) => formatMassWithUnit(ng, 'g', 3);
export const millimetres = (mm) => `${mm.toFixed(2)}\u00a0mm`;
