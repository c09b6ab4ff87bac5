// Sizing a ring: blank length, the piece let in or cut out, and the metal it moves. A stretched or compressed ring moves none.
import { type MassNg, massNg } from '../units/mass.ts';
import { diameterMm, usStepMm } from '../units/ring-size.ts';
import { ALLOYS } from './alloys.ts';
import type { MassEstimate } from './estimate.ts';
import type { SourceId } from './sources.ts';
import { type Stock, stockMass } from './stock-shapes.ts';

/** Length in mm to bend a ring of this inside diameter from stock of this thickness: π(ID + t), and what the shop allows for a wide band (0.5 to 2 mm above 4 mm, by bench). */
export function blankLengthMm(insideDiameterMm: number, thicknessMm: number, allowanceMm = 0): number {
  return Math.PI * (insideDiameterMm + thicknessMm) + allowanceMm;
}

/** What a sizing asks: mm of stock let in, mm of shank cut out whole, and mm of shank that become filings. */
export interface SizingLengths {
  readonly insertMm: number;
  readonly cutOutMm: number;
  readonly lemelMm: number;
}
/** Width of one saw cut, and what is filed off the joints in all, in mm. */
export interface Joints {
  readonly kerfMm: number;
  readonly filedMm: number;
}
const CLEAN_JOINTS: Joints = { kerfMm: 0, filedMm: 0 };

/** Lengths for going from one inside circumference to another in mm, whatever the thickness. Up: one saw cut, and the insert makes good kerf and filing; down: two cuts, whose kerf and filing are part of what goes. */
export function sizingLengths(fromMm: number, toMm: number, { kerfMm, filedMm }: Joints = CLEAN_JOINTS): SizingLengths {
  const growMm = toMm - fromMm;
  if (growMm >= 0)
    return { insertMm: growMm === 0 ? 0 : growMm + kerfMm + filedMm, cutOutMm: 0, lemelMm: growMm === 0 ? 0 : kerfMm + filedMm };
  const lemelMm = Math.min(-growMm, 2 * kerfMm + filedMm);
  return { insertMm: 0, cutOutMm: -growMm - lemelMm, lemelMm };
}

/** Metal of `sizes` US sizes of this shank; by stretching or compressing it is nothing. */
export function sizingMass(shank: Stock, density: number, sizes: number, how: 'cut' | 'stretch' = 'cut'): MassEstimate {
  const mass = stockMass(shank, how === 'stretch' ? 0 : usStepMm(Math.abs(sizes)).circumference, density);
  return { ...mass, formula: `sizing-${mass.formula}` };
}

/** Rules of thumb in print, to set beside our own figure and not in its place. */
const RULES_OF_THUMB: Readonly<Record<string, { readonly words: string; readonly density: number; readonly source: SourceId }>> = {
  platinum: { words: 'almost 1 g per two sizes', density: ALLOYS.Pt950Ru.density, source: 'KIR' },
};

/** Metal of `sizes` US sizes of a flat band, beside the printed rule of thumb for that metal; null where none was read. */
export function sizingBesideRule(
  metal: string,
  band: Omit<Stock, 'section'>,
  sizes: number,
): { mass: MassEstimate; printed: string } | null {
  const rule = RULES_OF_THUMB[metal];
  return rule ? { mass: sizingMass({ ...band, section: 'rect' }, rule.density, sizes), printed: rule.words } : null;
}

/** Thickness in mm of a usual shank, where nobody measured it (common practice, no source). */
const SHANK_MM = 1.5;

/** Metal that a change of inside circumference moves in a ring of this weight, were it as heavy all round, in ng: a shank is lighter than its head, so this is near the most. */
export function sizingOfRingNg(ringNg: number, fromMm: number, toMm: number): MassNg {
  return massNg(Math.round((ringNg * Math.abs(toMm - fromMm)) / blankLengthMm(diameterMm(fromMm), SHANK_MM)));
}
