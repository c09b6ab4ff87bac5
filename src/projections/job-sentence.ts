// The owner's sentence on a job: what came in, what is known of it by now, and what of that was corrected after it was written.
import type { Closure, Weighing } from '../reckoning/closure.ts';
import { ownerJob, VERDICT_WORDS } from '../reckoning/words.ts';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../units/mass.ts';
import type { Chain, Term } from './chain.ts';
import { type CorrectedFigure, correctedWords } from './corrected.ts';
import type { History } from './history.ts';
import { beganOf } from './job-weights.ts';

interface Weighed extends Pick<Chain, 'expected' | 'unknownSince'> {
  readonly chain: Chain;
  readonly cameIn: Term | null;
  readonly closed: Closure | null;
  readonly last: Term | null;
  readonly history: History;
}

/** One sentence on the weights of a job; what was corrected stands after it with both figures. */
export function jobSentence(weighed: Weighed, corrected: readonly CorrectedFigure[]): string {
  return `${weighedWords(weighed)} ${correctedWords(corrected)}`.trim();
}

function weighedWords({ cameIn, history, expected, unknownSince, closed, last, chain }: Weighed): string {
  const dry = history.setAside.some(({ of }) => history.pieces.has(of)) ? ' dry' : '';
  if (!cameIn) return `Not weighed${dry} as it came in: nothing can be checked by weight.`;
  const words = (ng: number, of: Weighing) => formatMassWithUnit(massNg(ng), 'g', decimalsOfStep(of.stepNg ?? massNg(10_000_000), 'g'));
  const came = `${words(cameIn.ng, cameIn)} ${beganOf(chain)}.`;
  const now = expected && (chain.movedSince || !last) ? ` By reckoning ${words(expected.ng, cameIn)} is in the piece.` : '';
  if (unknownSince !== null) {
    const again = last ? ` Weighed again since, at entry ${last.seq}: ${words(last.ng, last)}.` : '';
    return `${came} What is left cannot be known since entry ${unknownSince}, which was not weighed.${again}`;
  }
  if (!closed) return expected && expected.ng !== cameIn.ng ? `${came}${now}` : came;
  if (closed.verdict === 'not checked') return `${came} ${VERDICT_WORDS['not checked']}.`;
  return `${ownerJob(closed)}${chain.movedSince ? now : ''}`;
}
