// Densities, melting points and karat arithmetic of the usual metals, and solder among them.
import { massNg } from '../units/mass.js';
import { mulDiv } from '../units/muldiv.js';
import { ALLOY_BAND_PERCENT, estimateOf } from './estimate.js';
/** g/cm³ (GNU units 2.22; copper TMT). Ruthenium is printed from 12.1 to 12.45. */
export const ELEMENT_DENSITY = {
  Au: 19.3,
  Ag: 10.49,
  Cu: 8.96,
  Pt: 21.45,
  Pd: 12.023,
  Ni: 8.908,
  Zn: 7.14,
  Rh: 12.41,
  Ir: 22.56,
  Ru: 12.45,
  Co: 8.9,
};
/** g/cm³, °C and °F as printed; platinum by the reciprocal rule. The composition inside one karat moves the density by 2 to 3 %. */
export const ALLOYS = {
  '10K yellow': { density: 11.57, sources: ['STG', 'TMT'] },
  '10K white': { density: 11.07, sources: ['STG', 'TMT'] },
  '10K red': { density: 11.59, sources: ['STG'] },
  '14K yellow': { density: 13.07, meltsC: 879, meltsF: 1615, sources: ['STG', 'TMT'] },
  '14K white': { density: 12.61, meltsC: 996, meltsF: 1825, sources: ['STG', 'TMT'] },
  '14K red': { density: 13.26, meltsC: 935, meltsF: 1715, sources: ['STG', 'TMT'] },
  '14K green': { density: 14.2, meltsC: 963, meltsF: 1765, sources: ['STG', 'TMT'] },
  '18K yellow': { density: 15.58, meltsC: 927, meltsF: 1700, sources: ['STG', 'TMT'] },
  '18K white': { density: 14.64, meltsC: 943, meltsF: 1730, sources: ['STG', 'TMT'] },
  '18K red': { density: 15.18, meltsC: 902, meltsF: 1655, sources: ['STG', 'TMT'] },
  '18K green': { density: 15.9, meltsC: 988, meltsF: 1810, sources: ['STG', 'TMT'] },
  '22K': { density: 17.75, sources: ['24C'] },
  'fine gold': { density: 19.32, meltsC: 1063, meltsF: 1945, sources: ['TMT'] },
  sterling: { density: 10.36, sources: ['AUE'] },
  Pt950Ru: { density: mixtureDensity({ Pt: 950, Ru: 50 }), sources: ['TMT', 'GNU'] },
  /** STG prints 20.80 for platinum and cobalt; the reciprocal rule gives 20.04, and is taken. */
  Pt950Co: { density: mixtureDensity({ Pt: 950, Co: 50 }), sources: ['TMT', 'GNU'] },
  Pt950Ir: { density: mixtureDensity({ Pt: 950, Ir: 50 }), sources: ['TMT', 'GNU'] },
};
/** Densities a gold of this standard may have, g/cm³. The 18ct white line is from memory; nickel white of 14ct lies below its line (12.61). */
const DENSITY_RANGES = {
  '9ct': { range: [10.9, 12.7], sources: ['24C', 'FIN'] },
  '14ct': { range: [12.9, 14.6], sources: ['24C', 'FIN'] },
  '18ct yellow': { range: [15.2, 15.9], sources: ['24C', 'FIN'] },
  '18ct white': { range: [14.7, 16.9], sources: ['24C'] },
  '22ct': { range: [17.7, 17.8], sources: ['24C', 'FIN'] },
};
/** °C at which silver solders flow, by parts per hundred (ORS). */
export const SILVER_SOLDER_MELTS_C = {
  '80Ag 16Cu 4Zn': 771,
  '75Ag 22Cu 3Zn': 740,
  '70Ag 20Cu 10Zn': 691,
  '65Ag 20Cu 15Zn': 670,
};
/** g/cm³ of an alloy by the reciprocal rule 1/ρ = Σ w/ρ (TMT); parts per thousand must make 1000. The arithmetic mean is wrong: 18.45 for 22K, not 17.6. */
export function mixtureDensity(parts) {
  const entries = Object.entries(parts);
  const total = entries.reduce((sum, [, part]) => sum + part, 0);
  if (Math.abs(total - 1000) > 0.5) throw new RangeError(`parts per thousand must make 1000, got ${total}`);
  return total / entries.reduce((sum, [element, part]) => sum + part / ELEMENT_DENSITY[element], 0);
}
/** The published range for "14ct yellow" or the standard alone, or null. */
export function densityRange(alloy) {
  return (DENSITY_RANGES[alloy] ?? DENSITY_RANGES[alloy.split(' ')[0] ?? ''])?.range ?? null;
}
/** Whether a claimed density lies outside the published range; 15.2 for 14ct yellow is a printed mistake. Unknown alloys are not refused. */
export function isDensityImplausible(alloy, claimed) {
  const range = densityRange(alloy);
  return range !== null && (claimed < range[0] || claimed > range[1]);
}
/** Mass of the same volume in another metal, m·ρ₂/ρ₁ (STG). */
export function massInOtherMetal(ng, fromDensity, toDensity) {
  return estimateOf((ng / 1e9) * (toDensity / fromDensity), ALLOY_BAND_PERCENT, 'metal-swap-1');
}
/** Troy ounces in a cubic inch (16.387064 cm³) at a density in g/cm³. */
export const troyOuncesPerCubicInch = (density) => (density * 16.387064) / 31.1034768;
/** Alloy to add to lower gold from one karat to another, m(K − W)/W (ORK), to the nearest nanogram. */
export function alloyToLowerNg(ng, fromKarat, toKarat) {
  if (toKarat > fromKarat) throw new RangeError(`${fromKarat}K is lowered by alloy, not raised to ${toKarat}K`);
  return massNg(mulDiv(ng, fromKarat - toKarat, toKarat, 'half even'));
}
/** Fine gold to add to raise gold from one karat to another, m(W − S)/(24 − W) (ORK), to the nearest nanogram. */
export function fineToRaiseNg(ng, fromKarat, toKarat) {
  if (toKarat < fromKarat) throw new RangeError(`${fromKarat}K is raised by fine gold, not lowered to ${toKarat}K`);
  return massNg(mulDiv(ng, toKarat - fromKarat, 24 - toKarat, 'half even'));
}
/** g/cm³ by weighing in air and in water of `waterDensity` g/cm³; throws when it does not sink. It does not prove a karat (FIN): a 5 g ring on 0.01 g is ±3 %. */
export function hydrostaticDensity(airNg, waterNg, waterDensity) {
  if (waterNg >= airNg) throw new RangeError(`weighs ${airNg} ng in air and must weigh less in water, got ${waterNg}`);
  return (airNg * waterDensity) / (airNg - waterNg);
}
/** Whether a solder may be used: it must flow below the temperature at which the work begins to melt, both in °C (MJS). */
export const isSolderUsable = (solderLiquidusC, alloySolidusC) => solderLiquidusC < alloySolidusC;
/** Parts per thousand of a whole made of parts of known mass and fineness, as a melted joint is. */
export function blendPermille(parts) {
  const total = parts.reduce((sum, part) => sum + part.massNg, 0);
  return parts.reduce((sum, part) => sum + part.massNg * part.permille, 0) / total;
}
