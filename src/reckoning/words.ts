// How a verdict is put into words, for the customer, the owner and the insurer: what was weighed, what the balance can tell, what it cannot.
// A customer never sees a z or a probability; nothing here calls weight a proof of anything, and only a count can be short of a stone.
import { decimalsOfStep, formatMassWithUnit, type MassNg, type MassUnit, massNg } from '../units/mass.ts';
import { formatMoney, type Money } from '../units/money.ts';
import type { Closure, Verdict } from './closure.ts';
import type { SettlementCheck } from './fine-metal.ts';
import type { OwnMetal } from './own-metal.ts';
import type { PeriodCount } from './periods.ts';
import type { Slip, SlipKind } from './slip.ts';
import type { ParcelComparison, StoneComparison, StoneVerdict, Worthwhile } from './stones.ts';
import type { Hypothesis, SuspectSet } from './suspects.ts';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  agrees: 'agrees as far as the balance can tell',
  'weigh again': 'weigh again',
  'does not agree': 'does not agree',
  'not checked': 'not checked by weight',
};

/** A mass to the step it was read in; grams given as a limit are rounded up to the next step. */
const shown = (ng: number, stepNg: number, unit: MassUnit = 'g'): string =>
  formatMassWithUnit(massNg(Math.round(ng)), unit, decimalsOfStep(massNg(stepNg), unit));
const upTo = (g: number, stepNg: number, unit: MassUnit = 'g'): string =>
  shown(Math.ceil(Number(((g * 1e9) / stepNg).toPrecision(9))) * stepNg, stepNg, unit);
const stepOf = ({ stepNg }: Closure): number => stepNg || 10_000_000;
const list = (parts: readonly string[], last: string): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`;

/** What went in and out of a job, as the customer is told it; zero or absent is left out. */
export interface JobMasses {
  readonly receivedNg: MassNg;
  readonly cutNg?: MassNg;
  readonly filingsNg?: MassNg;
  readonly addedNg?: MassNg;
}

/** The customer's sentence on the weights of a job. */
export function customerJob(masses: JobMasses, closed: Closure): string {
  const step = stepOf(closed);
  if (closed.verdict === 'not checked') return 'Not every part of this job was weighed, so it was not checked by weight.';
  const gap = shown(Math.abs(closed.lossNg), step);
  if (closed.finding === 'usual loss') return `${gap} went as dust in filing and polishing, which is usual for this work.`;
  if (closed.verdict === 'weigh again') return `The weights before and after differ by ${gap}. We are weighing again before we say more.`;
  if (closed.finding !== 'closes') {
    return `The weights before and after differ by ${gap}, more than our balances can explain. We are checking our records and will tell you what we find.`;
  }
  const told = [
    masses.cutNg ? `${shown(masses.cutNg, step)} was cut away` : '',
    masses.filingsNg ? `${shown(masses.filingsNg, step)} was collected as filings` : '',
    masses.addedNg ? `${shown(masses.addedNg, step)} of metal was added` : '',
  ].filter((part) => part !== '');
  const between = told.length === 0 ? '' : ` ${list(told, 'and')}.`;
  const within = upTo(Math.max(2 * closed.uG, closed.lossNg / 1e9), step);
  return `We weighed ${shown(masses.receivedNg, step)} in.${between} What we return accounts for all of it to within ${within}. Our balance would show a difference of ${upTo(closed.note.detectableG, step)} or more; a smaller one it could not see.`;
}

const STONE_WORDS: Readonly<Record<StoneVerdict, string>> = {
  agrees: 'the same, as far as this balance can tell',
  'weigh again': 'we are cleaning it and weighing it again before we say more',
  'does not agree': 'the two do not agree, and we are checking our records',
  'not checked': 'it was not checked by weight',
  'cannot tell': 'this way of weighing cannot tell whether they are the same',
};
const WORTH_WORDS: Readonly<Record<Worthwhile, string>> = {
  strong: 'Few other stones of this kind would match in all that was measured; the drawing and photographs show the rest.',
  some: 'Some other stones of this size would match too; the drawing and photographs show the rest.',
  'cannot tell': 'Weight cannot tell a stone of this size from others like it.',
};

/** The customer's sentence on one stone, weights in carats to the balance's step. */
export function customerStone(beforeNg: MassNg, afterNg: MassNg, stepNg: MassNg, { verdict }: StoneComparison, worth: Worthwhile): string {
  const [before, after] = [shown(beforeNg, stepNg, 'ct'), shown(afterNg, stepNg, 'ct')];
  const more = verdict === 'agrees' ? ` ${WORTH_WORDS[worth]}` : '';
  return `Your stone weighed ${before} in and ${after} out, read to ${shown(stepNg, stepNg, 'ct')}: ${STONE_WORDS[verdict]}.${more}`;
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
  const weights = `${shown(before.ng, stepNg, 'ct')} in and ${shown(after.ng, stepNg, 'ct')} out`;
  return `${counted}, ${weights}: ${STONE_WORDS[verdict]}.${verdict === 'agrees' ? ` ${WORTH_WORDS['cannot tell']}` : ''}`;
}

/** The customer's sentence on their own metal in the piece. Weight cannot show which metal it is. */
export function customerMetal({ metalNg, lowNg, highNg, uLowG, uHighG }: OwnMetal, stepNg: MassNg): string {
  const metal = shown(metalNg, stepNg);
  const give = upTo(2 * Math.max(uLowG, uHighG), stepNg);
  const [low, high] = [shown(lowNg, stepNg), shown(highNg, stepNg)];
  const range = low === high ? low : `between ${low} and ${high}`;
  return `Of the ${metal} of metal in the piece, ${range} (give or take ${give}) is metal you brought. Weight cannot show which metal it is; the record of who held it does.`;
}

/** The owner's sentence on a job: the gap with U, the verdict and what would have shown. */
export function ownerJob(closed: Closure): string {
  const step = stepOf(closed);
  if (closed.verdict === 'not checked') return 'Not checked by weight: not every flow was weighed.';
  const gap = `${closed.lossNg < 0 ? 'Gain' : 'Loss'} ${shown(Math.abs(closed.lossNg), step)} ± ${upTo(2 * closed.uG, step)}`;
  const usual = closed.finding === 'usual loss' ? ', no more than such work usually loses' : '';
  return `${gap}: ${VERDICT_WORDS[closed.verdict]}${usual}. A loss of ${upTo(closed.action.detectableG, step)} would have shown.`;
}

/** The owner's sentence on one set of suspects that the figures cannot tell apart; `nameOf` gives a flow or node its word. */
export function ownerSuspects({ suspects }: SuspectSet, nameOf: (id: string) => string = (id) => id): string {
  const weighings = suspects.flatMap((suspect) => (suspect.fault === 'weighing wrong' ? [nameOf(suspect.stream)] : []));
  const losses = suspects.filter((suspect) => suspect.fault === 'loss');
  const drifts = suspects.flatMap((suspect) => (suspect.fault === 'factor drifted' ? [nameOf(suspect.factor)] : []));
  const sizeG = Math.abs((suspects.find(({ fault }) => fault !== 'factor drifted') ?? suspects[0])?.size ?? 0);
  const gone = (loss: Hypothesis & { readonly size: number }) =>
    `${sizeG.toFixed(2)} g has ${loss.size < 0 ? 'come in unrecorded' : 'gone'}`;
  const said = [
    weighings.length > 0 ? `the weighing of ${list(weighings, 'or')} is wrong by ${sizeG.toFixed(2)} g` : '',
    ...losses.map((loss) => `${gone(loss)} at ${loss.fault === 'loss' ? list(loss.nodes.map(nameOf), 'and') : ''}`),
    drifts.length > 0 ? `${list(drifts, 'or')} has drifted` : '',
  ].filter((part) => part !== '');
  const which = suspects.length > 1 ? ': the figures cannot say which' : '';
  const text = `${said.join(', or ')}${which}. Weigh again.`;
  return text.charAt(0).toUpperCase() + text.slice(1);
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
export const ownerPeriod = ({ checked, byChance, flagged }: PeriodCount): string =>
  `${checked} checked; about ${byChance < 10 ? byChance.toFixed(1) : Math.round(byChance)} would show this by chance; ${flagged} did.`;

/** The owner's sentence on a chart that has given a signal; never shown with a person's name. */
export const ownerTrend = (where: string, since: string, size: number, runLength: number): string =>
  `${where}: losses have run above usual since ${since}, about ${size.toFixed(1)} of a usual spread per job. With no change, such a signal comes once in about ${Math.round(runLength)} jobs.`;

const SLIP_WORDS: Readonly<Record<SlipKind, (slip: Slip) => string>> = {
  'digits swapped': ({ text, instead }) => `digits swapped: ${text} written for ${instead}`,
  'decimal place': ({ text, instead }) => `decimal place: ${text} written for ${instead}`,
  'other unit': ({ text, instead }) => `other unit: ${text} was in ${instead}`,
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
  readonly balance: string;
  readonly calibratedOn: string;
}

/** The insurer's lines: readings, instruments, U, the detectable loss, what was not weighed, and the version of the arithmetic. */
export function insurerJob(readings: readonly ShownReading[], closed: Closure, unweighed: readonly string[]): readonly string[] {
  const step = stepOf(closed);
  const lines = readings.map(({ what, text, balance, calibratedOn }) => `${what}: ${text} on ${balance}, calibrated ${calibratedOn}.`);
  const gap = `In less out: ${shown(closed.lossNg, step)}, U = ${upTo(2 * closed.uG, step)} (k = 2): ${VERDICT_WORDS[closed.verdict]}.`;
  const seen = `A loss of ${upTo(closed.note.detectableG, step)} would have shown 95 times in 100.`;
  const not = unweighed.length === 0 ? 'Everything was weighed.' : `Not weighed: ${list(unweighed, 'and')}.`;
  return [
    ...lines,
    ...(closed.verdict === 'not checked' ? ['Not checked by weight.'] : [gap, seen]),
    not,
    `Reckoned with version ${closed.calcVersion}.`,
  ];
}
