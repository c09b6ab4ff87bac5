// Figures of check rows as the types of the program, and back.
import type { MassEstimate } from '../../src/trade/estimate.ts';
import type { MassNg } from '../../src/units/mass.ts';
import { inUnit, massOf } from '../../src/units/mass-units.ts';
import { circumferenceOf, diameterMm } from '../../src/units/ring-size.ts';

export const g = (value: number | string): MassNg => massOf(String(value), 'gram');
export const ct = (value: number): MassNg => massOf(String(value), 'carat');
export const mm = (system: 'us' | 'uk' | 'iso' | 'jp' | 'ch', size: number | string): number => {
  const found = circumferenceOf(system, String(size));
  if (found === null) throw new RangeError(`no ${system} size ${size}`);
  return found;
};
export const usDiameter = (us: number): number => diameterMm(mm('us', us));
export const inGrams = ({ massNg }: MassEstimate): number => inUnit(massNg, 'gram');
export const inCarats = ({ massNg }: MassEstimate): number => inUnit(massNg, 'carat');
export const inMilligrams = ({ massNg }: MassEstimate): number => inUnit(massNg, 'milligram');
