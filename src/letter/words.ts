// What a record letter says, put together from one job's own entries: a sentence, the beam, the stones, what was removed and added.
import type { RETURNED_TO } from '../book/hand-back.ts';
import { METAL_WORDS, type MetalCode } from '../book/metals.ts';
import { SPECIES } from '../book/stone-words.ts';
import { markTyped, typed } from '../book/us-words.ts';
import { stonesWords } from '../book/words.ts';
import { WASTE_TOLD } from '../book/work.ts';
import type { EntryName } from '../entries/index.ts';
import { readCorrected } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import { entryType, readingsIn, type Values } from '../ledger/registry.ts';
import { correctedWords } from '../projections/corrected.ts';
import type { JobReckoning, Term } from '../projections/job-reckoning.ts';
import { countsThatDiffer, type JobStones, type Seat } from '../projections/job-stones.ts';
import type { StoneCheck } from '../projections/stone-checks.ts';
import type { Closure } from '../reckoning/closure.ts';
import { customerJob, type JobMasses } from '../reckoning/words.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { caratWords, netNg, readingWords } from '../weighing/reading.ts';
import { stoneSentence, sum, weightSentence } from './sentences.ts';
import { stoneTold } from './stone-told.ts';

export interface LetterStone {
  readonly seat: string;
  readonly what: string;
  /** Weights in the order they were read. */
  readonly weights: string;
  /** What these weights say, where it was weighed more than once; and what it is worth that they agree. */
  readonly told: string | null;
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
  /** What was agreed on dust and filings; null where nothing was. */
  readonly dust: string | null;
  /** The piece is not what it was: metal or a stone went in or out, or it is another size. */
  readonly changed: boolean;
  /** Why an insurer should hear of it before the customer does; empty when all agrees. */
  readonly disagreements: readonly string[];
}

/** What the letter needs to know of the job's things as they are now. */
export interface Standing {
  /** All that came in is here or has gone home: nothing is with somebody outside. */
  readonly isHere: boolean;
  /** The day of a moment, in the shop's own time. */
  readonly dayOf: (atMs: number) => string;
}

/** The letter of a job as its entries stand; what somebody typed is marked, so that the words of the country leave it alone. */
export function letterOf(kept: readonly Kept[], reckoned: JobReckoning, stones: JobStones, standing: Standing): Letter {
  const all = read(kept);
  const of = (...types: EntryName[]) => all.filter(({ type }) => types.some((one) => one === type));
  const agreed = of('work_agreed').at(-1)?.data;
  const received = of('piece_received');
  const returned = of('piece_returned', 'returned_with_exception');
  const came = of('job_opened').at(-1)?.data.channel === 'counter' ? 'at the counter' : 'as it came in';
  const home = new Map(of('old_parts_returned').map(({ data }) => [String(data.packet), WAYS_HOME[data.to as keyof typeof WAYS_HOME]]));
  const masses = { cutNg: massOf(of('metal_cut')), filingsNg: massOf(of('filings_gathered')), addedNg: massOf(of('metal_added')) };
  const known = { received: received.map(({ data }) => data), came, isGone: returned.length > 0, dayOf: standing.dayOf } as const;
  return {
    sentence: `${weightSentence(known, reckoned)} ${stoneSentence(stones, reckoned)}`.trim(),
    beam: beamOf(reckoned, masses, standing.isHere && stones.out === 0),
    stones: [...stones.seats.filter(({ id }) => id !== null).map((seat) => stoneOf(seat, home, reckoned.stones)), ...onlyCounted(stones)],
    removed: of('metal_cut', 'filings_gathered').map((one) => removedOf(one, agreed, home)),
    added: of('metal_added', 'stone_supplied').map(addedOf),
    dust: agreed ? WASTE_TOLD[agreed.dust as keyof typeof WASTE_TOLD] : null,
    changed:
      of(...CHANGING).length > 0 || (returned.length > 0 && stones.seats.some(({ where }) => where === 'out' || where === 'gone home')),
    disagreements: disagreementsIn(reckoned, stones),
  };
}
const CHANGING: readonly EntryName[] = ['metal_cut', 'metal_added', 'stone_supplied', 'piece_sized'];

interface Read {
  readonly type: string;
  readonly data: Values;
  readonly weight: string;
  /** Net; null where it was not weighed, or with something of unknown weight. */
  readonly ng: MassNg | null;
}
function read(kept: readonly Kept[]): readonly Read[] {
  return readCorrected(kept).map(({ leaf, data }) => {
    const entry = entryType(leaf.type, leaf.ver);
    const [first] = readingsIn(entry, data);
    const weight = first ? readingWords(first.reading) : 'not weighed';
    return { type: leaf.type, data: markTyped(entry.fields, data), weight, ng: first ? netNg(first.reading) : null };
  });
}

const massOf = (entries: readonly Read[]): MassNg => massNg(sum(entries.map(({ ng }) => ng ?? 0)));

type Moved = Omit<JobMasses, 'receivedNg'>;

function beamOf({ state, closed, cameIn, weights, corrected }: JobReckoning, moved: Moved, isAllHere: boolean): Letter['beam'] {
  const pans = weights.pans.flatMap(({ words, value }) => (value === null ? [] : [{ what: words, weight: value }]));
  const differ = closed && closed.verdict !== 'not checked' && weights.side !== 'none';
  const gap = differ ? [{ what: weights.side === 'less' ? 'missing' : 'more than came in', weight: weights.gap }] : [];
  return {
    state,
    tilt: weights.tilt,
    sentence: `${weighedWords(cameIn, closed, moved, isAllHere)} ${correctedWords(corrected)}`.trim(),
    numbers: cameIn ? [...pans, ...gap] : [],
  };
}

function weighedWords(cameIn: Term | null, closed: Closure | null, moved: Moved, isAllHere: boolean): string {
  if (!cameIn) return 'Not all of it was weighed as it came in, so nothing was checked by weight.';
  if (!closed) return 'No weighing can be held against it yet: the sum is still open.';
  return customerJob({ receivedNg: cameIn.ng, ...moved }, closed, isAllHere ? 'what we return' : 'what was weighed');
}

/** What was handed back, by the way it was said to go. */
const WAYS_HOME = {
  customer: 'went home with you',
  named: 'handed to somebody you named',
  post: 'sent to you by post',
} as const satisfies Readonly<Record<keyof typeof RETURNED_TO, string>>;

const WHERE: Readonly<Record<Seat['where'], string>> = {
  'in the piece': 'not taken out',
  set: 'taken out and set again',
  out: 'out of the piece now',
  empty: 'empty',
  'gone home': WAYS_HOME.customer,
};
const isSupplied = ({ events }: Seat): boolean => events.some(({ what }) => what === 'supplied');

const stoneOf = (seat: Seat, home: ReadonlyMap<string, string>, checks: readonly StoneCheck[]): LetterStone => {
  const check = checks.find(({ thing }) => thing === seat.id);
  const { id, says, stones, loose, where, events } = seat;
  const isInPart = loose > 0 && loose < stones;
  return {
    seat: says.seat === undefined ? 'Seat not noted' : typed(says.seat),
    what: `${stones > 1 ? `${stones} × ` : ''}${SPECIES[(says.species ?? 'unknown') as keyof typeof SPECIES]}`,
    weights:
      events.flatMap(({ stones: some, reading }) => (reading ? [`${ofThem(some, stones)}${caratWords(reading)}`] : [])).join(', then ') ||
      'not weighed loose',
    told: check ? stoneTold(check) : null,
    where:
      where === 'set' && isSupplied(seat)
        ? 'set in the piece'
        : where === 'gone home'
          ? (home.get(id ?? '') ?? WHERE[where])
          : `${isInPart ? `${loose} of ${stones} ` : ''}${WHERE[where]}`,
  };
};

/** A weight of some of a group is not the weight of all. */
const ofThem = (some: number, all: number): string => (some > 0 && some < all ? `${some} of them ` : '');

/** Stones that were counted as the pieces came in and have no seat of their own in the entries. */
function onlyCounted({ counts, seats }: JobStones): readonly LetterStone[] {
  const firsts = new Map([...counts].reverse().map(({ piece, counted }) => [piece, counted]));
  const own = seats.filter((seat) => seat.id !== null && !isSupplied(seat));
  const others = sum(firsts.values()) - sum(own.map(({ stones }) => stones));
  if (others <= 0) return [];
  const what = own.length === 0 ? stonesWords(others) : `${stonesWords(others)} more`;
  return [{ seat: 'Counted', what, weights: 'not weighed loose', told: null, where: 'not taken out' }];
}

const metalOf = ({ metal }: Values): string => METAL_WORDS[metal as MetalCode];

/** Where metal went, from where it is; what was agreed is added only where it went elsewhere. */
function removedOf({ type, data, weight }: Read, agreed: Values | undefined, home: ReadonlyMap<string, string>): Crossing {
  const what =
    type === 'filings_gathered'
      ? `Filings gathered: ${metalOf(data)}`
      : `Worn metal removed: ${[data.part, metalOf(data)].filter(Boolean).join(', ')}`;
  if (data.packet !== undefined) return { what, weight, where: home.get(String(data.packet)) ?? 'kept in a packet for you' };
  const terms = type === 'filings_gathered' ? agreed?.dust : agreed?.cutMetal;
  const credit = terms === 'credit' ? ', for your credit' : '';
  const otherwise = terms === 'customer' ? '; agreed was that it comes back to you' : '';
  return { what, weight, where: `kept by the shop${credit}${otherwise}` };
}

const addedOf = ({ type, data, weight }: Read): Crossing =>
  type === 'metal_added'
    ? { what: `Added: ${metalOf(data)}`, weight, where: data.packet ? 'your own metal' : 'from our stock' }
    : {
        what: `Added: ${SPECIES[data.species as keyof typeof SPECIES]}`,
        weight,
        where: data.whose === 'customer' ? 'your own stone' : 'supplied by us',
      };

function disagreementsIn({ state, stones }: JobReckoning, found: JobStones): readonly string[] {
  return [
    ...(state === 'off' ? ['The weights of this job do not agree.'] : []),
    ...countsThatDiffer(found).map(({ counted, reckoned }) => `${stonesWords(counted)} counted, ${reckoned} expected.`),
    ...(stones.some(({ verdict }) => verdict === 'does not agree') ? ['A stone does not weigh what it weighed before.'] : []),
  ];
}
