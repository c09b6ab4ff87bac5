// Loss ceilings in print. They moved fivefold within a year, so they are dated examples for a shop's own setting and never a constant of physics.
import { massNg } from '../units/mass.js';
import { mulDiv } from '../units/muldiv.js';
/** Ceilings of the Indian export policy, the only numbers found in print. */
export const LOSS_NORMS = [
  { effective: '1997-2001', item: 'plain', goldOrPlatinum: 3.5, silver: 4.5, source: 'DG01' },
  { effective: '1997-2001', item: 'studded', goldOrPlatinum: 9, silver: 10, source: 'DG01' },
  { effective: '1997-2001', item: 'chains/bangles fully mechanised, unstudded', goldOrPlatinum: 1.25, silver: 1.25, source: 'DG01' },
  { effective: 'before 2024-05-27', item: 'plain', goldOrPlatinum: 2.5, silver: 3.2, source: 'IJ' },
  { effective: '2024-05-27', item: 'plain', goldOrPlatinum: 0.5, silver: 0.75, source: 'DG24T' },
  { effective: '2025-01-01 (PN 30)', item: 'plain handcrafted', goldOrPlatinum: 2.25, silver: 3, source: 'DG24B' },
  { effective: '2025-01-01 (PN 30)', item: 'plain mechanised', goldOrPlatinum: 0.45, silver: 0.5, source: 'DG24B' },
  { effective: '2025-01-01 (PN 30)', item: 'studded handcrafted', goldOrPlatinum: 4, silver: 4, source: 'DG24B' },
  { effective: '2025-02', item: 'plain mechanised', goldOrPlatinum: 0.9, silver: 0.9, source: 'DG25' },
];
/** The norm of an item in a period, or null where none was read. */
export function lossNorm(effective, item) {
  return LOSS_NORMS.find((norm) => norm.effective === effective && norm.item === item) ?? null;
}
/** Whether a loss lies within a norm in percent (two decimals) of the metal worked. */
export function isLossWithin(workedNg, lossNg, normPercent) {
  return lossNg <= massNg(mulDiv(workedNg, Math.round(normPercent * 100), 10_000, 'down'));
}
