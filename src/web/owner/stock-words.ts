// The material balance of one metal in words: each period between two counts, and what was tested over all of them.
import type { StockBalance } from '../../projections/stock-periods.ts';
import { FALSE_ALARM_IN } from '../../reckoning/material-balance.ts';
import { gapOf, gapWords, toStep, upToStep } from '../../units/rounded.ts';

export interface BalanceShown {
  readonly says: readonly string[];
  readonly tested: string;
  readonly isOff: boolean;
}

/** Fine metal is told to a hundredth of a gram. */
const STEP_NG = 10_000_000;
const grams = (ng: number): string => toStep(ng, STEP_NG);
/** What is missing (positive) with two standard uncertainties, never less than the step. */
const missing = (ng: number, uG: number): string =>
  `${gapWords(gapOf(ng, STEP_NG), { more: 'missing', less: 'too much' })}, ± ${upToStep(Math.max(STEP_NG, 2e9 * uG), STEP_NG)}`;

/** What is told of the periods that ended from `fromMs` on; the running sum and the test begin at the first count. */
export function balanceShown({ periods, alarms }: StockBalance, fromMs: number, name: (id: string) => string, day: (ms: number) => string) {
  const says = periods.flatMap((one) => (one.to.atMs < fromMs ? [] : [periodWords(one, name(one.stock), day)]));
  return { says: says.reverse(), ...testedWords({ periods, alarms }, day) } satisfies BalanceShown;
}

function periodWords(one: StockBalance['periods'][number], name: string, day: (ms: number) => string): string {
  const { from, to, openingNg, inNg, outNg, closingNg, unweighed, missingNg, uG, runningNg, runningUG } = one;
  const counted = `${day(from.atMs)} to ${day(to.atMs)}, ${name}: ${grams(openingNg)} weighed, ${grams(inNg)} in, ${grams(outNg)} out, ${grams(closingNg)} weighed.`;
  const left = unweighed === 0 ? '' : ` ${unweighed} not weighed on the way, and in no sum.`;
  return `${counted}${left} Over the period: ${missing(missingNg, uG)}; since the first count: ${missing(runningNg, runningUG)}.`;
}

function testedWords({ periods, alarms }: StockBalance, day: (ms: number) => string): Omit<BalanceShown, 'says'> {
  const isOff = alarms.length > 0;
  if (periods.length === 0)
    return { tested: 'No stock of it was weighed whole twice, so nothing is tested. Weigh each whole once a month.', isOff };
  const over = `Tested over ${periods.length === 1 ? 'the one period' : `all ${periods.length} periods`} since the first count, each freed of the count it shares with its neighbour (Page’s test)`;
  const chance = `With nothing missing, weighing alone brings such a signal once in about ${FALSE_ALARM_IN} periods on each side.`;
  const words = { loss: 'more is missing', gain: 'more is there' } as const;
  const last = alarms.at(-1);
  const ended = last && periods[last.at];
  return {
    tested:
      last && ended
        ? `${over}: ${words[last.side]} than weighing explains, as of ${day(ended.to.atMs)}. ${chance}`
        : `${over}: no more is missing or too much than weighing explains. ${chance}`,
    isOff,
  };
}
