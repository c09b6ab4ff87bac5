// The one sentence that a record letter begins with.
import { PIECE_KINDS } from '../book/pieces.js';
import { stonesWords } from '../book/words.js';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../units/mass.js';
/** Grams to the step they were read in. */
export const grams = ({ ng, stepNg }) => formatMassWithUnit(ng, 'g', decimalsOfStep(stepNg ?? massNg(10_000_000), 'g'));
/** What it weighed as it came in, and weighs now or weighed as it went home. */
export function weightSentence(received, { cameIn, last }, returned) {
  const [only] = received;
  const kind = received.length === 1 && only ? PIECE_KINDS[only.kind].toLowerCase() : '';
  const your = received.length > 1 ? 'Your pieces' : `Your ${kind === '' || kind === 'other' ? 'piece' : kind}`;
  if (!cameIn) return `${your} was not weighed as it came in.`;
  if (!last) return `${your} came in at ${grams(cameIn)}.`;
  return `${your} came in at ${grams(cameIn)} and ${returned ? 'went home at' : 'weighs now'} ${grams(last)}.`;
}
/** Its stones, counted as it came in and last; what was weighed twice is told only where all of it agrees. */
export function stoneSentence({ counts, inPieces, out }, { stones }) {
  const firsts = new Map([...counts].reverse().map(({ piece, counted }) => [piece, counted]));
  const lasts = new Map(counts.map(({ piece, counted }) => [piece, counted]));
  const came = sum(firsts.values());
  if (came === 0) return '';
  if (counts.length === firsts.size) {
    const now = `by our entries ${inPieces ?? 0} in it now${out > 0 ? ` and ${out} out` : ''}`;
    return `${stonesWords(came)} counted with you as it came in; ${now}.`;
  }
  const twice = stones.filter(({ compared }) => compared !== null);
  const agree = twice.length > 0 && twice.every(({ compared }) => compared?.verdict === 'agrees');
  return `${stonesWords(came)} counted as it came in, ${sum(lasts.values())} counted last.${agree ? ' Each that was weighed out and in agrees in weight.' : ''}`;
}
/** Sum of counts or of nanograms. */
export const sum = (counts) => [...counts].reduce((all, one) => all + one, 0);
