// What a record letter says, put together from one job's own entries: a sentence, the beam, the stones, what was removed and added.
import { METAL_WORDS, type MetalCode } from '../book/metals.ts';
import { SPECIES } from '../book/stone-words.ts';
import { stonesWords } from '../book/words.ts';
import { WASTE_TOLD } from '../book/work.ts';
import { correctionsIn, patchedData } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import { entryType, readingsIn, type Values } from '../ledger/registry.ts';
import type { JobReckoning, Term } from '../projections/job-reckoning.ts';
import { countsThatDiffer, type JobStones, type Seat } from '../projections/job-stones.ts';
import type { Closure } from '../reckoning/closure.ts';
import { customerJob } from '../reckoning/words.ts';
import { massNg } from '../units/mass.ts';
import { caratWords, netNg, readingWords } from '../weighing/reading.ts';
import { grams, stoneSentence, sum, weightSentence } from './sentences.ts';

export interface LetterStone {
  readonly seat: string;
  readonly what: string;
  /** Weights in the order they were read. */
  readonly weights: string;
  readonly where: string;
}
export interface Crossing {
  readonly what: string;
  readonly weight: string;
  readonly where: string;
}
export interface Letter {
  readonly sentence: string;
  readonly beam: {
    readonly state: JobReckoning['state'];
    readonly tilt: number;
    readonly sentence: string;
    readonly numbers: readonly { readonly what: string; readonly weight: string }[];
  };
  readonly stones: readonly LetterStone[];
  readonly removed: readonly Crossing[];
  readonly added: readonly Crossing[];
  readonly dust: string | null;
  /** Why an insurer should hear of it before the customer does; empty when all agrees. */
  readonly disagreements: readonly string[];
}
type Of<T extends string> = readonly { readonly type: T; readonly data: Values; readonly weight: string; readonly ng: number }[];

/** The letter of a job as its entries stand. */
export function letterOf(kept: readonly Kept[], reckoned: JobReckoning, stones: JobStones): Letter {
  const all = read(kept);
  const of = <T extends string>(...types: T[]) => all.filter(({ type }) => types.includes(type as T)) as unknown as Of<T>;
  const agreed = of('work_agreed').at(-1)?.data;
  const received = of('piece_received').map(({ data }) => data);
  const returned = of('piece_returned', 'returned_with_exception').length > 0;
  return {
    sentence: `${weightSentence(received, reckoned, returned)} ${stoneSentence(stones, reckoned)}`.trim(),
    beam: beamOf(reckoned, { cutNg: sum(of('metal_cut').map(({ ng }) => ng)), addedNg: sum(of('metal_added').map(({ ng }) => ng)) }),
    stones: stones.seats.filter(({ id }) => id !== null).map((seat) => stoneOf(seat)),
    removed: of('metal_cut').map(({ data, weight }) => ({ what: partOf(data), weight, where: whereCutWent(data, agreed) })),
    added: of('metal_added', 'stone_supplied').map(({ type, data, weight }) =>
      type === 'metal_added'
        ? { what: METAL_WORDS[data.metal as MetalCode], weight, where: data.packet ? 'your own gold' : 'from our stock' }
        : { what: SPECIES[data.species as keyof typeof SPECIES], weight, where: 'supplied' },
    ),
    dust: agreed ? WASTE_TOLD[agreed.dust as keyof typeof WASTE_TOLD] : null,
    disagreements: disagreementsIn(reckoned, stones),
  };
}

function read(kept: readonly Kept[]) {
  const corrections = correctionsIn(kept);
  return kept.map(({ leaf, hash }) => {
    const data = patchedData(leaf, corrections.get(hash));
    const [first] = readingsIn(entryType(leaf.type, leaf.ver), data);
    return { type: leaf.type, data, weight: first ? readingWords(first.reading) : 'not weighed', ng: (first && netNg(first.reading)) ?? 0 };
  });
}

function beamOf(
  { state, closed, cameIn, last, expected, removed, added, weights }: JobReckoning,
  of: { readonly cutNg: number; readonly addedNg: number },
): Letter['beam'] {
  const like = (ng: number) => grams({ ng: massNg(ng), ...(cameIn?.stepNg === undefined ? {} : { stepNg: cameIn.stepNg }) });
  const gap = closed && closed.verdict !== 'not checked' ? Math.abs(closed.lossNg) : null;
  const numbers = [
    cameIn && { what: 'came in', weight: grams(cameIn) },
    !last && expected && removed.length + added.length > 0 && { what: 'in it by reckoning', weight: like(expected.ng) },
    last && { what: 'weighed last', weight: grams(last) },
    gap !== null && { what: 'difference not accounted for', weight: like(gap) },
  ].filter((one) => one !== null && one !== false);
  return { state, tilt: weights.tilt, sentence: weighedWords(cameIn, closed, of), numbers };
}

function weighedWords(
  cameIn: Term | null,
  closed: Closure | null,
  { cutNg, addedNg }: { readonly cutNg: number; readonly addedNg: number },
): string {
  if (!cameIn) return 'It was not weighed, so nothing was checked by weight.';
  if (!closed) return 'It has not been weighed again since: the sum is still open.';
  return customerJob({ receivedNg: cameIn.ng, cutNg: massNg(cutNg), addedNg: massNg(addedNg) }, closed);
}

const stoneOf = ({ says, stones, where, events }: Seat): LetterStone => ({
  seat: says.seat ?? 'not noted',
  what: `${stones > 1 ? `${stones} × ` : ''}${SPECIES[(says.species ?? 'unknown') as keyof typeof SPECIES]}`,
  weights: events.flatMap(({ reading }) => (reading ? [caratWords(reading)] : [])).join(', then ') || 'not weighed loose',
  where:
    where === 'in the piece'
      ? 'not taken out'
      : where === 'set'
        ? 'taken out and set again'
        : where === 'out'
          ? 'out of the piece now'
          : where,
});

const partOf = ({ part, metal }: Values): string => [part, METAL_WORDS[metal as MetalCode]].filter(Boolean).join(', ');

function whereCutWent({ packet }: Values, agreed: Values | undefined): string {
  if (packet !== undefined) return 'kept in a packet for you';
  return agreed ? WASTE_TOLD[agreed.cutMetal as keyof typeof WASTE_TOLD] : 'not agreed';
}

function disagreementsIn({ state, stones }: JobReckoning, found: JobStones): readonly string[] {
  return [
    ...(state === 'off' ? ['The weights of this job do not agree.'] : []),
    ...countsThatDiffer(found).map(({ counted, reckoned }) => `${stonesWords(counted)} counted, ${reckoned} expected.`),
    ...(stones.some(({ compared }) => compared?.verdict === 'does not agree') ? ['A stone does not weigh what it weighed before.'] : []),
  ];
}
