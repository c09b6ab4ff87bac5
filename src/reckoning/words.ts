// How a verdict is put into words, for the customer, the owner and the insurer: what was weighed, what the balance can tell, what it cannot.
// A customer never sees a z or a probability; nothing here calls weight a proof of anything, and only a count can be short of a stone.
import type { MassNg } from '../units/mass.ts';
import { formatMoney, type Money } from '../units/money.ts';
import { type Gap, gapOf, toStep, upToStep } from '../units/rounded.ts';
import type { Closure, Verdict } from './closure.ts';
import type { SettlementCheck } from './fine-metal.ts';
import type { OwnMetal } from './own-metal.ts';
import type { PeriodCount } from './periods.ts';
import type { Slip, SlipKind } from './slip.ts';
import type { ParcelComparison, StoneComparison, StoneVerdict, Worthwhile } from './stone-agreement.ts';
import type { SuspectSet } from './suspects.ts';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  agrees: 'agrees as far as the balance can tell',
  'cannot tell': 'these weighings are too wide to tell',
  'weigh again': 'weigh again',
  'does not agree': 'does not agree',
  'not checked': 'not checked by weight',
};

const list = (parts: readonly string[], last: string): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`;

/** What went in and out of a job, as the customer is told it; zero or absent is left out. */
export interface JobMasses {
  readonly receivedNg: MassNg;
  readonly cutNg?: MassNg;
  readonly filingsNg?: MassNg;
  readonly addedNg?: MassNg;
}

/** The figures of a closing as everybody is shown them: the gap, its ± (two standard uncertainties), what would have shown, and the most that is usual as dust. */
export interface Figures {
  readonly gap: string;
  /** Whether more or less went out than came in; neither where the gap is nothing to the step. */
  readonly side: Gap['side'];
  readonly step: string;
  readonly give: string;
  /** A loss this large would have been said not to agree, at least 95 times in 100. */
  readonly shows: string;
  readonly dustMost: string | null;
}
export function figuresOf({ lossNg, uG, stepNg, action, dustMostG }: Closure): Figures {
  const { size: gap, side, step } = gapOf(-lossNg, stepNg);
  const dustMost = dustMostG === 0 ? null : upToStep(1e9 * dustMostG, stepNg);
  return { gap, side, step, give: upToStep(2e9 * uG, stepNg), shows: upToStep(1e9 * action.detectableG, stepNg), dustMost };
}

/** "0.03 g ± 0.05 g": a loss, or with a minus a gain. */
export const signedLoss = ({ gap, side, give }: Figures): string => `${side === 'more' ? '\u2212' : ''}${gap} ± ${give}`;

/** The customer's sentence on the weights of a job; "what we return" only where all of it is there to be returned. */
export function customerJob(masses: JobMasses, closed: Closure, all: 'what we return' | 'what was weighed' = 'what we return'): string {
  const { stepNg, lossNg, verdict, finding } = closed;
  const { gap, give, shows, dustMost } = figuresOf(closed);
  if (verdict === 'not checked') return 'Not every part of this job was weighed, so it was not checked by weight.';
  if (verdict === 'cannot tell')
    return `What was weighed or estimated is known to within ${give} only, too wide to say that the weights agree.`;
  if (verdict === 'weigh again') return `The weights before and after differ by ${gap}. We are weighing again before we say more.`;
  if (verdict === 'does not agree') {
    return `The weights before and after differ by ${gap}, more than our balances${dustMost === null ? '' : ' and the usual dust of such work'} can explain. We are checking our records and will tell you what we find.`;
  }
  if (finding === 'usual loss')
    return `${gap} is missing; such work usually leaves up to ${dustMost} as dust. A gap of ${shows} or more would have shown.`;
  const told = [
    masses.cutNg ? `${toStep(masses.cutNg, stepNg)} was cut away` : '',
    masses.filingsNg ? `${toStep(masses.filingsNg, stepNg)} was collected as filings` : '',
    masses.addedNg ? `${toStep(masses.addedNg, stepNg)} of metal was added` : '',
  ].filter((part) => part !== '');
  const between = told.length === 0 ? '' : ` ${list(told, 'and')}.`;
  const within = 2e9 * closed.uG >= Math.abs(lossNg) ? give : gap;
  return `We weighed ${toStep(masses.receivedNg, stepNg)} in.${between} W${all.slice(1)} accounts for all of it to within ${within}. A gap of ${shows} or more would have shown; a smaller one may not.`;
}

const STONE_WORDS: Readonly<Record<StoneVerdict, string>> = {
  agrees: 'the two weights agree, as far as this balance can tell',
  'weigh again': 'we are cleaning it and weighing it again before we say more',
  'does not agree': 'the two weights do not agree, and we are checking our records',
  'not checked': 'it was not checked by weight',
  'cannot tell': 'this way of weighing is too coarse for a stone of that size to tell',
};
const WORTH_WORDS: Readonly<Record<Worthwhile, string>> = {
  strong: 'Few other stones of this kind would match in all that was measured; the drawing and photographs show the rest.',
  some: 'Some other stones of this size would match too; the drawing and photographs show the rest.',
  'cannot tell': 'Weight cannot tell a stone of this size from others like it.',
};

/** The customer's sentence on one stone, weights in carats to the balance's step. */
export function customerStone(beforeNg: MassNg, afterNg: MassNg, stepNg: MassNg, { verdict }: StoneComparison, worth: Worthwhile): string {
  const [before, after] = [toStep(beforeNg, stepNg, 'ct'), toStep(afterNg, stepNg, 'ct')];
  const more = verdict === 'agrees' ? ` ${WORTH_WORDS[worth]}` : '';
  return `The stone weighed ${before} in and ${after} out, read to ${toStep(stepNg, stepNg, 'ct')}: ${STONE_WORDS[verdict]}.${more}`;
}

/** The customer's sentence on a parcel: the count first. */
export function customerParcel(
  before: { readonly stones: number; readonly ng: MassNg },
  after: { readonly stones: number; readonly ng: MassNg },
  stepNg: MassNg,
  { missing, verdict }: ParcelComparison,
): string {
  const counted = `${before.stones} stones in, ${after.stones} out`;
  if (missing > 0)
    return `${counted}: ${missing} missing. We are looking for ${missing === 1 ? 'it' : 'them'} and will tell you what we find.`;
  if (missing < 0) return `${counted}: ${-missing} more than came in. We are checking our records.`;
  const weights = `${toStep(before.ng, stepNg, 'ct')} in and ${toStep(after.ng, stepNg, 'ct')} out`;
  return `${counted}, ${weights}: ${STONE_WORDS[verdict]}.${verdict === 'agrees' ? ` ${WORTH_WORDS['cannot tell']}` : ''}`;
}

/** The customer's sentence on their own metal in the piece. Weight cannot show which metal it is. */
export function customerMetal({ metalNg, lowNg, highNg, uLowG, uHighG }: OwnMetal, stepNg: MassNg): string {
  const metal = toStep(metalNg, stepNg);
  const give = upToStep(2e9 * Math.max(uLowG, uHighG), stepNg);
  const [low, high] = [toStep(lowNg, stepNg), toStep(highNg, stepNg)];
  const range = low === high ? low : `between ${low} and ${high}`;
  return `Of the ${metal} of metal in the piece, ${range} (give or take ${give}) is metal you brought. Weight cannot show which metal it is; the record of who held it does.`;
}

/** The owner's sentence on a job: the gap with its ±, the verdict and what would have shown. */
export function ownerJob(closed: Closure): string {
  if (closed.verdict === 'not checked') return 'Not checked by weight: not every flow was weighed.';
  const { gap, side, step, give, shows, dustMost } = figuresOf(closed);
  const found = side === 'none' ? `No difference to ${step} (± ${give})` : `${side === 'more' ? 'Gain' : 'Loss'} ${gap} ± ${give}`;
  const usual = closed.finding === 'usual loss' ? `, no more than such work usually leaves as dust (up to ${dustMost})` : '';
  return `${found}: ${VERDICT_WORDS[closed.verdict]}${usual}. A loss of ${shows} would have shown.`;
}

/** The owner's sentence on faults that together explain a gap, most often one: each a set of suspects that the figures cannot tell apart, never asserted, to the step of the balance; `nameOf` gives a flow or node its word. */
export function ownerSuspects(sets: readonly SuspectSet[], stepNg: number, nameOf: (id: string) => string = (id) => id): string {
  const each = sets.map((set) => setWords(set, stepNg, nameOf));
  const text = each.length === 1 ? each.join() : `${COUNTED[each.length] ?? each.length} things at once: ${each.join('; and ')}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}. Weigh again.`;
}
const COUNTED: Readonly<Record<number, string>> = { 2: 'two', 3: 'three' };

function setWords({ suspects }: SuspectSet, stepNg: number, nameOf: (id: string) => string): string {
  const [measured] = suspects.filter(({ fault }) => fault !== 'factor drifted');
  const about = measured ? `about ${toStep(1e9 * Math.abs(measured.size), stepNg)} ± ${upToStep(2e9 * measured.u, stepNg)}` : '';
  const weighings = suspects.flatMap((one) =>
    one.fault === 'weighing wrong' ? [`${nameOf(one.stream)} (too ${one.size > 0 ? 'heavy' : 'light'})`] : [],
  );
  const losses = suspects.flatMap((one) =>
    one.fault === 'loss'
      ? [`${about} may have ${one.size < 0 ? 'come in unrecorded' : 'gone'} at ${list(one.nodes.map(nameOf), 'and')}`]
      : [],
  );
  const drifts = suspects.flatMap((one) => (one.fault === 'factor drifted' ? [nameOf(one.factor)] : []));
  const said = [
    weighings.length > 0 ? `the weighing of ${list(weighings, 'or')} may be wrong by ${about}` : '',
    ...losses,
    drifts.length > 0 ? `${list(drifts, 'or')} may have drifted` : '',
  ].filter((part) => part !== '');
  return `${said.join(', or ')}${suspects.length > 1 ? ': the figures cannot say which' : ''}`;
}

/** The owner's sentence on a settlement; the money is at the price used, given per gram fine. */
export function ownerSettlement(
  expected: { readonly fineG: number; readonly uFineG: number },
  check: SettlementCheck,
  perGram: Money,
): string {
  const money = (g: number) => formatMoney({ minor: Math.round(Math.abs(g) * perGram.minor), currency: perGram.currency });
  const agrees = (z: number) => (Math.abs(z) <= 2 ? 'agrees' : 'does not');
  const found = `The refinery found ${check.fineG.toFixed(2)} g fine, we expected ${expected.fineG.toFixed(2)} ± ${(2 * expected.uFineG).toFixed(2)} g.`;
  const parts = `The weight ${agrees(check.zWeight)}; the fineness ${agrees(check.zFineness)}.`;
  const next = {
    'within what both can tell': 'Within what both can tell.',
    'ask for a second assay': 'Ask for a second assay if the money is worth it.',
    differs: 'Ask for the reserved sample.',
  };
  return `${found} ${parts} About ${money(check.shortG)} ± ${money(2 * check.uG)} at the price used. ${next[check.verdict]}`;
}

/** The owner's line on a period. */
export const ownerPeriod = ({ checked, byChance, flagged }: PeriodCount): string => {
  const atMost = byChance < 10 ? byChance.toFixed(1) : String(Math.round(byChance));
  const few = atMost === '0.0' ? 'almost none' : `at most about ${atMost}`;
  return `${checked} checked; chance alone would make ${few} of them not agree; ${flagged} did not.`;
};

/** The owner's sentence on a chart that has given a signal; never shown with a person's name. */
export const ownerTrend = (where: string, since: string, size: number, runLength: number): string =>
  `${where}: losses have run above usual since ${since}, about ${size.toFixed(1)} of a usual spread per job. With no change, such a signal comes once in about ${Math.round(runLength)} jobs.`;

const SLIP_WORDS: Readonly<Record<SlipKind, (slip: Slip) => string>> = {
  'digits swapped': ({ text, instead }) => `digits swapped: ${text} written for ${instead}`,
  'decimal place': ({ text, instead }) => `decimal place: ${text} written for ${instead}`,
  'other unit': ({ text, instead }) => `other unit: ${text} was in ${instead}`,
  'coarser balance': ({ text, instead }) => `another balance: ${text} is what one with steps of ${instead} shows`,
  'counted twice': ({ text }) => `counted twice: ${text}`,
  'wrong direction': ({ text, instead }) => `wrong direction: ${text} went ${instead}`,
  'tare left on': ({ text, instead }) => `the ${instead} was on the pan when ${text} was read`,
  'another piece': ({ text, instead }) => `another piece in the hand: ${text} is what ${instead} weighs`,
};
/** What a slip would have been, for the bench: one of these, never the one. */
export const slipWords = (slip: Slip): string => SLIP_WORDS[slip.kind](slip);

/** One reading as an insurer is shown it. */
export interface ShownReading {
  readonly what: string;
  readonly text: string;
  /** "the bench balance, calibrated 3 Mar 2026" or "no balance". */
  readonly on: string;
}

/** Entries whose weight nobody read: not known at all, read wet or with something of unknown weight, estimated, counted, or had by difference. */
export interface NotRead {
  readonly unweighed: readonly string[];
  readonly setAside: readonly string[];
  readonly estimated: readonly string[];
  readonly byDifference: readonly string[];
}
/** What was not read on a balance, in words; that everything was weighed only where it was. */
export function notReadWords({ unweighed, setAside, estimated, byDifference }: NotRead): string {
  const said = [
    unweighed.length > 0 ? `Not weighed: ${list(unweighed, 'and')}.` : '',
    setAside.length > 0 ? `Perhaps not dry, or with something of unknown weight, and in no sum: ${list(setAside, 'and')}.` : '',
    estimated.length > 0 ? `Estimated, not weighed: ${list(estimated, 'and')}.` : '',
    byDifference.length > 0 ? `By difference of two readings: ${list(byDifference, 'and')}.` : '',
  ].filter((part) => part !== '');
  return said.length === 0 ? 'Everything was weighed.' : said.join(' ');
}

/** The insurer's lines: readings, instruments, U, the detectable loss, what was not weighed, and the version of the arithmetic. */
export function insurerJob(readings: readonly ShownReading[], closed: Closure, notRead: NotRead): readonly string[] {
  const { side, gap, give, shows } = figuresOf(closed);
  const lines = readings.map(({ what, text, on }) => `${what}: ${text} on ${on}.`);
  const less = `In less out: ${side === 'more' ? '\u2212' : ''}${gap}, U = ${give} (k = 2): ${VERDICT_WORDS[closed.verdict]}.`;
  return [
    ...lines,
    ...(closed.verdict === 'not checked' ? ['Not checked by weight.'] : [less, `A loss of ${shows} would have shown 95 times in 100.`]),
    notReadWords(notRead),
    `Reckoned with version ${closed.calcVersion}.`,
  ];
}
