// The one sentence of a hand-back: what was read as it came in, what was read last, and how much more or less that is.

import type { Kept } from '../ledger/leaf.ts';
import { correctedFigures, correctedWords } from '../projections/corrected.ts';
import { isNoWeight, WORKED } from '../projections/history.ts';
import { type Told, told } from '../projections/told.ts';
import { gapOf, gapWords, toStep } from '../units/rounded.ts';
import { netNg, type Reading } from '../weighing/reading.ts';

interface Read {
  readonly reading: Reading;
  readonly state: string;
  readonly atMs: number;
  /** Something went into the piece or out of it after. */
  readonly isPassed: boolean;
}
const DONE: readonly string[] = ['finished', 'returned'];

/** "4.12 g in, 4.29 g out, 0.17 g more."; a weight that was not read dry, before the work or on the way is no weight out, and is said as what it was. Why it is more or less is not known from the two. */
export const inAndOut = (kept: readonly Kept[], piece: string, dayOf: (atMs: number) => string): string =>
  `${weighedInAndOut(kept, piece, dayOf)} ${correctedWords(correctedFigures(kept))}`.trim();

function weighedInAndOut(kept: readonly Kept[], piece: string, dayOf: (atMs: number) => string): string {
  const readings = readingsOf(told(kept), piece);
  const dry = readings.filter(({ reading, state }) => !isNoWeight(reading, state));
  const [came] = dry;
  const last = dry.at(-1);
  if (!came || !last || WORKED.includes(came.state) || !WORKED.includes(last.state)) return 'It was not weighed dry both in and out.';
  const { unit } = came.reading;
  const words = (ng: number) => toStep(ng, stepNg, unit);
  const [inNg, outNg] = [netNg(came.reading) ?? 0, netNg(last.reading) ?? 0];
  const stepNg = Math.max(came.reading.stepNg ?? 0, last.reading.stepNg ?? 0);
  if (last !== readings.at(-1) || last.isPassed || !DONE.includes(last.state))
    return `${words(inNg)} in; it was not weighed dry on its way out. Weighed last, ${last.state}, on ${dayOf(last.atMs)}: ${words(outNg)}.`;
  const said = gapWords(gapOf(outNg - inNg, stepNg, unit), { more: 'more', less: 'less' });
  return `${words(inNg)} in, ${words(outNg)} out, ${said}.`;
}

function readingsOf(entries: readonly Told[], piece: string): readonly Read[] {
  const seen = entries.flatMap(({ atMs, facts }) => facts.map((one) => ({ atMs, one })));
  return seen.flatMap(({ atMs, one }, at): Read[] => {
    if (one.fact !== 'reading' || one.of !== piece) return [];
    const isPassed = seen
      .slice(at + 1)
      .some(({ one: next }) => next.fact === 'flow' && (next.to === piece || (next.from === piece && next.to !== 'outside')));
    return [{ reading: one.reading, state: one.state, atMs, isPassed }];
  });
}
