// Marks of fineness that no rule can read: signs, words, letters of plating, and the numbers that mean one metal in one country. Eras are years, open at either end.
// An empty list of sources means from memory. A mark tells what somebody struck, not what an assay found.
import type { SourceId } from './sources.ts';

export type MarkMetal =
  | 'gold'
  | 'silver'
  | 'platinum'
  | 'palladium'
  | 'plated gold'
  | 'plated gold on silver'
  | 'plated silver'
  | 'base metal';
interface Dated {
  readonly country?: string;
  readonly era?: string;
  readonly sources: readonly SourceId[];
}
export interface NamedMark extends Dated {
  readonly mark: string;
  readonly metal: MarkMetal | null;
  readonly permille: number | null;
  readonly words: string;
}

const NO_FINENESS = 'fineness not said: assay';

/** Signs and words that are a whole mark by themselves. */
export const NAMED_MARKS: readonly NamedMark[] = [
  { mark: '.5', country: 'GB', metal: 'gold', permille: 500, words: '12ct gold · 500', sources: ['GSH', 'PGR'] },
  {
    mark: 'EAGLE HEAD',
    country: 'FR',
    era: '1838-',
    metal: 'gold',
    permille: 750,
    words: '18ct gold · 750 or better',
    sources: ['FRH2', 'AJI'],
  },
  {
    mark: 'OWL',
    country: 'FR',
    metal: 'gold',
    permille: 750,
    words: 'gold, French mark for imported or unknown origin; take 750 only after a test',
    sources: ['AJI'],
  },
  {
    mark: 'LION PASSANT',
    country: 'GB',
    era: '1544-',
    metal: 'silver',
    permille: 925,
    words: 'sterling silver · 925',
    sources: ['HWB', 'LHG'],
  },
  {
    mark: 'LION RAMPANT',
    country: 'GB',
    era: '1975-',
    metal: 'silver',
    permille: 925,
    words: 'sterling silver · 925',
    sources: ['SCC', 'HWB'],
  },
  { mark: 'THISTLE', country: 'GB', era: '1759-1974', metal: 'silver', permille: 925, words: 'sterling silver · 925', sources: ['HWB'] },
  {
    mark: 'BRITANNIA',
    country: 'GB',
    era: '1697-',
    metal: 'silver',
    permille: 958,
    words: 'Britannia silver · 958',
    sources: ['LHG', 'HMP', 'JZA'],
  },
  { mark: 'CROWNED HARP', country: 'IE', metal: 'silver', permille: 925, words: 'sterling silver · 925', sources: ['SCC'] },
  {
    mark: 'BOAR HEAD',
    country: 'FR',
    era: '1838-1962',
    metal: 'silver',
    permille: 800,
    words: 'silver · 800 or better',
    sources: ['FRH2', 'CHM'],
  },
  { mark: 'CRAB', country: 'FR', era: '1838-', metal: 'silver', permille: 800, words: 'silver · 800 or better', sources: ['FRH2', 'CHM'] },
  { mark: 'WEEVIL', country: 'FR', metal: 'silver', permille: 800, words: 'silver, French import mark; least 800', sources: ['CHM'] },
  {
    mark: 'DOG HEAD',
    country: 'FR',
    era: '1912-1994',
    metal: 'platinum',
    permille: 950,
    words: 'platinum · 950',
    sources: ['OSP', 'FRH2'],
  },
  { mark: 'DOG HEAD', country: 'FR', era: '1994-', metal: 'platinum', permille: 850, words: 'platinum · 850', sources: ['OSP'] },
  { mark: 'STERLING', metal: 'silver', permille: 925, words: 'sterling silver', sources: ['SCC', 'SPR'] },
  { mark: 'STER', metal: 'silver', permille: 925, words: 'sterling silver', sources: [] },
  { mark: 'STG', metal: 'silver', permille: 925, words: 'sterling silver', sources: [] },
  { mark: 'COIN', country: 'US', metal: 'silver', permille: 900, words: 'coin silver · 900', sources: ['SPR', 'MD606'] },
  { mark: 'SILVER', metal: null, permille: null, words: 'says silver, says no fineness: test', sources: [] },
  { mark: 'SILVER', country: 'GB', metal: 'silver', permille: null, words: 'silver of no stated fineness: test', sources: [] },
  { mark: 'PLAT', metal: 'platinum', permille: null, words: `platinum, ${NO_FINENESS}`, sources: ['TDS'] },
  {
    mark: 'PLAT',
    country: 'GB',
    era: '-1975',
    metal: 'platinum',
    permille: null,
    words: 'platinum, fineness not fixed: assay',
    sources: ['TDS'],
  },
  { mark: 'PLAT', country: 'US', metal: 'platinum', permille: 950, words: 'platinum, 950 or better', sources: ['REF', 'FTCPT'] },
  { mark: 'PM', country: 'JP', metal: 'platinum', permille: null, words: 'platinum of no stated fineness: test', sources: ['KKM'] },
  { mark: 'PD', metal: 'palladium', permille: null, words: `palladium, ${NO_FINENESS}`, sources: [] },
  { mark: 'A1', metal: 'plated silver', permille: null, words: 'plate grade: no solid silver', sources: [] },
  { mark: 'NICKEL SILVER', metal: 'base metal', permille: null, words: 'copper, zinc and nickel: no silver', sources: ['BNB', 'JZA'] },
  { mark: 'GERMAN SILVER', metal: 'base metal', permille: null, words: 'copper, zinc and nickel: no silver', sources: ['BNB', 'JZA'] },
  { mark: 'ALPACA', metal: 'base metal', permille: null, words: 'copper, zinc and nickel: no silver', sources: ['BNB', 'JZA'] },
  { mark: 'TIBETAN SILVER', metal: 'base metal', permille: null, words: 'no silver as a rule: test', sources: [] },
  { mark: 'PINCHBECK', metal: 'base metal', permille: null, words: 'brass made to look like gold: no gold', sources: ['VCS'] },
];

/** Letters and words of plating, the first that is found counts; they win over every karat or number beside them. */
export const PLATING_MARKS: readonly {
  readonly pattern: RegExp;
  readonly metal: MarkMetal;
  readonly words: string;
  readonly sources: readonly SourceId[];
}[] = [
  { pattern: /\bVERMEIL\b/, metal: 'plated gold on silver', words: 'gilt silver: treat as silver with a gold coat', sources: ['VCS'] },
  { pattern: /\bSHEFFIELD PLATED?\b/, metal: 'plated silver', words: 'silver fused on copper: no solid silver', sources: [] },
  { pattern: /\b(TRIPLE|QUADRUPLE) PLATED?\b/, metal: 'plated silver', words: 'heavier plate: no solid silver', sources: ['SPR'] },
  { pattern: /\bEPNS\b/, metal: 'plated silver', words: 'electroplate on nickel silver: no solid silver', sources: ['SCC', 'BNB'] },
  { pattern: /\bEPBM\b/, metal: 'plated silver', words: 'electroplate on Britannia metal: no solid silver', sources: ['SCC'] },
  { pattern: /\bEP\b|\bSILVER PLATED?\b/, metal: 'plated silver', words: 'electroplate: no solid silver', sources: ['SCC'] },
  { pattern: /\bWARRANTED \d+ Y(EA)?RS?\b/, metal: 'plated gold', words: 'gold filled watch case: not solid', sources: ['BRN'] },
  {
    pattern: /\bBACK (AND|&) FRONT\b|\bFRONT (AND|&) BACK\b|\bB ?& ?F\b/,
    metal: 'plated gold',
    words: 'gold front and back over another metal: not solid',
    sources: ['VCS'],
  },
  { pattern: /\bRGP\b|\bROLLED GOLD PLATED?\b/, metal: 'plated gold', words: 'rolled gold plate: not solid', sources: ['GFX', 'MIM'] },
  { pattern: /\bRG\b|\bROLLED\b/, metal: 'plated gold', words: 'rolled gold: not solid', sources: ['EBG', 'MIM', 'VCS'] },
  {
    pattern: /\bGFX?\b|\bFILLED\b|\b1\/(10|20|40)\b/,
    metal: 'plated gold',
    words: 'gold filled: not solid',
    sources: ['GFX', 'MIM', 'BRN'],
  },
  { pattern: /\bOVERLAY\b/, metal: 'plated gold', words: 'gold overlay: not solid', sources: ['MIM', 'EBG'] },
  { pattern: /\bHGE\b|\bHEG\b/, metal: 'plated gold', words: 'hard gold electroplate: not solid', sources: ['EBG', 'BRN'] },
  { pattern: /\bHGP\b/, metal: 'plated gold', words: 'hard gold plate: not solid', sources: ['EBG'] },
  { pattern: /\bGEP?\b|\bGP\b|\bPLATED?\b/, metal: 'plated gold', words: 'gold plated: not solid', sources: ['EBG', 'MIM', 'MKY'] },
  { pattern: /\bGILT\b/, metal: 'plated gold', words: 'gilt: not solid', sources: ['VCS'] },
];

/** Signs that, beside a number, say the metal. */
export const METAL_SIGNS: readonly (Dated & { readonly pattern: RegExp; readonly metal: MarkMetal })[] = [
  { pattern: /\bORB\b/, metal: 'platinum', country: 'GB', era: '1975-', sources: ['LHG', 'HMC'] },
  { pattern: /\bPALLAS ATHENE\b/, metal: 'palladium', country: 'GB', era: '2010-', sources: [] },
  { pattern: /\bJUPITER HEAD\b/, metal: 'gold', country: 'IT', era: '1872-1935', sources: ['INT'] },
  { pattern: /\bMINERVA\b/, metal: 'silver', country: 'FR', era: '1838-1973', sources: ['FRH2', 'CHM'] },
  { pattern: /\bCRESCENT CROWN\b/, metal: 'silver', country: 'DE', era: '1888-', sources: ['BST'] },
  { pattern: /\bCROWN\b/, metal: 'gold', country: 'GB', sources: ['GSH'] },
  { pattern: /\bSILVER\b|\bSTERLING\b|\bSTG\b|\bLION\b/, metal: 'silver', sources: [] },
  { pattern: /\bGOLD\b/, metal: 'gold', sources: [] },
  { pattern: /^[89]\d\d [SH]\b/, metal: 'silver', sources: ['BST', 'GJW'] },
];

/** Numbers that mean one metal in one country. */
export const COUNTRY_NUMBERS: readonly (Dated & { readonly number: number; readonly metal: MarkMetal | null })[] = [
  { number: 916, metal: 'gold', country: 'GB', sources: ['HMC', 'GSH'] },
  { number: 990, metal: 'gold', country: 'GB', era: '1999-', sources: ['HMC'] },
  { number: 999, metal: 'gold', country: 'GB', era: '1999-', sources: ['HMC'] },
  { number: 999, metal: 'silver', country: 'GB', sources: ['ITB'] },
  { number: 958, metal: 'silver', country: 'GB', sources: ['ITB'] },
  { number: 800, metal: 'silver', country: 'GB', sources: ['ITB'] },
  { number: 800, metal: 'gold', country: 'PT', sources: ['ORB'] },
  { number: 800, metal: 'silver', country: 'IT', sources: ['SPR'] },
  { number: 900, metal: 'silver', country: 'US', sources: ['SPR'] },
  { number: 950, metal: 'silver', country: 'MX', sources: ['SPR'] },
  { number: 934, metal: 'silver', country: 'NL', sources: [] },
  { number: 875, metal: 'gold', country: 'EG', sources: [] },
  { number: 916, metal: 'gold', country: 'IN', sources: ['HMC'] },
  { number: 965, metal: 'gold', country: 'TH', sources: [] },
  { number: 875, metal: 'silver', country: 'SU', era: '1927-', sources: ['NKR'] },
];

/** Numbers that mean one metal wherever they are met (833 may also be 20 ct gold), and those that do not say it. */
export const BARE_NUMBERS = {
  gold: [333, 375, 416, 417, 583, 585, 625, 750, 986],
  silver: [813, 830, 833, 835, 925, 935, 980],
  unsaid: [500, 800, 850, 875, 900, 916, 950, 958, 999],
} as const;

/** Permille that a carat stands for where the law or custom gives it a number of its own (PGR, GSH, HMP; JNN, KKM). */
export const CARAT_STANDARDS: Readonly<Record<'GB' | 'JP', Readonly<Record<number, number>>>> = {
  GB: { 9: 375, 12: 500, 14: 585, 15: 625, 18: 750, 20: 833, 22: 916 },
  JP: { 9: 375, 10: 416, 14: 585, 18: 750, 20: 833, 22: 916, 24: 999 },
};

/** Carats to say beside a number of permille. */
export const CARATS_OF: Readonly<Record<number, string>> = {
  333: '8ct',
  375: '9ct',
  416: '10ct',
  417: '10ct',
  500: '12ct',
  583: '14ct',
  583.3: '14ct',
  585: '14ct',
  625: '15ct',
  750: '18ct',
  800: '19.2ct',
  833: '20ct',
  875: '21ct',
  916: '22ct',
  999: '24ct',
};

/** Old counts of parts: Russia before 1927 in 96ths, German lands before 1888 in 16ths, dinheiros in 12ths (DRG, ASC, NKR; SVC, BST). */
export const ZOLOTNIK: Readonly<Record<'gold' | 'silver', readonly number[]>> = { gold: [56, 72, 92, 94], silver: [84, 88, 91] };
export const DINHEIROS: Readonly<Record<number, number>> = { 10: 833, 11: 916 };
