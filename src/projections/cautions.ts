// The usual cautions that the ledger itself calls for: what the stones noted in a job ask of the next step, and metal added to a marked piece.
import type { Fact } from '../book/facts.ts';
import { metalOf } from '../book/metals.ts';
import { SPECIES } from '../book/stone-words.ts';
import { typed } from '../book/us-words.ts';
import type { Thing } from '../ledger/thing.ts';
import { type Addition, showsAdditionCaution, ukAdditionGate } from '../trade/cautions.ts';
import type { HallmarkMetal } from '../trade/fineness-law.ts';
import { readMark } from '../trade/marks.ts';
import { type Care, stoneCare } from '../trade/stone-care.ts';
import { CARE_ANSWERS, type CareAnswer, type CareStep, type StoneAsSeen } from '../trade/stone-care-table.ts';
import { formatMassWithUnit, type MassNg, massNg } from '../units/mass.ts';
import { netNg } from '../weighing/reading.ts';

const STEP_WORDS: Readonly<Record<CareStep, string>> = {
  torch: 'flame',
  pickle: 'pickle, cool',
  ultrasonic: 'ultrasonic',
  steam: 'steam',
  platingBath: 'plating bath',
  laser: 'laser',
  hammerSetting: 'hammer setting',
};
const ANSWER_WORDS: Readonly<Record<CareAnswer, string>> = {
  usual: 'as usual',
  caution: 'with care',
  remove: 'take it out',
  'no-heat-no-water-or-decline': 'no heat, no water, or decline',
};

/** Steps of the bench that agreed work asks of what is set; with laser named and no solder, joints are lasered. */
export function careStepsOf(work: readonly string[]): readonly CareStep[] {
  const lasers = work.includes('laser') && !work.includes('solder');
  const steps = work.flatMap((one) => WORK_CARE[one] ?? []).map((step) => (lasers && step === 'torch' ? 'laser' : step));
  return (Object.keys(STEP_WORDS) as CareStep[]).filter((step) => steps.includes(step));
}

const JOINED = ['torch', 'pickle'] as const;
const WORK_CARE: Readonly<Record<string, readonly CareStep[]>> = {
  clean: ['ultrasonic', 'steam'],
  polish: ['ultrasonic'],
  solder: JOINED,
  laser: ['laser'],
  'size-up': JOINED,
  'size-down': JOINED,
  'half-shank': JOINED,
  're-shank': JOINED,
  're-tip': JOINED,
  're-claw': JOINED,
  're-head': JOINED,
  remount: JOINED,
  remodel: JOINED,
  set: ['hammerSetting'],
  plate: ['platingBath'],
  'strip-plating': ['pickle'],
};

/** One sentence for each stone that sits in its seat and asks for more than the usual: the strictest answer first, its steps, care and sources. */
export function stoneCautions(things: readonly Thing[], steps: readonly CareStep[]): readonly string[] {
  const seated = things.filter(
    ({ kind, gone, stones, says }) => isStone(kind) && !gone && (stones ?? 0) === 0 && says.species !== undefined,
  );
  return [...new Set(seated.map(({ says }) => sentenceOf(says, steps)).filter((words) => words !== ''))];
}

const isStone = (kind: Thing['kind']): boolean => kind === 'stone' || kind === 'packet';

function sentenceOf(says: Thing['says'], steps: readonly CareStep[]): string {
  const cares = steps.map((step) => ({ step, care: stoneCare(asSeen(says), step) }));
  const answers = CARE_ANSWERS.toReversed()
    .filter((answer) => answer !== 'usual')
    .map((answer) =>
      answerWords(
        answer,
        cares.filter(({ care }) => care.answer === answer),
      ),
    )
    .filter((words) => words !== '');
  if (answers.length === 0) return '';
  const species = (SPECIES as Readonly<Record<string, string>>)[says.species ?? ''] ?? says.species;
  const behind = says.backing === undefined || says.backing === 'open' ? '' : `, back ${says.backing}`;
  return `${says.seat === undefined ? 'Stone' : typed(says.seat)}, ${says.species === 'unknown' ? 'stone not known' : species}${behind}. ${answers.join('; ')}.`;
}

function answerWords(answer: CareAnswer, cares: readonly { readonly step: CareStep; readonly care: Care }[]): string {
  if (cares.length === 0) return '';
  const notes = [...new Set(cares.map(({ care }) => care.note).filter((note) => note !== '' && !note.startsWith('STS ')))].slice(0, 2);
  const bases = [
    ...new Set(cares.flatMap(({ care: { basis } }): readonly string[] => (typeof basis === 'string' ? [BASIS_WORDS[basis]] : basis))),
  ];
  const detail = notes.length === 0 ? '' : `: ${notes.join('; ')}`;
  return `${cares.map(({ step }) => STEP_WORDS[step]).join(', ')}: ${ANSWER_WORDS[answer]}${detail} (${bases.join(', ')})`;
}

const BASIS_WORDS = { 'common practice': 'common practice, no source', memory: 'from memory' } as const;

/** Cuts that the care of a stone turns on; any other cut is as the species. */
const CARE_CUTS: Readonly<Record<string, string>> = {
  marquise: 'pointed (marquise, pear, princess)',
  pear: 'pointed (marquise, pear, princess)',
  princess: 'pointed (marquise, pear, princess)',
  cabochon: 'cabochon or star',
  star: 'cabochon or star',
};
const CUT_MATTERS: Readonly<Record<string, readonly string[]>> = {
  diamond: ['pointed (marquise, pear, princess)'],
  ruby: ['cabochon or star'],
  sapphire: ['cabochon or star'],
};

function asSeen({ species = 'unknown', cut, backing }: Thing['says']): StoneAsSeen {
  const matters = cut === undefined ? undefined : CARE_CUTS[cut];
  const shown = matters !== undefined && CUT_MATTERS[species]?.includes(matters);
  return { species, ...(shown ? { cut: matters } : {}), ...(backing === undefined || backing === 'open' ? {} : { backing }) };
}

/** An addition that is about to be written: its metal, and its mass where it was weighed. */
export interface Planned {
  readonly metal: string;
  readonly ng: MassNg;
}

/**
 * For a piece with a mark read: what has been added by the ledger's own weights, beside what may be added before an assay office is asked.
 * Null while that is well inside the gate, and where the piece bears no mark or its metal is not told (Hallmarking Act 1973 s5, dated in trade/cautions).
 */
export function additionCaution(piece: Thing, work: readonly string[], facts: readonly Fact[], planned?: Planned): string | null {
  const addition = additionTo(piece, work, facts, planned);
  if (!addition || addition.addedNg === 0 || !showsAdditionCaution(addition, false)) return null;
  const grams = (ng: MassNg) => formatMassWithUnit(ng, 'g', 2);
  const { limitNg } = ukAdditionGate(addition);
  const added = `${grams(addition.addedNg)} ${planned ? 'with this' : 'so far'} is added to a marked piece`;
  if (limitNg === null) return `${added}. For ${addition.articleMetal} no amount is let through unasked.`;
  if (addition.addedMetal !== addition.articleMetal || addition.addedPermille < addition.articlePermille)
    return `${added}, and not all of it is the piece’s own metal and standard.`;
  if (!addition.isCharacterUnaltered) return `${added}, and its character changes.`;
  return `${added}; ${grams(limitNg)} is let through.`;
}

const MARKS = ['mark fineness', 'mark office', 'mark sponsor', 'mark date'] as const;

/** Whether a mark was read on the piece that is not a plater's. */
export function isMarked(piece: Thing): boolean {
  const read = MARKS.map((mark) => piece.says[mark]).filter((says) => says !== undefined);
  return read.length > 0 && !read.some((mark) => readMark({ mark }).metal?.startsWith('plated'));
}

function additionTo(piece: Thing, work: readonly string[], facts: readonly Fact[], planned: Planned | undefined): Addition | null {
  const article = alloyOf(piece.says.metal, piece.says['mark fineness']);
  if (!isMarked(piece) || !article) return null;
  const flows = facts.flatMap((one) => (one.fact === 'flow' && one.to === piece.id && one.matter.kind === 'metal' ? [one] : []));
  const added = flows.map(({ matter, reading }) => ({
    alloy: alloyOf(matter.kind === 'metal' ? matter.metal : undefined),
    ng: (reading && netNg(reading)) ?? 0,
  }));
  const all = planned ? [...added, { alloy: alloyOf(planned.metal), ng: planned.ng }] : added;
  const least = (one: (typeof all)[number]) => (one.alloy?.metal === article.metal ? one.alloy.permille : -1);
  const worst = all.toSorted((a, b) => least(a) - least(b))[0]?.alloy;
  return {
    isHallmarked: true,
    isNewWare: false,
    isCharacterUnaltered: !work.some((one) => one === 'remodel' || one === 'remount'),
    articleMetal: article.metal,
    articlePermille: article.permille,
    beforeNg: weightBefore(piece, facts),
    addedMetal: worst?.metal ?? article.metal,
    addedPermille: worst?.permille ?? 0,
    addedNg: massNg(all.reduce((sum, { ng }) => sum + ng, 0)),
  };
}

/** A piece that nobody weighed as it came in is held to the law's grams alone. */
const UNWEIGHED = massNg(1_000_000_000_000);

function weightBefore(piece: Thing, facts: readonly Fact[]): MassNg {
  const first = facts.find((one) => one.fact === 'reading' && one.of === piece.id);
  return (first?.fact === 'reading' ? netNg(first.reading) : null) ?? UNWEIGHED;
}

const FAMILIES: readonly string[] = ['gold', 'silver', 'platinum', 'palladium'];

function alloyOf(code: string | undefined, mark?: string): { readonly metal: HallmarkMetal; readonly permille: number } | null {
  const { family, permille } = metalOf(code ?? 'other');
  const read = mark === undefined ? null : readMark({ mark, country: 'GB' });
  const metal = family === 'other' ? (read?.metal ?? '') : family;
  const parts = permille ?? read?.permille ?? null;
  return FAMILIES.includes(metal) && parts !== null ? { metal: metal as HallmarkMetal, permille: parts } : null;
}
