// Glue from the rows of trade-facts, marks and custody-hallmark to the functions of src/units and src/trade.
import { closure } from '../../src/reckoning/closure.ts';
import {
  ALLOYS,
  type AlloyName,
  alloyToLowerNg,
  blendPermille,
  densityRange,
  ELEMENT_DENSITY,
  type Element,
  fineToRaiseNg,
  hydrostaticDensity,
  isDensityImplausible,
  isSolderUsable,
  massInOtherMetal,
  mixtureDensity,
  SILVER_SOLDER_MELTS_C,
  troyOuncesPerCubicInch,
} from '../../src/trade/alloys.ts';
import { ukAdditionGate, ukCoatingGate } from '../../src/trade/cautions.ts';
import { clawMass } from '../../src/trade/claws.ts';
import { showsAt } from '../../src/trade/estimate.ts';
import { type Change, expectedWeight } from '../../src/trade/expected-weight.ts';
import {
  type Article,
  ftcPlatinumTier,
  type HallmarkMetal,
  isExemptFromKaratAssay,
  lowestLawful,
  markWithoutTolerance,
  UK_HALLMARKS,
  US_SILVER_WORDS,
  ukHallmarkRequired,
  ukMinimumSolder,
} from '../../src/trade/fineness-law.ts';
import { isLossWithin, lossNorm } from '../../src/trade/loss-norms.ts';
import type { Mark } from '../../src/trade/mark-text.ts';
import { readMark } from '../../src/trade/marks.ts';
import { type Coat, coatMass, coatMgPerCm2PerMicrometre, flatBandAreaMm2 } from '../../src/trade/plating.ts';
import { expectedFineNg, lowestFineOldUsNg, refineryReturn } from '../../src/trade/refining.ts';
import { SCRAP_CLASSES, type ScrapMaterial } from '../../src/trade/scrap-classes.ts';
import { blankLengthMm, sizingBesideRule, sizingLengths, sizingMass } from '../../src/trade/sizing.ts';
import { bandMass, bandMm3, roundWire, type Section, sheetMass, stockMass } from '../../src/trade/stock-shapes.ts';
import { wearMass } from '../../src/trade/wear.ts';
import { isSameFineness, karat, permilleOf, readFineness } from '../../src/units/fineness.ts';
import { awgMm, swgMm } from '../../src/units/gauge.ts';
import { convertMass, inUnit, massOf, readUnit, type UnitName } from '../../src/units/mass-units.ts';
import { diameterMm, labelOf, usByDefinitionMm, usStepMm } from '../../src/units/ring-size.ts';
import { uOfDifference } from '../../src/weighing/uncertainty.ts';
import type { Fns } from './compare.ts';
import { ct, g, inGrams, inMilligrams, mm, usDiameter } from './figures.ts';
import { STONE_FNS } from './stones.fns.ts';

interface Shank {
  readonly w: number;
  readonly t: number;
  readonly section?: Section;
  readonly density: number;
}
const stock = ({ section = 'rect', w, t }: Omit<Shank, 'density'>) => ({ section, widthMm: w, thicknessMm: t });

type LedgerEvent =
  | { readonly sizingUp: Shank & { readonly us: number } }
  | { readonly solderG: number }
  | { readonly filingPolishLossG: number }
  | { readonly stonesOutCt: number };
function change(event: LedgerEvent): Change {
  if ('sizingUp' in event) return { sign: 1, ...sizingMass(stock(event.sizingUp), event.sizingUp.density, event.sizingUp.us) };
  if ('solderG' in event) return { sign: 1, massNg: g(event.solderG) };
  return 'stonesOutCt' in event ? { sign: -1, massNg: ct(event.stonesOutCt) } : { sign: -1, massNg: g(event.filingPolishLossG) };
}

interface Parcel {
  readonly g: number;
  readonly karat: number;
}
const parcels = (of: readonly Parcel[]) => of.map((parcel) => ({ massNg: g(parcel.g), karat: parcel.karat }));
/** The settlement row leaves out the lot it settles: the parcels of row LEDG-008. */
const LEDG_008 = parcels([
  { g: 45.2, karat: 14 },
  { g: 22.75, karat: 18 },
  { g: 12.1, karat: 10 },
]);

/** A day in each of the eras that rows name. */
const ERA_DAYS = { pre1981: '1975-06-01', post1981: '1990-06-01' } as const;
const alloy = (name: string) => ALLOYS[name as AlloyName];

export const TRADE_FNS = {
  ...STONE_FNS,

  unitToGrams: ({ value, unit }: { value: number; unit: UnitName }) => convertMass(String(value), unit, 'gram', 12),
  unitToNanograms: ({ value, unit }: { value: number; unit: UnitName }) => massOf(String(value), unit),
  convert: ({ value, from, to }: { value: number; from: UnitName; to: UnitName }) => convertMass(String(value), from, to, 15),
  resolutionInOtherUnit: ({ gram }: { gram: number }) => ({ carat: convertMass(String(gram), 'gram', 'carat', 6) }),

  karatToPermille: (input: { karat: number }) => permilleOf(karat(input.karat)),
  isSameFineness: ({ a, b }: { a: string; b: string }) => {
    const [first, second] = [readFineness(a), readFineness(b)];
    return first && second && isSameFineness(first, second);
  },
  usGoldMinimumPermille: (input: { karat: number; wholeArticleInclSolder: boolean; era: keyof typeof ERA_DAYS; article?: Article }) => {
    const marked = { law: 'US', metal: 'gold', markedPermille: permilleOf(karat(input.karat)), madeOn: ERA_DAYS[input.era] } as const;
    return lowestLawful(input.article ? { ...marked, article: input.article } : marked, input.wholeArticleInclSolder ? 'whole' : 'part');
  },
  usSilverMinimumPermille: ({ mark, inclSolder }: { mark: keyof typeof US_SILVER_WORDS; inclSolder: boolean }) =>
    lowestLawful(
      { law: 'US', metal: 'silver', markedPermille: US_SILVER_WORDS[mark], madeOn: ERA_DAYS.post1981 },
      inclSolder ? 'whole' : 'part',
    ),
  ftcPlatinumMarkTier: (input: { ptPermille: number; totalPgmPermille: number | null }) =>
    ftcPlatinumTier(input.ptPermille, input.totalPgmPermille),
  markWithoutMinusTolerance: ({ gold, legalMarks }: { gold: number; legalMarks: number[] }) => markWithoutTolerance(gold, legalMarks),
  ukHallmarkRequired: (input: { metal: HallmarkMetal; metalGrams?: number; articleGrams?: number; stonesCarat?: number }) =>
    ukHallmarkRequired(input.metal, g(input.metalGrams ?? input.articleGrams ?? ''), ct(input.stonesCarat ?? 0)),
  ukMinimumSolderPermille: ({ article }: { article: string }) => {
    const [metal, standard, colour] = article.split(' ');
    return ukMinimumSolder(metal as HallmarkMetal, Number(standard), colour);
  },
  ukLegalFineness: ({ metal }: { metal: HallmarkMetal }) => UK_HALLMARKS[metal].standards,
  ftcExemptFromKaratAssay: ({ part }: { part: string }) => isExemptFromKaratAssay(part),
  finenessMark: (input: Mark) => readMark(input),

  elementDensity: ({ element }: { element: Element }) => ELEMENT_DENSITY[element],
  ruleOfMixtures: ({ permille }: { permille: Partial<Record<Element, number>> }) => mixtureDensity(permille),
  tableDensity: (input: { alloy: string }) => alloy(input.alloy).density,
  densityPlausibleRange: (input: { alloy: string }) => densityRange(input.alloy),
  massInOtherMetal: ({ mass, unit, from, to }: { mass: number; unit: string; from: number; to: number }) => {
    const read = readUnit(unit);
    if (!('unit' in read)) throw new RangeError(read.say);
    return inUnit(massInOtherMetal(massOf(String(mass), read.unit), from, to).massNg, read.unit);
  },
  troyOzPerCubicInch: ({ sg }: { sg: number }) => troyOuncesPerCubicInch(sg),
  alloyToLowerKarat: ({ grams, fromK, toK }: { grams: number; fromK: number; toK: number }) =>
    inUnit(alloyToLowerNg(g(grams), fromK, toK), 'gram'),
  fineToRaiseKarat: ({ grams, fromK, toK }: { grams: number; fromK: number; toK: number }) =>
    inUnit(fineToRaiseNg(g(grams), fromK, toK), 'gram'),
  hydrostaticSg: (input: { airG: number; waterG: number; waterDensity: number }) =>
    hydrostaticDensity(g(input.airG), g(input.waterG), input.waterDensity),
  rejectAsImplausible: (input: { alloy: string; claim: number }) => isDensityImplausible(input.alloy, input.claim),
  alloyMeltingPoint: (input: { alloy: string }) => {
    const found = alloy(input.alloy);
    return 'meltsC' in found ? { C: found.meltsC, F: found.meltsF } : null;
  },
  silverSolderMeltC: ({ composition }: { composition: string }) => SILVER_SOLDER_MELTS_C[composition],
  solderUsable: (input: { solderLiquidusC: number; alloySolidusC: number }) => isSolderUsable(input.solderLiquidusC, input.alloySolidusC),
  finenessAfterSolder: (input: { workG: number; workPermille: number; solderG: number; solderPermille: number }) =>
    blendPermille([
      { massNg: g(input.workG), permille: input.workPermille },
      { massNg: g(input.solderG), permille: input.solderPermille },
    ]),

  usSizeToMm: ({ us }: { us: number }) => ({ insideDiameter: usDiameter(us), insideCircumference: mm('us', us) }),
  usStepMm: ({ sizes }: { sizes: number }) => usStepMm(sizes),
  usDefinitionSpreadMm: ({ us }: { us: number }) => usByDefinitionMm(us),
  ukLetterToCircumferenceMm: ({ uk }: { uk: string }) => mm('uk', uk),
  jpSizeToDiameterMm: ({ jp }: { jp: number }) => diameterMm(mm('jp', jp)),
  isoCircumferenceToSwiss: ({ iso }: { iso: number }) => labelOf('ch', mm('iso', iso))?.replace('½', '.5'),
  isoSizeToDiameterMm: ({ iso }: { iso: number }) => diameterMm(mm('iso', iso)),
  ringBlankLengthMm: ({ id, t }: { id: number; t: number }) => blankLengthMm(id, t),
  bandVolumeMm3: ({ id, t, w }: { id: number; t: number; w: number }) => bandMm3(stock({ w, t }), id),
  sizingInsertLengthMm: ({ fromUs, toUs }: { fromUs: number; toUs: number }) => sizingLengths(mm('us', fromUs), mm('us', toUs)).insertMm,
  flatBandGrams: (input: Shank & { us: number }) => inGrams(bandMass(stock(input), usDiameter(input.us), input.density)),
  gramsPerUsSize: (input: Shank) => inGrams(sizingMass(stock(input), input.density, 1)),
  gramsPerUsSizePlausible: ({ metal, w, t, sizes }: Shank & { metal: string; sizes: number }) => {
    const found = sizingBesideRule(metal, { widthMm: w, thicknessMm: t }, sizes);
    return found && { g: inGrams(found.mass), publishedSays: found.printed };
  },

  awgToMm: ({ awg }: { awg: number }) => awgMm(awg),
  swgToMm: ({ swg }: { swg: number }) => swgMm(swg),
  roundWireGrams: ({ d, density, mm: length }: { d: number; density: number; mm: number }) =>
    inGrams(stockMass(roundWire(d), length, density)),
  stripGrams: (input: Shank & { mm: number }) => inGrams(stockMass(stock(input), input.mm, input.density)),
  sheetGrams: ({ l, w, t, density }: Shank & { l: number }) => inGrams(sheetMass(l, w, t, density)),
  laserWireMgPerCm: ({ d, density }: { d: number; density: number }) => inMilligrams(stockMass(roundWire(d), 10, density)),
  lossNormPercent: ({ effective, item }: { effective: string; item: string }) => lossNorm(effective, item),
  lossWithinNorm: (input: { metalWorkedG: number; lossG: number; norm: number }) =>
    isLossWithin(g(input.metalWorkedG), g(input.lossG), input.norm),
  plausibleWearGrams: ({ years, perYearMg }: { years: number; perYearMg: number }) => inGrams(wearMass(years, perYearMg)),
  platingMgPerCm2PerMicron: ({ metal }: { metal: Coat }) => coatMgPerCm2PerMicrometre(metal),
  rhodiumMgOnFlatBand: ({ w, t, us, micron }: { w: number; t: number; us: number; micron: number }) =>
    inMilligrams(coatMass('rhodium', flatBandAreaMm2(usDiameter(us), w, t), micron)),
  platingVisibleOnBalance: ({ mg, readability_g }: { mg: number; readability_g: number }) =>
    showsAt(g(readability_g), massOf(String(mg), 'milligram')),
  prongTipGrams: ({ d, h, density }: { d: number; h: number; density: number }) => inGrams(clawMass(1, d, h, density)),
  prongRebuildGrams: ({ prongs, d, h, density }: { prongs: number; d: number; h: number; density: number }) =>
    inGrams(clawMass(prongs, d, h, density)),
  scrapClass: ({ material }: { material: ScrapMaterial }) => SCRAP_CLASSES[material],

  differenceUncertaintyG: ({ readability }: { readability: number }) => {
    const reading = { s: 0, step: readability, zeroStep: 0 };
    return uOfDifference(reading, reading, 0);
  },
  expectedOut: ({ inG, events }: { inG: number; events: LedgerEvent[] }) =>
    inUnit(expectedWeight(g(inG), events.map(change)).massNg, 'gram'),
  closure: (input: { inG: number; stonesOutCt: number; metalOnlyG: number }) => {
    const worth = { uRandomG: 0, factors: [] };
    const { lossNg } = closure([
      { id: 'in', sign: 1, ng: g(input.inG), worth },
      { id: 'stones', sign: -1, ng: ct(input.stonesOutCt), worth },
      { id: 'metal', sign: -1, ng: g(input.metalOnlyG), worth },
    ]);
    return inUnit(lossNg, 'gram');
  },
  expectedFineGrams: (input: { parcels: Parcel[] }) => inUnit(expectedFineNg(parcels(input.parcels)), 'gram'),
  expectedFineLowerBoundPre1981: (input: { parcels: Parcel[] }) => inUnit(lowestFineOldUsNg(parcels(input.parcels)), 'gram'),
  refinerySettlement: (input: { sentG: number; afterMeltG: number; assayPermille: number; payablePercent: number }) => {
    const { assayPermille, payablePercent } = input;
    const melt = { sentNg: g(input.sentG), afterMeltNg: g(input.afterMeltG), assayPermille, payablePercent };
    const back = refineryReturn(melt, expectedFineNg(LEDG_008));
    const grams = { fineG: inUnit(back.fineNg, 'gram'), payableFineG: inUnit(back.payableFineNg, 'gram') };
    return { ...back, ...grams, gapVsExpectedG: inUnit(back.gapNg, 'gram') };
  },
  stoneShortfallDetectable: (input: { missingStone: { ct: number }; pieceBalance_g: number }) =>
    showsAt(g(input.pieceBalance_g), ct(input.missingStone.ct)),

  uk_addition_gate: (
    input: Readonly<Record<'article_metal' | 'added_metal', HallmarkMetal>> & Readonly<Record<string, string | boolean>>,
  ) => {
    const { gate, limitNg } = ukAdditionGate({
      isHallmarked: input.hallmarked === true,
      isNewWare: input.new_ware === true,
      isCharacterUnaltered: input.character_unaltered === true,
      articleMetal: input.article_metal,
      articlePermille: Number(input.article_standard_ppt),
      beforeNg: g(String(input.weight_before_g)),
      addedMetal: input.added_metal,
      addedPermille: Number(input.added_ppt),
      addedNg: g(String(input.added_g)),
    });
    return { result: gate, limit_g: limitNg === null ? null : inUnit(limitNg, 'gram') };
  },
  uk_coating_gate: (
    input: Readonly<Record<'article', HallmarkMetal>> &
      Readonly<Record<'coating' | 'coating_ppt' | 'article_ppt' | 'max_thickness_um', string>>,
  ) => ({
    result: ukCoatingGate({
      articleMetal: input.article,
      articlePermille: Number(input.article_ppt),
      coat: input.coating,
      coatPermille: Number(input.coating_ppt),
      thickestMicrometres: Number(input.max_thickness_um),
    }),
  }),
} satisfies Fns;
