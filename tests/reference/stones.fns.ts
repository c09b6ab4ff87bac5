// Glue from the rows on stones to the functions of src/trade.
import { FRACTION_CHARTS, isFractionPlausible, paperCarats, statedRange } from '../../src/trade/carat-words.ts';
import { agreesWith, estimateOf } from '../../src/trade/estimate.ts';
import { GEMS, type GemName } from '../../src/trade/gems.ts';
import { acidPickleAllowed, stoneCare, torchAction, ultrasonicAllowed } from '../../src/trade/stone-care.ts';
import type { CareStep, StoneAsSeen } from '../../src/trade/stone-care-table.ts';
import type { Girdle, StoneFormulaId } from '../../src/trade/stone-formulas.ts';
import {
  type Access,
  BAND_PERCENT,
  colouredMass,
  diamondMass,
  girdleFactor,
  lengthWidthRatio,
  roundByDiameter,
  simulantRatio,
  sphereMass,
} from '../../src/trade/stone-mass.ts';
import { inUnit } from '../../src/units/mass-units.ts';
import type { Fns } from './compare.ts';
import { ct, inCarats, inGrams } from './figures.ts';

interface Measured {
  readonly l: number;
  readonly w: number;
  readonly depth: number;
  readonly gta?: number;
  readonly sg: number;
}
const diamond = (formula: StoneFormulaId) => (input: Measured) =>
  inCarats(diamondMass(formula, { lengthMm: input.l, widthMm: input.w, depthMm: input.depth }, 'open', input.gta));
const coloured = (formula: StoneFormulaId) => (input: Measured) =>
  inCarats(colouredMass(formula, { lengthMm: input.l, widthMm: input.w, depthMm: input.depth }, input.sg, 'open'));

/** A row names a gem with its treatment behind it: "diamond fracture-filled". */
function stoneNamed(gem: string): StoneAsSeen {
  const [species = '', ...treatment] = gem.split(' ');
  return treatment.length > 0 ? { species, treatment: treatment.join(' ') } : { species };
}

export const STONE_FNS = {
  statedDecimalRange: ({ stated }: { stated: string }) => statedRange(stated),
  cibjoTwoDecimal: (input: { ct: number }) => paperCarats(ct(input.ct)),
  fractionRange: ({ fraction }: { fraction: string }) => FRACTION_CHARTS[fraction],
  statedFractionPlausible: (input: { paperSays: string; weighedCt: number }) => isFractionPlausible(input.paperSays, ct(input.weighedCt)),

  nominalSgInside: ({ gem }: { gem: GemName }) => GEMS[gem].nominal,
  torchAction: ({ gem }: { gem: string }) => torchAction(stoneNamed(gem)),
  ultrasonicAllowed: ({ gem }: { gem: string }) => ultrasonicAllowed(stoneNamed(gem)),
  acidPickleAllowed: ({ gem }: { gem: string }) => acidPickleAllowed(stoneNamed(gem), gem.startsWith('hot piece')),
  stoneCare: ({ step, ...stone }: StoneAsSeen & { step: CareStep }) => stoneCare(stone, step).answer,

  roundBrilliantCt: ({ d1, d2, depth, gta }: { d1: number; d2: number; depth: number; gta: number }) =>
    inCarats(diamondMass('diamond-round-1', { lengthMm: d2, widthMm: d1, depthMm: depth }, 'open', gta)),
  marquiseCt: diamond('diamond-marquise-1'),
  pearDiamondCt: diamond('diamond-pear-1'),
  ovalDiamondCt: diamond('diamond-oval-1'),
  emeraldDiamondCt: diamond('diamond-emerald-1'),
  princessDiamondCt: diamond('diamond-princess-1'),
  cushionDiamondCt: diamond('diamond-cushion-1'),
  asscherDiamondCt: diamond('diamond-asscher-1'),
  heartDiamondCt: diamond('diamond-heart-1'),
  trillionDiamondCt: diamond('diamond-trillion-1'),
  baguetteDiamondCt: diamond('diamond-baguette-1'),
  colouredRoundCt: ({ d, depth, sg }: { d: number; depth: number; sg: number }) => coloured('coloured-round-1')({ l: d, w: d, depth, sg }),
  colouredOvalCt: ({ variant, ...size }: Measured & { variant: 'meanDiameter' | 'LxW' }) =>
    coloured(variant === 'LxW' ? 'coloured-oval-1' : 'coloured-oval-mean-1')(size),
  colouredRectCt: coloured('coloured-rectangle-1'),
  colouredEmeraldCt: coloured('coloured-emerald-1'),
  colouredPearCt: coloured('coloured-pear-1'),
  cabochonCt: coloured('cabochon-1'),
  sphereCt: ({ d, sg }: { d: number; sg: number }) => inCarats(sphereMass(d, sg, 'open')),
  pearlGrams: ({ d }: { d: number }) => inGrams(sphereMass(d, GEMS.pearl.nominal, 'open')),
  roundDiameterToCt: (input: { mm: number }) => inCarats(roundByDiameter(input.mm)),
  lengthWidthRatio: ({ l, w }: { l: number; w: number }) => lengthWidthRatio(l, w),
  gtaMultiplier: ({ girdle, diameterMm: across }: { girdle: Girdle; diameterMm: number }) => girdleFactor(girdle, across),
  estimateBandPercent: ({ access }: { access: Access }) => BAND_PERCENT[access],
  estimateVsWeighed: (input: { estimateCt: number; access: Access; weighedCt: number }) =>
    agreesWith(estimateOf(inUnit(ct(input.estimateCt), 'gram'), BAND_PERCENT[input.access], 'diamond-round-1'), ct(input.weighedCt)),
  simulantWeightRatio: (input: { from: GemName; sgTo: number }) => simulantRatio(input.from, input.sgTo),
} satisfies Fns;
