// The one sentence that a record letter begins with.
import { PIECE_KINDS } from '../book/pieces.ts';
import { stonesWords } from '../book/words.ts';
import type { Values } from '../ledger/registry.ts';
import { type History, isNoWeight, type Step } from '../projections/history.ts';
import type { JobReckoning, Term } from '../projections/job-reckoning.ts';
import type { JobStones } from '../projections/job-stones.ts';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../units/mass.ts';
import { netNg, type Reading, readingWords } from '../weighing/reading.ts';

/** Grams to the step they were read in. */
export const grams = ({ ng, stepNg }: Pick<Term, 'ng' | 'stepNg'>): string =>
  formatMassWithUnit(ng, 'g', decimalsOfStep(stepNg ?? massNg(10_000_000), 'g'));

/** How the pieces of a job came and went, as their own entries say. */
export interface CameAndWent {
  readonly received: readonly Values[];
  readonly came: 'at the counter' | 'as it came in';
  /** Some of them have gone home. */
  readonly isGone: boolean;
  /** The day of a moment, in milliseconds since 1970 UTC. */
  readonly dayOf: (atMs: number) => string;
}
type Weighed = Pick<JobReckoning, 'cameIn' | 'last' | 'history'>;

/** What it weighed as it came in and once it was cleaned, and what it weighed last: each as what it was, and a weight that was perhaps wet as no weight of its own. */
export function weightSentence(known: CameAndWent, reckoned: Weighed): string {
  const [only] = known.received;
  const many = known.received.length > 1;
  const kind = !many && only ? PIECE_KINDS[only.kind as keyof typeof PIECE_KINDS].toLowerCase() : '';
  const your = many ? 'Your pieces' : `Your ${kind === '' || kind === 'other' ? 'piece' : kind}`;
  const last = reckoned.cameIn && reckoned.last ? `, and ${lastWords(reckoned.last, known, reckoned.history)}` : '';
  return `${your} ${cameWords(known, reckoned)}${last}.${wentWet(known, reckoned.history)}`;
}

function cameWords({ received, came, dayOf }: CameAndWent, { cameIn, history }: Weighed): string {
  const many = received.length > 1;
  const readings = received.flatMap(({ weight }) => (weight === undefined ? [] : [weight as Reading]));
  const isWhole = readings.length === received.length && !readings.some((one) => isNoWeight(one));
  if (isWhole && cameIn) {
    const ng = massNg(sum(readings.map((one) => netNg(one) ?? 0)));
    const byEye = readings.some(({ basis }) => basis === 'estimate') ? ' by estimate' : '';
    return `weighed ${grams({ ...cameIn, ng })}${byEye} ${came}${ng === cameIn.ng ? '' : `, ${guessed(cameIn, history)} once cleaned`}`;
  }
  const read = readings.length > 0 && !many ? `read ${readings.map(readingWords).join()} ${came}, which is not its weight alone` : null;
  const unweighed =
    read ?? (many ? `were not all weighed ${came === 'as it came in' ? 'as they came in' : came}` : `was not weighed ${came}`);
  if (!cameIn) return unweighed;
  const steps = stepsOf(cameIn, history);
  const day = dayOf(Math.max(...steps.map(({ atMs }) => atMs)));
  return many
    ? `${unweighed}; with what was weighed later, the last on ${day}, they weighed ${guessed(cameIn, history)}`
    : `${unweighed}; it was first weighed on ${day}, ${steps[0]?.state}: ${guessed(cameIn, history)}`;
}

/** That all went home at a weight is known only where each was weighed dry as it went. */
function lastWords(last: Term, { received, isGone, dayOf }: CameAndWent, history: History): string {
  const many = received.length > 1;
  const weight = guessed(last, history);
  const steps = stepsOf(last, history);
  if (!isGone) return `${many ? 'weigh' : 'weighs'} now ${weight}`;
  if (steps.length === received.length && steps.every(({ state }) => state === 'returned')) return `went home at ${weight}`;
  const day = dayOf(Math.max(...steps.map(({ atMs }) => atMs)));
  return many ? `${weight} when they were weighed last, by ${day}` : `${weight} when it was weighed last, ${steps[0]?.state}, on ${day}`;
}

function wentWet({ received }: CameAndWent, { setAside }: History): string {
  const read = setAside.filter(({ state }) => state === 'returned').map(({ reading }) => readingWords(reading));
  const [they, their] = received.length > 1 ? ['they', 'their'] : ['it', 'its'];
  return read.length === 0 ? '' : ` As ${they} went home ${list(read)} was read, which is not ${their} weight alone.`;
}

const guessed = (term: Term, history: History): string =>
  stepsOf(term, history).some(({ reading }) => reading?.basis === 'estimate') ? `${grams(term)} by estimate` : grams(term);

/** The weighings that a term is the sum of. */
const stepsOf = ({ id }: Term, { streams }: History): readonly Step[] => streams.filter((step) => id.split(' + ').includes(step.id));

const list = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Its stones, counted as it came in and last; what was weighed twice is told only where all of it agrees. */
export function stoneSentence({ counts, inPieces, out }: JobStones, { stones }: JobReckoning): string {
  const firsts = new Map([...counts].reverse().map(({ piece, counted }) => [piece, counted]));
  const lasts = new Map(counts.map(({ piece, counted }) => [piece, counted]));
  const came = sum(firsts.values());
  if (firsts.size === 0) return '';
  const counted = `${came === 0 ? 'No stones' : stonesWords(came)} counted as it came in`;
  if (counts.length === firsts.size) {
    const now = `; by our entries ${inPieces ?? 0} in it now${out > 0 ? ` and ${out} out` : ''}`;
    return `${counted}${came + (inPieces ?? 0) + out === 0 ? '' : now}.`;
  }
  const twice = stones.filter(({ verdict }) => verdict !== null);
  const agree = twice.length > 0 && twice.every(({ verdict }) => verdict === 'agrees');
  return `${counted}, ${sum(lasts.values()) || 'none'} counted last.${agree ? ' The two weights of each that was weighed twice agree.' : ''}`;
}

/** Sum of counts or of nanograms. */
export const sum = (counts: Iterable<number>): number => [...counts].reduce((all, one) => all + one, 0);
