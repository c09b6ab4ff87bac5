// The one sentence that a record letter begins with.
import { PIECE_KINDS } from '../book/pieces.ts';
import { stonesWords } from '../book/words.ts';
import type { Values } from '../ledger/registry.ts';
import type { JobReckoning, Term } from '../projections/job-reckoning.ts';
import type { JobStones } from '../projections/job-stones.ts';
import { decimalsOfStep, formatMassWithUnit, type MassNg, massNg } from '../units/mass.ts';

/** Grams to the step they were read in. */
export const grams = ({ ng, stepNg }: Pick<Term, 'ng' | 'stepNg'>): string =>
  formatMassWithUnit(ng, 'g', decimalsOfStep(stepNg ?? massNg(10_000_000), 'g'));

/** What it weighed at the counter and once it was cleaned, and weighs now or weighed as it went home; `counterNg` is null where it was not weighed at the counter. */
export function weightSentence(
  received: readonly Values[],
  counterNg: MassNg | null,
  { cameIn, last }: Pick<JobReckoning, 'cameIn' | 'last'>,
  returned: boolean,
): string {
  const [only] = received;
  const kind = received.length === 1 && only ? PIECE_KINDS[only.kind as keyof typeof PIECE_KINDS].toLowerCase() : '';
  const your = received.length > 1 ? 'Your pieces' : `Your ${kind === '' || kind === 'other' ? 'piece' : kind}`;
  if (!cameIn) return `${your} was not weighed as it came in.`;
  const now = last ? `, and ${returned ? 'went home at' : received.length > 1 ? 'weigh now' : 'weighs now'} ${grams(last)}` : '';
  if (counterNg === null) return `${your} was not weighed at the counter; it weighed ${grams(cameIn)} once cleaned${now}.`;
  const cleaned = counterNg === cameIn.ng ? '' : `, ${grams(cameIn)} once cleaned`;
  return `${your} weighed ${grams({ ...cameIn, ng: counterNg })} at the counter${cleaned}${now}.`;
}

/** Its stones, counted as it came in and last; what was weighed twice is told only where all of it agrees. */
export function stoneSentence({ counts, inPieces, out }: JobStones, { stones }: JobReckoning): string {
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
  return `${stonesWords(came)} counted as it came in, ${sum(lasts.values())} counted last.${agree ? ' The two weights of each that was weighed twice agree.' : ''}`;
}

/** Sum of counts or of nanograms. */
export const sum = (counts: Iterable<number>): number => [...counts].reduce((all, one) => all + one, 0);
