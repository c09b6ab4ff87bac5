// The one sentence of a hand-back: what came in, what goes out, and about how much was added or taken.
import { correctionsIn, factsOf } from '../ledger/corrections.js';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../units/mass.js';
import { netNg } from '../weighing/reading.js';
/** "4.12 g in, 4.29 g out, about 0.17 g added."; says so where it was not weighed both times. */
export function inAndOut(kept, piece) {
  const corrections = correctionsIn(kept);
  const readings = kept
    .flatMap(({ leaf, hash }) => factsOf(leaf, corrections.get(hash)))
    .flatMap((one) => (one.fact === 'reading' && one.of === piece ? [one.reading] : []));
  const [came] = readings;
  const last = readings.at(-1);
  const [inNg, outNg] = [came && netNg(came), last && netNg(last)];
  if (!came || !last || came === last || inNg == null || outNg == null) return 'It was not weighed both in and out.';
  const words = (ng) => formatMassWithUnit(massNg(Math.abs(ng)), came.unit, decimalsOf(came));
  const change = outNg - inNg;
  const said = change === 0 ? 'the same as far as the balance can tell' : `about ${words(change)} ${change > 0 ? 'added' : 'taken out'}`;
  return `${words(inNg)} in, ${words(outNg)} out, ${said}.`;
}
const decimalsOf = ({ stepNg, unit }) => decimalsOfStep(stepNg ?? massNg(10_000_000), unit);
