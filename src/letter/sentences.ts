// The one sentence that a record letter begins with.
import { PIECE_KINDS } from '../book/pieces.ts';
import { stonesWords } from '../book/words.ts';
import type { Values } from '../ledger/registry.ts';
import type { Step } from '../projections/history.ts';
import type { JobReckoning, Term } from '../projections/job-reckoning.ts';
import type { JobStones } from '../projections/job-stones.ts';
import { decimalsOfStep, formatMassWithUnit, type MassNg, massNg } from '../units/mass.ts';
import type { Reading } from '../weighing/reading.ts';

/** Grams to the step they were read in. */
export const grams = ({ ng, stepNg }: Pick<Term, 'ng' | 'stepNg'>): string =>
  formatMassWithUnit(ng, 'g', decimalsOfStep(stepNg ?? massNg(10_000_000), 'g'));

/** Where the last weight of all the pieces was read: of pieces that are all here, of pieces of which some have gone, or as all of them went home. */
export type LastRead = 'here' | 'before' | 'going home';

/** What it weighed as it came in and once it was cleaned, and what it weighed last; `arrivalNg` is null where it was not weighed as it came in, `came` says how it came. */
export function weightSentence(
  received: readonly Values[],
  { arrivalNg, came }: { readonly arrivalNg: MassNg | null; readonly came: 'at the counter' | 'as it came in' },
  { cameIn, last, history }: Pick<JobReckoning, 'cameIn' | 'last' | 'history'>,
  read: LastRead,
): string {
  const [only] = received;
  const kind = received.length === 1 && only ? PIECE_KINDS[only.kind as keyof typeof PIECE_KINDS].toLowerCase() : '';
  const your = received.length > 1 ? 'Your pieces' : `Your ${kind === '' || kind === 'other' ? 'piece' : kind}`;
  const many = received.length > 1;
  const unweighed = `${your} ${many ? 'were not all' : 'was not'} weighed`;
  if (!cameIn) return `${unweighed} as ${many ? 'they' : 'it'} came in.`;
  const lastly = {
    here: (weight: string) => `${many ? 'weigh' : 'weighs'} now ${weight}`,
    before: (weight: string) => `${weight} when ${many ? 'they were' : 'it was'} weighed last`,
    'going home': (weight: string) => `went home at ${weight}`,
  };
  const guessed = (term: Term) => (isGuess(term, history.streams) ? `${grams(term)} by estimate` : grams(term));
  const now = last ? `, and ${lastly[read](guessed(last))}` : '';
  if (arrivalNg === null) return `${unweighed} ${came}; ${many ? 'they' : 'it'} weighed ${guessed(cameIn)} once cleaned${now}.`;
  const cleaned = arrivalNg === cameIn.ng ? '' : `, ${guessed(cameIn)} once cleaned`;
  const byEye = received.some(({ weight }) => (weight as Reading | undefined)?.basis === 'estimate') ? ' by estimate' : '';
  return `${your} weighed ${grams({ ...cameIn, ng: arrivalNg })}${byEye} ${came}${cleaned}${now}.`;
}

/** Whether any of the readings of a term was nobody's reading of a balance. */
const isGuess = ({ id }: Term, streams: readonly Step[]): boolean =>
  streams.some((step) => step.reading?.basis === 'estimate' && id.split(' + ').includes(step.id));

/** Its stones, counted as it came in and last; what was weighed twice is told only where all of it agrees. */
export function stoneSentence({ counts, inPieces, out }: JobStones, { stones }: JobReckoning): string {
  const firsts = new Map([...counts].reverse().map(({ piece, counted }) => [piece, counted]));
  const lasts = new Map(counts.map(({ piece, counted }) => [piece, counted]));
  const came = sum(firsts.values());
  if (came === 0) return '';
  if (counts.length === firsts.size) {
    const now = `by our entries ${inPieces ?? 0} in it now${out > 0 ? ` and ${out} out` : ''}`;
    return `${stonesWords(came)} counted as it came in; ${now}.`;
  }
  const twice = stones.filter(({ compared }) => compared !== null);
  const agree = twice.length > 0 && twice.every(({ compared }) => compared?.verdict === 'agrees');
  return `${stonesWords(came)} counted as it came in, ${sum(lasts.values())} counted last.${agree ? ' The two weights of each that was weighed twice agree.' : ''}`;
}

/** Sum of counts or of nanograms. */
export const sum = (counts: Iterable<number>): number => [...counts].reduce((all, one) => all + one, 0);
