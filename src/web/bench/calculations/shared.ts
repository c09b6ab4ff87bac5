// Fields that several calculations ask for, and how they are read: the metal, the section, a thickness in mm or by gauge, a ring size.
import type { Problem } from '../../../book/codec.ts';
import { optional, stated } from '../../../book/entry.ts';
import { choice, decimal, text } from '../../../book/values.ts';
import { ALLOYS, type AlloyName } from '../../../trade/alloys.ts';
import type { Section } from '../../../trade/stock-shapes.ts';
import { awgMm, readGauge, swgMm } from '../../../units/gauge.ts';
import { circumferenceOf, RING_SYSTEMS, type RingSystem } from '../../../units/ring-size.ts';

export const mm = decimal('mm');
export const SECTIONS = { round: 'round', rect: 'flat or strip', halfRound: 'half-round' } as const satisfies Record<Section, string>;
const ALLOY_WORDS = Object.fromEntries(
  Object.entries(ALLOYS).map(([name, { density }]) => [name, `${name} · ${density.toFixed(2)} g/cm³`]),
);
const SYSTEM_WORDS = Object.fromEntries(Object.entries(RING_SYSTEMS).map(([system, { words }]) => [system, words]));

export const metal = stated(choice(ALLOY_WORDS as Record<AlloyName, string>));
export const system = stated(choice(SYSTEM_WORDS as Record<RingSystem, string>));
export const size = stated(text(12));
export const stockFields = {
  metal,
  section: stated(choice(SECTIONS)),
  width: optional(stated(mm)),
  thickness: optional(stated(mm)),
  gauge: optional(stated(text(20))),
} as const;
export const stockLabels = {
  metal: 'Metal',
  section: 'Section',
  width: 'Width, unless round wire',
  thickness: 'Thickness, or diameter of round wire',
  gauge: 'Or its gauge',
} as const;
export const GAUGE_HINT = 'With its system: 18 AWG, 18 SWG.';
export const SIZE_HINT = 'As the stick says it: 7 1/4, L½, Z+1, 54.';

/** Whether a reading of what was typed came to nothing. */
export const isProblem = (read: unknown): read is Problem => typeof read === 'object' && read !== null && 'say' in read;

/** Thickness in mm from millimetres or from a gauge with its system, and only one of them. */
export function thicknessOf({ thickness, gauge }: { readonly thickness?: string; readonly gauge?: string }): number | Problem {
  if ((thickness === undefined) === (gauge === undefined))
    return { field: 'thickness', say: 'Give the thickness in mm or the gauge, one of them.' };
  return gauge === undefined ? Number(thickness) : gaugeOf(gauge);
}

/** Millimetres of "18 AWG"; a bare number is refused with what it would be by either system. */
export function gaugeOf(gauge: string): number | Problem {
  const read = readGauge(gauge);
  if ('mm' in read) return read.mm;
  const n = /^\d{1,2}/.exec(gauge.trim())?.[0];
  if (read.problem !== 'which gauge' || n === undefined) return { field: 'gauge', say: 'Write the gauge as 18 AWG, 18 SWG or 2/0 SWG.' };
  const both = `${awgMm(Number(n)).toFixed(3)} mm by AWG and ${swgMm(Number(n)).toFixed(3)} mm by SWG`;
  return { field: 'gauge', say: `Say which: ${n} is ${both}. Write ${n} AWG or ${n} SWG.` };
}

/** The stock that was described; round wire is as wide as it is thick. */
export function stockOf(said: {
  readonly section: Section;
  readonly width?: string;
  readonly thickness?: string;
  readonly gauge?: string;
}): { readonly section: Section; readonly widthMm: number; readonly thicknessMm: number } | Problem {
  const thicknessMm = thicknessOf(said);
  if (isProblem(thicknessMm)) return thicknessMm;
  if (said.section === 'round') return { section: 'round', widthMm: thicknessMm, thicknessMm };
  if (said.width === undefined) return { field: 'width', say: 'Give the width; only round wire has none.' };
  return { section: said.section, widthMm: Number(said.width), thicknessMm };
}

/** Inside circumference in mm of a label. */
export function insideOf(of: RingSystem, label: string, field: string): number | Problem {
  return circumferenceOf(of, label) ?? { field, say: `${RING_SYSTEMS[of].words} has no size ${label}. Type it as the stick says it.` };
}
