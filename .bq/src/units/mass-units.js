// Every unit of mass that papers and people of this trade name, in whole nanograms; a word that means two things is refused with the choices.
import { massNg, NG_PER_UNIT } from './mass.js';
import { decimalText, divideRounded } from './muldiv.js';
/** `ng` in one unit; `spelled` are the words read as this unit and nothing else. Sources: NIST HB 44 App. C and SP 811, GNU units 2.22, unless said. */
export const NAMED_UNITS = {
  milligram: { ng: 1_000_000, words: 'milligram', spelled: 'mg milligram milligrams' },
  gram: { ng: NG_PER_UNIT.g, words: 'gram', spelled: 'g gm gms gram grams gramme grammes' },
  kilogram: { ng: 1_000_000_000_000, words: 'kilogram', spelled: 'kg kilogram kilograms' },
  carat: { ng: NG_PER_UNIT.ct, words: 'metric carat, 0.2 g', spelled: 'ct cts carat carats' },
  point: { ng: 2_000_000, words: 'point, 0.01 ct', spelled: 'point points' },
  grain: { ng: NG_PER_UNIT.gr, words: 'grain, 64.79891 mg', spelled: 'grain grains' },
  pennyweight: { ng: NG_PER_UNIT.dwt, words: 'pennyweight, 24 grains', spelled: 'dwt dwts pwt pennyweight pennyweights' },
  troyOunce: { ng: NG_PER_UNIT.ozt, words: 'troy ounce, 31.1034768 g', spelled: 'ozt troy-ounce troy-ounces troy-oz oz-t oz-troy' },
  troyPound: { ng: 373_241_721_600, words: 'troy pound, 12 troy ounces', spelled: 'lbt troy-pound troy-pounds lb-t' },
  ounceAvoirdupois: { ng: 28_349_523_125, words: 'avoirdupois ounce, 28.349523125 g', spelled: 'oz-av ozav' },
  poundAvoirdupois: { ng: 453_592_370_000, words: 'avoirdupois pound, 453.59237 g', spelled: 'lb-av lbav' },
  momme: { ng: NG_PER_UNIT.momme, words: 'momme, 3.75 g', spelled: 'momme mommes' },
  tola: { ng: 11_663_803_800, words: 'tola of 180 grains, 11.6638038 g', spelled: '' },
  /** India since 1956, as jewellers there round it. */
  newTola: { ng: 10_000_000_000, words: 'new tola, 10 g', spelled: '' },
  pearlGrainMetric: { ng: 50_000_000, words: 'metric pearl grain, 50 mg', spelled: '' },
  pearlGrainUKhistoric: { ng: 51_839_128, words: 'old British pearl grain, 51.839128 mg (0.8 grain)', spelled: '' },
  /** About: carats of 199 to 206 mg were in use before the metric carat of 1907 (US and UK 1913 and 1914). */
  caratPre1907International: { ng: 205_000_000, words: 'carat before 1914, about 205 mg', spelled: 'old-carat old-carats' },
  /** The four taels are from memory: Cap. 68 of Hong Kong, its gold trade, Taiwan, and mainland China since 1959. */
  taelHongKong: { ng: 37_799_363_750, words: 'Hong Kong tael, 37.79936375 g', spelled: '' },
  taelHongKongGold: { ng: 37_429_000_000, words: 'tael of the Hong Kong gold trade, 37.429 g', spelled: '' },
  taelTaiwan: { ng: 37_500_000_000, words: 'Taiwan tael, 37.5 g', spelled: '' },
  taelChina: { ng: 50_000_000_000, words: 'Chinese market tael, 50 g', spelled: '' },
};
const TAELS = ['taelHongKong', 'taelHongKongGold', 'taelTaiwan', 'taelChina'];
/** Words that mean two things, with what they may mean. */
const AMBIGUOUS = {
  gr: ['grain', 'gram'],
  grs: ['grain', 'gram'],
  oz: ['troyOunce', 'ounceAvoirdupois'],
  ounce: ['troyOunce', 'ounceAvoirdupois'],
  ounces: ['troyOunce', 'ounceAvoirdupois'],
  lb: ['troyPound', 'poundAvoirdupois'],
  lbs: ['troyPound', 'poundAvoirdupois'],
  pound: ['troyPound', 'poundAvoirdupois'],
  tola: ['tola', 'newTola'],
  tolas: ['tola', 'newTola'],
  'pearl-grain': ['pearlGrainMetric', 'pearlGrainUKhistoric'],
  'pearl-grains': ['pearlGrainMetric', 'pearlGrainUKhistoric'],
  tael: TAELS,
  taels: TAELS,
  liang: TAELS,
};
/** Words that look like a unit of mass and are none; ppt is parts per thousand in US trade rules and parts per trillion elsewhere. */
const NOT_A_MASS = {
  ppt: 'Write parts per thousand or ‰; ppt also means parts per trillion.',
  k: 'K is a fineness (karat), not a weight. For stones write ct.',
  kt: 'KT is a fineness (karat), not a weight. For stones write ct.',
  karat: 'A karat is a fineness, not a weight. For stones write ct.',
  pt: 'PT may be a point of a carat or a platinum mark. Write point.',
  pts: 'PTS may be points of a carat. Write points.',
};
const SPELLED = new Map(Object.entries(NAMED_UNITS).flatMap(([unit, { spelled }]) => spelled.split(' ').map((word) => [word, unit])));
/** The unit a word names ("dwt", "troy oz", "Carats"), or a refusal with the choices. */
export function readUnit(word) {
  const key = word.trim().toLowerCase().replace(/\./g, '').replace(/\s+/g, '-');
  const unit = key === '' ? undefined : SPELLED.get(key);
  if (unit) return { unit };
  const choices = AMBIGUOUS[key];
  if (choices) return { problem: 'ambiguous', choices, say: `Say which: ${choices.map((name) => NAMED_UNITS[name].words).join('; ')}.` };
  const say = NOT_A_MASS[key];
  if (say) return { problem: 'not a mass', choices: [], say };
  return { problem: 'unknown', choices: [], say: 'Write g, ct, grain, dwt, ozt or momme.' };
}
/** `text` (a plain decimal of zero or more) of one unit in another, with `decimals` places, halves to even; exact before that one rounding. */
export function convertMass(text, from, to, decimals) {
  return decimalText(ratio(text, NAMED_UNITS[from].ng, NAMED_UNITS[to].ng, decimals), decimals);
}
/** `text` (a plain decimal of zero or more) of a named unit, to the nearest nanogram. */
export function massOf(text, unit) {
  return massNg(Number(ratio(text, NAMED_UNITS[unit].ng, 1, 0)));
}
/** Mass as a number of units, for a chart or a formula; never for anything stored or summed. */
export function inUnit(ng, unit) {
  return ng / NAMED_UNITS[unit].ng;
}
function ratio(text, fromNg, toNg, decimals) {
  const match = /^(\d+)(?:\.(\d+))?$/.exec(text);
  if (!match) throw new RangeError(`not a plain decimal: ${text}`);
  const [, whole = '', fraction = ''] = match;
  const scaled = BigInt(whole + fraction) * BigInt(fromNg) * 10n ** BigInt(decimals);
  return divideRounded(scaled, BigInt(toNg) * 10n ** BigInt(fraction.length), 'half even');
}
