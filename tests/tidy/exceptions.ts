// What the house rules let stand, each with its reason. An exception that is no longer needed fails its rule.

/** Important things may be big. */
export const BIG: Readonly<Record<string, string>> = {
  'src/trade/caution-table.ts': 'data: one caution after another, with its source',
  'src/trade/sources.ts': 'data: the sources that tables cite',
  'src/trade/stone-care-table.ts': 'data: stones against bench steps',
};

/** Functions longer than a reader takes in at once, as "path name", with their reason. */
export const LONG: Readonly<Record<string, string>> = {};

/** Files with a cast that is still to go. */
export const CASTS: Readonly<Record<string, string>> = {};

/** Files that keep something from one call to the next outside of any function. */
export const STATEFUL: Readonly<Record<string, string>> = {
  'src/units/dates.ts': 'formatters, one set a zone: what a zone answers never depends on them',
};

interface Awaited {
  readonly because: string;
  /** Names by file. */
  readonly of: Readonly<Record<string, readonly string[]>>;
}
/** Functions and tables without a caller, each waiting for its screen; what has neither a caller nor a reason goes. */
export const AWAITED: readonly Awaited[] = [
  {
    because: 'a letter is checked at home, and a mirror checks what it copies, by these alone',
    of: {
      'src/log/checkpoint.ts': ['openCheckpoint'],
      'src/log/merkle.ts': ['checkRecord', 'checkTree'],
      'src/log/note.ts': ['cosignatureLine'],
      'src/log/proof.ts': ['formatProof', 'parseProof', 'parseTilePath'],
      'src/log/verify.ts': ['verifyLog'],
    },
  },
  {
    because: 'scrap lots and the refinery’s payment: fine metal expected, the settlement, its verdict and how sure it is',
    of: {
      'src/reckoning/composition.ts': ['reckonAssayed'],
      'src/reckoning/fine-metal.ts': ['sumLot', 'checkSettlement', 'runningBias'],
      'src/reckoning/words.ts': ['ownerSettlement'],
      'src/trade/refining.ts': ['expectedFineNg', 'lowestFineOldUsNg', 'refineryReturn'],
      'src/trade/scrap-classes.ts': ['SCRAP_CLASSES'],
      'src/trade/loss-norms.ts': ['lossNorm', 'isLossWithin'],
      'src/units/fineness.ts': ['readFineness', 'formatFineness', 'isSameFineness'],
    },
  },
  {
    because:
      'what a balance is trusted with: fitness for a load, growth since its last check, what a certificate and a difference are worth',
    of: {
      'src/reckoning/loss-law.ts': ['eitherTail'],
      'src/reckoning/distributions.ts': ['chiSquaredUpper'],
      'src/reckoning/matrix.ts': ['diagonal'],
      'src/units/mass-units.ts': ['inUnit'],
      'src/weighing/agreement.ts': ['sameItem', 'guardBand'],
      'src/weighing/balance.ts': ['stepProblem', 'leastDivisionsUs', 'maintenanceToleranceNg', 'loadProblem'],
      'src/weighing/check.ts': ['weighingsInDoubt', 'uspLeastWeight', 'uspAccuracy'],
      'src/weighing/uncertainty.ts': ['uOfDifference', 'combined', 'uFromCalibration'],
    },
  },
  {
    because:
      'trade tables that the whole bench’s forms and cautions are to read: solder, density, hallmarks and tolerances, care by step, wear',
    of: {
      'src/trade/alloys.ts': [
        'SILVER_SOLDER_MELTS_C',
        'isDensityImplausible',
        'troyOuncesPerCubicInch',
        'hydrostaticDensity',
        'isSolderUsable',
        'blendPermille',
      ],
      'src/trade/cautions.ts': ['ukCoatingGate'],
      'src/trade/claws.ts': ['clawMass'],
      'src/trade/estimate.ts': ['showsAt'],
      'src/trade/expected-weight.ts': ['expectedWeight'],
      'src/trade/fineness-law.ts': [
        'US_SILVER_WORDS',
        'ftcPlatinumTier',
        'markWithoutTolerance',
        'ukHallmarkRequired',
        'ukMinimumSolder',
        'isExemptFromKaratAssay',
      ],
      'src/trade/plating.ts': ['coatMgPerCm2PerMicrometre'],
      'src/trade/sizing.ts': ['sizingBesideRule'],
      'src/trade/stock-shapes.ts': ['sheetMass'],
      'src/trade/stone-care.ts': ['torchAction', 'ultrasonicAllowed', 'acidPickleAllowed'],
      'src/trade/wear.ts': ['WEAR_MG_PER_YEAR', 'wearMass'],
      'src/units/ring-size.ts': ['formatRingSize'],
    },
  },
  {
    because: 'stones estimated from what can be measured in the setting, and papers read against what is seen',
    of: {
      'src/trade/carat-words.ts': ['paperCarats', 'statedRange', 'isFractionPlausible'],
      'src/trade/stone-mass.ts': ['lengthWidthRatio', 'sphereMass', 'roundByDiameter', 'simulantRatio', 'besideEstimate'],
    },
  },
];
