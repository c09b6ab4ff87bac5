// What the law lets a marked piece fall short by, and what must be marked, by country and era. Dated data; not legal advice, ask locally.
import { massNg } from '../units/mass.js';

const KARAT = 1000 / 24;
const ALL = ['ordinary', 'watchcase', 'flatware'];
/** US: 15 USC 295 and 296; until the Act of 1976 took effect (1 October 1981, from memory) half a karat and one karat, with watchcases and flatware of that time from memory. UK (palladium from 2010, the day from memory) and ISO 9202: the mark is the minimum, and ISO leaves solder out. */
export const MINUS_TOLERANCES = [
  { law: 'US', metal: 'gold', articles: ['ordinary'], from: '1981-10-01', part: 3, whole: 7, sources: ['USC295'] },
  { law: 'US', metal: 'gold', articles: ['watchcase', 'flatware'], from: '1981-10-01', part: 3, whole: 3, sources: ['USC295'] },
  { law: 'US', metal: 'gold', articles: ['ordinary'], until: '1981-09-30', part: KARAT / 2, whole: KARAT, sources: ['USC295'] },
  { law: 'US', metal: 'gold', articles: ['watchcase', 'flatware'], until: '1981-09-30', part: 3, whole: KARAT, sources: [] },
  { law: 'US', metal: 'silver', articles: ALL, part: 4, whole: 10, sources: ['USC296', 'MD606'] },
  { law: 'UK', metal: 'gold', articles: ALL, part: 0, whole: 0, sources: ['HMC', 'UKSOL'] },
  { law: 'UK', metal: 'silver', articles: ALL, part: 0, whole: 0, sources: ['HMC', 'UKSOL'] },
  { law: 'UK', metal: 'platinum', articles: ALL, part: 0, whole: 0, sources: ['HMC', 'UKSOL'] },
  { law: 'UK', metal: 'palladium', articles: ALL, from: '2010-01-01', part: 0, whole: 0, sources: ['HMC'] },
  { law: 'ISO 9202', metal: 'gold', articles: ALL, part: 0, whole: null, sources: ['ISO9202'] },
  { law: 'ISO 9202', metal: 'silver', articles: ALL, part: 0, whole: null, sources: ['ISO9202'] },
];
/** Lowest lawful permille of a marked piece, without or with its solder; null where no rule was read. An honest old US 14K may melt at 541.7. */
export function lowestLawful({ law, metal, markedPermille, madeOn, article = 'ordinary' }, scope) {
  const rule = MINUS_TOLERANCES.find(
    ({ from = '', until = '9999', ...found }) =>
      found.law === law && found.metal === metal && found.articles.includes(article) && from <= madeOn && madeOn <= until,
  );
  const short = rule?.[scope] ?? null;
  return short === null ? null : markedPermille - short;
}
/** US silver words and the permille they claim (USC296). */
export const US_SILVER_WORDS = { sterling: 925, coin: 900 };
/** What US platinum may be called, from the highest tier down (16 CFR 23.7 as read in FTCPT; the disclosures of 2012 for 500 to 850 with base metal are from memory and not here). */
const PLATINUM_TIERS = [
  { platinum: 950, group: 0, words: 'Platinum (unqualified allowed)' },
  { platinum: 850, group: 0, words: '900 Plat. / 900 Pt.' },
  { platinum: 500, group: 950, words: '600Plat.350Irid. style (each PGM stated)' },
];
/** The tier for permille of platinum, and of the platinum group in all where it is known. */
export function ftcPlatinumTier(platinumPermille, groupPermille) {
  const group = groupPermille ?? platinumPermille;
  const tier = PLATINUM_TIERS.find((needs) => platinumPermille >= needs.platinum && group >= needs.group);
  return tier?.words ?? 'may not be called platinum';
}
/** The highest of these marks that metal of this permille may bear where there is no minus tolerance (TUK), or null below them all. */
export function markWithoutTolerance(permille, legalMarks) {
  const reached = legalMarks.filter((mark) => mark <= permille);
  return reached.length > 0 ? Math.max(...reached) : null;
}
/** UK standards in permille (HMC), and the metal weight from which a hallmark is needed; stones are not metal (HGL). Sources differ at exactly the limit. */
export const UK_HALLMARKS = {
  gold: { standards: [375, 585, 750, 916, 990, 999], fromNg: massNg(1_000_000_000) },
  silver: { standards: [800, 925, 958, 999], fromNg: massNg(7_780_000_000) },
  platinum: { standards: [850, 900, 950, 999], fromNg: massNg(500_000_000) },
  palladium: { standards: [500, 950, 999], fromNg: massNg(1_000_000_000) },
};
/** Whether a piece offered for sale in the UK needs a hallmark, by its weight less its stones. */
export function ukHallmarkRequired(metal, pieceNg, stonesNg) {
  return pieceNg - stonesNg >= UK_HALLMARKS[metal].fromNg;
}
/** Least permille of solder in a UK hallmarked piece (UKSOL); more of it than the joint needs is not permitted. */
const UK_SOLDER = [
  { metal: 'gold', standard: 916, solder: 750 },
  { metal: 'gold', standard: 750, solder: 750 },
  { metal: 'gold', standard: 750, colour: 'white', solder: 500 },
  { metal: 'gold', standard: 585, colour: 'yellow/red', solder: 585 },
  { metal: 'gold', standard: 375, solder: 375 },
  { metal: 'silver', standard: 925, solder: 650 },
];
/** Least permille of solder for a standard, by colour where the colour matters; null where none was read: ask an assay office. */
export function ukMinimumSolder(metal, standard, colour) {
  const rules = UK_SOLDER.filter((rule) => rule.metal === metal && rule.standard === standard);
  return (rules.find((rule) => rule.colour === colour) ?? rules.find((rule) => rule.colour === undefined))?.solder ?? null;
}
/** Parts left out of a US karat assay (FTCAPP; those after the first four from memory): they lower the melt of a lot without any false marking. */
const FTC_EXEMPT_PARTS = [
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
];
export const isExemptFromKaratAssay = (part) => FTC_EXEMPT_PARTS.includes(part);
