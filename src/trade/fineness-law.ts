// What the law lets a marked piece fall short by, and what must be marked, by country and era. Dated data; not legal advice, ask locally.
import type { MassNg } from '../units/mass.ts';
import { massNg } from '../units/mass.ts';
import type { SourceId } from './sources.ts';

export type HallmarkMetal = 'gold' | 'silver' | 'platinum' | 'palladium';
export type Article = 'ordinary' | 'watchcase' | 'flatware';
/** 'part' is metal without solder, 'whole' the whole piece with its solder. */
export type Scope = 'part' | 'whole';

interface MinusTolerance {
  readonly era: string;
  readonly metal: HallmarkMetal;
  /** Permille the metal may fall short of its mark. */
  readonly part: number;
  readonly whole: number;
  readonly articles: readonly Article[];
  readonly sources: readonly SourceId[];
}
const KARAT = 1000 / 24;
/** US Stamping Act, 15 USC 295 and 296: before the Act of 1976 took effect (October 1981, date from memory) half a karat and one karat. Watchcases and flatware before then are from memory. */
export const US_TOLERANCES: readonly MinusTolerance[] = [
  { era: 'post1981', metal: 'gold', part: 3, whole: 7, articles: ['ordinary'], sources: ['USC295'] },
  { era: 'post1981', metal: 'gold', part: 3, whole: 3, articles: ['watchcase', 'flatware'], sources: ['USC295'] },
  { era: 'pre1981', metal: 'gold', part: KARAT / 2, whole: KARAT, articles: ['ordinary'], sources: ['USC295'] },
  { era: 'pre1981', metal: 'gold', part: 3, whole: KARAT, articles: ['watchcase', 'flatware'], sources: [] },
  { era: 'any', metal: 'silver', part: 4, whole: 10, articles: ['ordinary', 'watchcase', 'flatware'], sources: ['USC296', 'MD606'] },
];

/** Lowest lawful permille of US gold marked `markedPermille`. ISO 9202 and UK hallmarks know no minus tolerance: there the mark is the minimum. */
export function usGoldMinimum(markedPermille: number, scope: Scope, era: 'pre1981' | 'post1981', article: Article = 'ordinary'): number {
  const found = US_TOLERANCES.find((law) => law.metal === 'gold' && law.era === era && law.articles.includes(article));
  if (!found) throw new Error(`no US tolerance for gold, ${era}, ${article}`);
  return markedPermille - found[scope];
}

/** US silver words and the permille they claim. */
export const US_SILVER_WORDS = { sterling: 925, coin: 900 } as const;
/** Lowest lawful permille of US silver so marked. */
export function usSilverMinimum(mark: keyof typeof US_SILVER_WORDS, scope: Scope): number {
  const found = US_TOLERANCES.find((law) => law.metal === 'silver');
  if (!found) throw new Error('no US tolerance for silver');
  return US_SILVER_WORDS[mark] - found[scope];
}

/** What US platinum may be called, from the highest tier down (16 CFR 23.7 as read in FTCPT; the disclosures of 2012 for 500 to 850 with base metal are from memory and not here). */
const PLATINUM_TIERS: readonly { readonly platinum: number; readonly group: number; readonly words: string }[] = [
  { platinum: 950, group: 0, words: 'Platinum (unqualified allowed)' },
  { platinum: 850, group: 0, words: '900 Plat. / 900 Pt.' },
  { platinum: 500, group: 950, words: '600Plat.350Irid. style (each PGM stated)' },
];
/** The tier for permille of platinum, and of the platinum group in all where it is known. */
export function ftcPlatinumTier(platinumPermille: number, groupPermille: number | null): string {
  const group = groupPermille ?? platinumPermille;
  const tier = PLATINUM_TIERS.find((needs) => platinumPermille >= needs.platinum && group >= needs.group);
  return tier?.words ?? 'may not be called platinum';
}

/** The highest of these marks that metal of this permille may bear where there is no minus tolerance (TUK), or null below them all. */
export function markWithoutTolerance(permille: number, legalMarks: readonly number[]): number | null {
  const reached = legalMarks.filter((mark) => mark <= permille);
  return reached.length > 0 ? Math.max(...reached) : null;
}

/** UK standards in permille (HMC), and the metal weight from which a hallmark is needed; stones are not metal (HGL). Sources differ at exactly the limit. */
export const UK_HALLMARKS: Readonly<Record<HallmarkMetal, { readonly standards: readonly number[]; readonly fromNg: MassNg }>> = {
  gold: { standards: [375, 585, 750, 916, 990, 999], fromNg: massNg(1_000_000_000) },
  silver: { standards: [800, 925, 958, 999], fromNg: massNg(7_780_000_000) },
  platinum: { standards: [850, 900, 950, 999], fromNg: massNg(500_000_000) },
  palladium: { standards: [500, 950, 999], fromNg: massNg(1_000_000_000) },
};

/** Whether a piece offered for sale in the UK needs a hallmark, by its weight less its stones. */
export function ukHallmarkRequired(metal: HallmarkMetal, pieceNg: MassNg, stonesNg: MassNg): boolean {
  return pieceNg - stonesNg >= UK_HALLMARKS[metal].fromNg;
}

/** Least permille of solder in a UK hallmarked piece (UKSOL); more of it than the joint needs is not permitted. */
const UK_SOLDER: readonly {
  readonly metal: HallmarkMetal;
  readonly standard: number;
  readonly colour?: string;
  readonly solder: number;
}[] = [
  { metal: 'gold', standard: 916, solder: 750 },
  { metal: 'gold', standard: 750, solder: 750 },
  { metal: 'gold', standard: 750, colour: 'white', solder: 500 },
  { metal: 'gold', standard: 585, colour: 'yellow/red', solder: 585 },
  { metal: 'gold', standard: 375, solder: 375 },
  { metal: 'silver', standard: 925, solder: 650 },
];
/** Least permille of solder for a standard, by colour where the colour matters; null where none was read: ask an assay office. */
export function ukMinimumSolder(metal: HallmarkMetal, standard: number, colour?: string): number | null {
  const rules = UK_SOLDER.filter((rule) => rule.metal === metal && rule.standard === standard);
  return (rules.find((rule) => rule.colour === colour) ?? rules.find((rule) => rule.colour === undefined))?.solder ?? null;
}

/** Parts left out of a US karat assay (FTCAPP; those after the first four from memory): they lower the melt of a lot without any false marking. */
export const FTC_EXEMPT_PARTS = [
  'earring post and nut for interchangeable ornaments',
  'spring',
  'necklace snap tongue',
  'locket bezel and field piece',
  'bracelet snap tongue',
  'joint',
  'catch',
  'screw',
  'pin stem',
  'lapel button post and back',
] as const;
export const isExemptFromKaratAssay = (part: string): boolean => (FTC_EXEMPT_PARTS as readonly string[]).includes(part);
