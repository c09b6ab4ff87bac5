// The one sentence of a hand-back: what was read as it came in, what was read last, and how much more or less that is.
import { isWet } from '../book/work.ts';
import { correctionsIn, factsOf } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../units/mass.ts';
import { netNg, type Reading } from '../weighing/reading.ts';

/** "4.12 g in, 4.29 g out, 0.17 g more."; says so where it was not weighed dry both times. Why it is more or less is not known from the two. */
export function inAndOut(kept: readonly Kept[], piece: string): string {
  const corrections = correctionsIn(kept);
  const readings = kept
    .flatMap(({ leaf, hash }) => factsOf(leaf, corrections.get(hash)))
    .flatMap((one) => (one.fact === 'reading' && one.of === piece && isFit(one) ? [one.reading] : []));
  const [came] = readings;
  const last = readings.at(-1);
  const [inNg, outNg] = [came && netNg(came), last && netNg(last)];
  if (!came || !last || came === last || inNg == null || outNg == null) return 'It was not weighed dry both in and out.';
  const words = (ng: number) => formatMassWithUnit(massNg(Math.abs(ng)), came.unit, decimalsOf(came));
  const change = outNg - inNg;
  const said = change === 0 ? 'the same as far as the balance can tell' : `${words(change)} ${change > 0 ? 'more' : 'less'}`;
  return `${words(inNg)} in, ${words(outNg)} out, ${said}.`;
}

/** As it was received it is told as it was read; anything later only where it was dry. */
const isFit = ({ state, reading }: { readonly state: string; readonly reading: Reading }) =>
  state === 'as received' || !isWet(state, reading);
const decimalsOf = ({ stepNg, unit }: Reading): number => decimalsOfStep(stepNg ?? massNg(10_000_000), unit);
