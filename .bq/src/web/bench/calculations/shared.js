import { optional, stated } from '../../../book/entry.js';
import { choice, decimal, text } from '../../../book/values.js';
import { ALLOYS } from '../../../trade/alloys.js';
import { awgMm, readGauge, swgMm } from '../../../units/gauge.js';
import { circumferenceOf, RING_SYSTEMS } from '../../../units/ring-size.js';
export const mm = decimal('mm');
export const SECTIONS = { round: 'round', rect: 'flat or strip', halfRound: 'half-round' };
const ALLOY_WORDS = Object.fromEntries(
  Object.entries(ALLOYS).map(([name, { density }]) => [name, `${name} · ${density.toFixed(2)} g/cm³`]),
);
const SYSTEM_WORDS = Object.fromEntries(Object.entries(RING_SYSTEMS).map(([system, { words }]) => [system, words]));
export const metal = stated(choice(ALLOY_WORDS));
export const system = stated(choice(SYSTEM_WORDS));
export const size = stated(text(12));
export const stockFields = {
  metal,
  section: stated(choice(SECTIONS)),
  width: optional(stated(mm)),
  thickness: optional(stated(mm)),
  gauge: optional(stated(text(20))),
};
export const stockLabels = {
  metal: 'Metal',
  section: 'Section',
  width: 'Width, unless round wire',
  thickness: 'Thickness, or diameter of round wire',
  gauge: 'Or its gauge',
};
export const GAUGE_HINT = 'With its system: 18 AWG, 18 SWG.';
export const SIZE_HINT = 'As the stick says it: 7 1/4, L½, Z+1, 54.';
/** Whether a reading of what was typed came to nothing. */
export const isProblem = (read) => typeof read === 'object' && read !== null && 'say' in read;
/** Thickness in mm from millimetres or from a gauge with its system, and only one of them. */
export function thicknessOf({ thickness, gauge }) {
  if ((thickness === undefined) === (gauge === undefined))
    return { field: 'thickness', say: 'Give the thickness in mm or the gauge, one of them.' };
  return gauge === undefined ? Number(thickness) : gaugeOf(gauge);
}
/** Millimetres of "18 AWG"; a bare number is refused with what it would be by either system. */
export function gaugeOf(gauge) {
  const read = readGauge(gauge);
  if ('mm' in read) return read.mm;
  const n = /^\d{1,2}/.exec(gauge.trim())?.[0];
  if (read.problem !== 'which gauge' || n === undefined) return { field: 'gauge', say: 'Write the gauge as 18 AWG, 18 SWG or 2/0 SWG.' };
  const both = `${awgMm(Number(n)).toFixed(3)} mm by AWG and ${swgMm(Number(n)).toFixed(3)} mm by SWG`;
  return { field: 'gauge', say: `Say which: ${n} is ${both}. Write ${n} AWG or ${n} SWG.` };
}
/** The stock that was described; round wire is as wide as it is thick. */
export function stockOf(said) {
  const thicknessMm = thicknessOf(said);
  if (isProblem(thicknessMm)) return thicknessMm;
  if (said.section === 'round') return { section: 'round', widthMm: thicknessMm, thicknessMm };
  if (said.width === undefined) return { field: 'width', say: 'Give the width; only round wire has none.' };
  return { section: said.section, widthMm: Number(said.width), thicknessMm };
}
/** Inside circumference in mm of a label. */
export function insideOf(of, label, field) {
  return circumferenceOf(of, label) ?? { field, say: `${RING_SYSTEMS[of].words} has no size ${label}. Type it as the stick says it.` };
}
