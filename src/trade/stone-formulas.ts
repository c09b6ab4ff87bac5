// Coefficients that turn a stone's measurements in mm into carats, by a stable id that every estimate is stored with.
// Printed slips not copied: 1.00575 and 1.00595 for marquise (ESS), 1.05 for medium+ girdles from 7 mm (GGG, read as 1.005), 0.065 ct for 1.1 mm.
import type { FormulaId } from './estimate.ts';
import type { SourceId } from './sources.ts';

export interface StoneFormula {
  readonly words: string;
  /** Carats for a cubic millimetre of `base` × depth; by length over width where the cut is made in many outlines. */
  readonly coefficient: number | readonly (readonly [ratio: number, coefficient: number])[];
  readonly base: 'length × width' | 'mean diameter squared';
  /** A diamond formula has the density in it and takes a girdle factor; a coloured one is times specific gravity. */
  readonly kind: 'diamond' | 'coloured';
  readonly sources: readonly SourceId[];
}

export const STONE_FORMULAS = {
  'diamond-round-1': {
    words: 'round brilliant',
    coefficient: 0.0061,
    base: 'mean diameter squared',
    kind: 'diamond',
    sources: ['GGR', 'GCAL'],
  },
  'diamond-oval-1': { words: 'oval', coefficient: 0.0062, base: 'mean diameter squared', kind: 'diamond', sources: ['ESS', '3DB'] },
  'diamond-princess-1': { words: 'princess', coefficient: 0.0082, base: 'length × width', kind: 'diamond', sources: ['GCAL'] },
  'diamond-asscher-1': { words: 'asscher or square step', coefficient: 0.008, base: 'length × width', kind: 'diamond', sources: ['GCAL'] },
  'diamond-cushion-1': { words: 'cushion', coefficient: 0.00815, base: 'length × width', kind: 'diamond', sources: ['GCAL'] },
  'diamond-heart-1': { words: 'heart', coefficient: 0.0059, base: 'length × width', kind: 'diamond', sources: ['GCAL'] },
  'diamond-trillion-1': { words: 'trillion', coefficient: 0.0057, base: 'length × width', kind: 'diamond', sources: ['GCAL', 'ESS'] },
  'diamond-baguette-1': { words: 'baguette', coefficient: 0.00915, base: 'length × width', kind: 'diamond', sources: ['3DB'] },
  'diamond-emerald-1': {
    words: 'emerald cut',
    coefficient: [
      [1, 0.008],
      [1.5, 0.0092],
      [2, 0.01],
      [2.5, 0.0106],
    ],
    base: 'length × width',
    kind: 'diamond',
    sources: ['ESS', 'GCAL'],
  },
  'diamond-marquise-1': {
    words: 'marquise',
    coefficient: [
      [1.5, 0.00565],
      [1.75, 0.0057],
      [2, 0.0058],
      [2.25, 0.00583],
      [2.5, 0.00585],
      [2.75, 0.0059],
      [3, 0.00595],
    ],
    base: 'length × width',
    kind: 'diamond',
    sources: ['GGM', 'GCAL'],
  },
  'diamond-pear-1': {
    words: 'pear',
    coefficient: [
      [1.25, 0.00615],
      [1.5, 0.006],
      [1.66, 0.0059],
      [2, 0.00575],
    ],
    base: 'length × width',
    kind: 'diamond',
    sources: ['GCAL', 'ESS'],
  },
  'coloured-round-1': { words: 'round', coefficient: 0.0018, base: 'mean diameter squared', kind: 'coloured', sources: ['TJ', 'RJW'] },
  'coloured-oval-mean-1': {
    words: 'oval, by mean diameter',
    coefficient: 0.002,
    base: 'mean diameter squared',
    kind: 'coloured',
    sources: ['TJ'],
  },
  'coloured-oval-1': { words: 'oval, by length and width', coefficient: 0.002, base: 'length × width', kind: 'coloured', sources: ['RJW'] },
  'coloured-rectangle-1': { words: 'rectangle', coefficient: 0.0026, base: 'length × width', kind: 'coloured', sources: ['TJ', 'RJW'] },
  'coloured-emerald-1': { words: 'emerald cut', coefficient: 0.0025, base: 'length × width', kind: 'coloured', sources: ['TJ', 'RJW'] },
  'coloured-square-step-1': { words: 'square step', coefficient: 0.0023, base: 'length × width', kind: 'coloured', sources: ['RJW'] },
  'coloured-square-step-2': { words: 'square step', coefficient: 0.0025, base: 'length × width', kind: 'coloured', sources: ['TJ'] },
  'coloured-marquise-1': { words: 'marquise', coefficient: 0.0016, base: 'length × width', kind: 'coloured', sources: ['RJW'] },
  'coloured-marquise-2': { words: 'marquise', coefficient: 0.0017, base: 'length × width', kind: 'coloured', sources: ['TJ'] },
  'coloured-pear-1': { words: 'pear', coefficient: 0.0018, base: 'length × width', kind: 'coloured', sources: ['TJ', 'RJW'] },
  'coloured-heart-1': { words: 'heart', coefficient: 0.0018, base: 'length × width', kind: 'coloured', sources: ['TJ'] },
  'coloured-heart-2': { words: 'heart', coefficient: 0.0021, base: 'length × width', kind: 'coloured', sources: ['ESS'] },
  'coloured-square-cushion-1': { words: 'square cushion', coefficient: 0.0018, base: 'length × width', kind: 'coloured', sources: ['TJ'] },
  'coloured-cushion-1': { words: 'rectangular cushion', coefficient: 0.0022, base: 'length × width', kind: 'coloured', sources: ['TJ'] },
  /** Half an ellipsoid is π/6 ÷ 200 = 0.002618; 0.0026 to 0.0027 is printed. */
  'cabochon-1': { words: 'cabochon', coefficient: 0.0027, base: 'length × width', kind: 'coloured', sources: ['RJW'] },
  /** π/6 of a cube in mm³, 5 ct to the gram. */
  'sphere-1': {
    words: 'sphere or pearl',
    coefficient: (Math.PI / 6) * 0.005,
    base: 'mean diameter squared',
    kind: 'coloured',
    sources: ['PRL', 'DER'],
  },
} as const satisfies Readonly<Record<FormulaId, StoneFormula>>;
export type StoneFormulaId = keyof typeof STONE_FORMULAS;

/** Factors for the girdle by diameter in mm, or by the width of a fancy cut: to 4.1, to 6.9, from 7 (GGG). */
export const GIRDLE_FACTORS = {
  'extremely thin': [0.97, 0.96, 0.95],
  thin: [0.985, 0.98, 0.975],
  medium: [1, 1, 1],
  'medium+': [1.015, 1.01, 1.005],
  'slightly thick': [1.03, 1.02, 1.01],
  thick: [1.04, 1.03, 1.02],
  'thick+': [1.045, 1.035, 1.025],
  'very thick-': [1.07, 1.05, 1.035],
} as const;
export type Girdle = keyof typeof GIRDLE_FACTORS;
