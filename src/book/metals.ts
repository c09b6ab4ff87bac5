// The metals a piece, lot or stock may be said to be of: stored codes that never change, and their family and fineness.

export type MetalFamily = 'gold' | 'silver' | 'platinum' | 'palladium' | 'other';
export const FAMILY_WORDS: Readonly<Record<MetalFamily, string>> = {
  gold: 'gold',
  silver: 'silver',
  platinum: 'platinum',
  palladium: 'palladium',
  other: 'another metal',
};
export interface Metal {
  readonly family: MetalFamily;
  /** Parts per thousand of the family's metal; null where it is not known or not precious. */
  readonly permille: number | null;
  readonly words: string;
}

const gold = (karat: number, permille: number): Metal => ({ family: 'gold', permille, words: `${karat}ct gold · ${permille}` });
const METAL = {
  'gold-375': gold(9, 375),
  'gold-417': gold(10, 417),
  'gold-585': gold(14, 585),
  'gold-750': gold(18, 750),
  'gold-916': gold(22, 916),
  'gold-999': { family: 'gold', permille: 999, words: 'fine gold · 999' },
  'gold-unknown': { family: 'gold', permille: null, words: 'gold, no mark' },
  'silver-800': { family: 'silver', permille: 800, words: 'silver · 800' },
  'silver-925': { family: 'silver', permille: 925, words: 'silver · 925' },
  'silver-958': { family: 'silver', permille: 958, words: 'silver · 958' },
  'silver-999': { family: 'silver', permille: 999, words: 'fine silver · 999' },
  'platinum-950': { family: 'platinum', permille: 950, words: 'platinum · 950' },
  'platinum-900': { family: 'platinum', permille: 900, words: 'platinum · 900' },
  'palladium-500': { family: 'palladium', permille: 500, words: 'palladium · 500' },
  'palladium-950': { family: 'palladium', permille: 950, words: 'palladium · 950' },
  mixed: { family: 'other', permille: null, words: 'mixed metals' },
  other: { family: 'other', permille: null, words: 'other or not known' },
} as const satisfies Readonly<Record<string, Metal>>;
export type MetalCode = keyof typeof METAL;

/** The words for each code, in the order a form shows them. */
export const METAL_WORDS = Object.fromEntries(Object.entries(METAL).map(([code, { words }]) => [code, words])) as Record<MetalCode, string>;

/** The metal of a stored code; an unknown code is a bug, since codes never change. */
export function metalOf(code: string): Metal {
  const metal = (METAL as Readonly<Record<string, Metal>>)[code];
  if (!metal) throw new Error(`unknown metal code ${code}`);
  return metal;
}
