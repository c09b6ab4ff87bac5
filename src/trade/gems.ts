// Specific gravities and refractive indices of usual gems. Ranges are envelopes of what the sources print, so the nominal value is only for estimates.
import type { SourceId } from './sources.ts';

interface Gem {
  /** Middle of the usual material, inside the range; from memory where sources give only a range. */
  readonly nominal: number;
  readonly range: readonly [low: number, high: number];
  readonly refractiveIndex: string;
  readonly refractiveIndexRead: boolean;
  readonly sources: readonly SourceId[];
  /** One end of the range, or all of it, is from memory. */
  readonly partMemory?: true;
}

export const GEMS = {
  diamond: { nominal: 3.52, range: [3.51, 3.53], refractiveIndex: '2.417', refractiveIndexRead: true, sources: ['IGS1', 'IGS2', 'MIR'] },
  ruby: { nominal: 4.0, range: [3.97, 4.05], refractiveIndex: '1.762-1.770', refractiveIndexRead: false, sources: ['IGS1', 'UNI'] },
  sapphire: {
    nominal: 4.0,
    range: [3.95, 4.03],
    refractiveIndex: '1.762-1.770',
    refractiveIndexRead: false,
    sources: ['IGS1', 'GIAM'],
    partMemory: true,
  },
  emerald: { nominal: 2.72, range: [2.67, 2.78], refractiveIndex: '1.577-1.583', refractiveIndexRead: true, sources: ['MIR', 'UNI'] },
  aquamarine: { nominal: 2.7, range: [2.68, 2.74], refractiveIndex: '1.577-1.583', refractiveIndexRead: true, sources: ['MIR', 'UNI'] },
  alexandrite: { nominal: 3.73, range: [3.7, 3.78], refractiveIndex: '1.741-1.760', refractiveIndexRead: true, sources: ['MIR'] },
  spinel: {
    nominal: 3.6,
    range: [3.57, 3.7],
    refractiveIndex: '1.712-1.730',
    refractiveIndexRead: false,
    sources: ['UNI', 'GIAM'],
    partMemory: true,
  },
  amethyst: { nominal: 2.65, range: [2.63, 2.68], refractiveIndex: '1.544-1.553', refractiveIndexRead: true, sources: ['MIR', 'IGS1'] },
  citrine: { nominal: 2.65, range: [2.63, 2.68], refractiveIndex: '1.544-1.553', refractiveIndexRead: true, sources: ['MIR', 'IGS1'] },
  topaz: {
    nominal: 3.53,
    range: [3.49, 3.57],
    refractiveIndex: '1.609-1.643',
    refractiveIndexRead: false,
    sources: ['IGS1', 'GIAM'],
    partMemory: true,
  },
  tourmaline: {
    nominal: 3.06,
    range: [2.84, 3.32],
    refractiveIndex: '1.614-1.666',
    refractiveIndexRead: false,
    sources: ['IGS1', 'GIAM'],
    partMemory: true,
  },
  tanzanite: {
    nominal: 3.35,
    range: [3.1, 3.45],
    refractiveIndex: '1.691-1.700',
    refractiveIndexRead: false,
    sources: ['TJ', 'GIAM'],
    partMemory: true,
  },
  peridot: { nominal: 3.34, range: [3.27, 3.48], refractiveIndex: '1.650-1.703', refractiveIndexRead: false, sources: ['IGS1', 'UNI'] },
  opal: { nominal: 2.15, range: [1.97, 2.25], refractiveIndex: '1.37-1.47', refractiveIndexRead: true, sources: ['IGS1', 'GFM', 'MIR'] },
  pearl: {
    nominal: 2.72,
    range: [2.6, 2.85],
    refractiveIndex: '1.500-1.685',
    refractiveIndexRead: false,
    sources: ['TJ', 'GIAM'],
    partMemory: true,
  },
  turquoise: {
    nominal: 2.7,
    range: [2.4, 2.9],
    refractiveIndex: '1.610-1.650',
    refractiveIndexRead: false,
    sources: ['TJ', 'GIAM'],
    partMemory: true,
  },
  zircon: { nominal: 4.6, range: [3.9, 4.8], refractiveIndex: '1.810-2.024', refractiveIndexRead: false, sources: ['IGS2', 'TJ'] },
  cubicZirconia: { nominal: 5.8, range: [5.5, 6.0], refractiveIndex: '2.15', refractiveIndexRead: false, sources: ['IGS2'] },
  moissanite: {
    nominal: 3.21,
    range: [3.17, 3.24],
    refractiveIndex: '2.648-2.691',
    refractiveIndexRead: false,
    sources: ['IGS2', 'GIAM'],
    partMemory: true,
  },
  almandineGarnet: { nominal: 4.05, range: [3.95, 4.3], refractiveIndex: '1.76-1.83', refractiveIndexRead: false, sources: ['TJ', 'UNI'] },
  pyropeGarnet: { nominal: 3.75, range: [3.62, 3.87], refractiveIndex: '1.720-1.756', refractiveIndexRead: false, sources: ['TJ', 'UNI'] },
  rhodolite: {
    nominal: 3.84,
    range: [3.74, 3.94],
    refractiveIndex: '1.745-1.770',
    refractiveIndexRead: false,
    sources: ['TJ', 'GIAM'],
    partMemory: true,
  },
  spessartine: {
    nominal: 4.15,
    range: [4.12, 4.2],
    refractiveIndex: '1.790-1.820',
    refractiveIndexRead: false,
    sources: ['UNI', 'GIAM'],
    partMemory: true,
  },
  tsavorite: {
    nominal: 3.61,
    range: [3.57, 3.73],
    refractiveIndex: '1.73-1.76',
    refractiveIndexRead: false,
    sources: ['GIAM'],
    partMemory: true,
  },
  coral: { nominal: 2.65, range: [2.6, 2.7], refractiveIndex: '1.486-1.658', refractiveIndexRead: false, sources: ['TJ'] },
  lapisLazuli: { nominal: 2.8, range: [2.5, 3.0], refractiveIndex: '1.50', refractiveIndexRead: false, sources: ['TJ', 'UNI'] },
  jadeite: { nominal: 3.34, range: [3.24, 3.43], refractiveIndex: '1.66-1.68', refractiveIndexRead: false, sources: ['TJ', 'UNI'] },
  nephrite: { nominal: 2.95, range: [2.9, 3.1], refractiveIndex: '1.60-1.64', refractiveIndexRead: false, sources: ['TJ', 'UNI'] },
  moonstone: {
    nominal: 2.57,
    range: [2.55, 2.63],
    refractiveIndex: '1.518-1.526',
    refractiveIndexRead: false,
    sources: ['UNI', 'GIAM'],
    partMemory: true,
  },
} as const satisfies Readonly<Record<string, Gem>>;
export type GemName = keyof typeof GEMS;
