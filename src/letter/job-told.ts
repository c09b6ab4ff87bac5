// A job as it is told outside the house: the one projection that its slip, its letter and the screen turned to the customer read.
import { type PIECE_KINDS, pieceName } from '../book/pieces.ts';
import { allIn, typed, type Words, wordsIn } from '../book/us-words.ts';
import type { Kept } from '../ledger/leaf.ts';
import { holderOf, type Thing } from '../ledger/thing.ts';
import { type Grounds, reckonJob } from '../projections/job-reckoning.ts';
import { stonesOf } from '../projections/job-stones.ts';
import { photosIn } from '../projections/photos.ts';
import { dayIn, formatInstant, type Instant, instant } from '../units/dates.ts';
import { type SlipWords, slipWords } from './slip-words.ts';
import { type Moment, timelineOf } from './timeline.ts';
import { type Letter, letterOf } from './words.ts';

/** What is known of a job: its things, the job among them, and its entries in order. */
export interface JobKnown {
  readonly shop: {
    readonly name: string;
    readonly zone: string;
    readonly words: Words;
    /** Address, phone and email, a line each. */
    readonly reach: readonly string[];
    /** Every text of terms that was ever in force, by its name. */
    readonly termsTexts: ReadonlyMap<string, string>;
  };
  readonly job: Thing;
  readonly things: readonly Thing[];
  readonly kept: readonly Kept[];
}
/** What stands at the head and the foot of every paper of a job, and which entries are meant. */
export interface JobHead {
  readonly shop: string;
  readonly reach: readonly string[];
  readonly bag: string;
  readonly metal: string;
  /** The terms it was agreed under, a term a line; null where none were, or where their text is not in this ledger. */
  readonly terms: { readonly name: string; readonly lines: readonly string[] } | null;
  /** The numbers of its first entry and its last. */
  readonly first: number;
  readonly last: number;
}
/** What its slip says, in the words of the country. */
export interface JobSlip extends JobHead, Omit<SlipWords, 'leftAtMs' | 'metal'> {
  readonly left: string | null;
  /** What becomes of what leaves the piece. */
  readonly metalGoes: readonly string[];
}
export interface JobTold extends JobHead {
  readonly title: string;
  readonly issued: string;
  /** How many entries it has. */
  readonly entries: number;
  readonly letter: Letter;
  readonly photos: readonly { readonly hash: string; readonly at: string; readonly shows: string }[];
  readonly moments: readonly (Moment & { readonly at: string })[];
}

function jobHead({ shop, job, things, kept }: JobKnown): JobHead {
  const agreed = kept.findLast(({ leaf }) => leaf.type === 'work_agreed')?.leaf.data.terms;
  const text = shop.termsTexts.get(String(agreed));
  return {
    ...{ shop: shop.name, reach: shop.reach, bag: job.says.bag ?? '' },
    metal: piecesOf(things)[0]?.says.metal ?? 'other',
    terms: text === undefined ? null : { name: String(agreed), lines: text.split('\n') },
    ...{ first: kept[0]?.seq ?? 0, last: kept.at(-1)?.seq ?? 0 },
  };
}

/** What the slip of a job says, as its entries stand. */
export function jobSlip(known: JobKnown): JobSlip {
  const { shop, kept } = known;
  const { leftAtMs, pieces, work, metal, ...said } = slipWords(kept);
  const inWords = (text: string) => wordsIn(shop.words, text);
  return {
    ...said,
    ...jobHead(known),
    left: leftAtMs === null ? null : formatInstant(instant(leftAtMs), shop.zone),
    pieces: pieces.map(({ what, weight, condition }) => ({ what: inWords(what), weight, condition: condition && inWords(condition) })),
    work: work && inWords(work),
    metalGoes: metal.map(inWords),
  };
}

/** All that is told of a job at `now`; writers are told by their roles alone. */
export function jobTold(known: JobKnown, grounds: Grounds, roleOf: (person: string) => string | undefined, now: Instant): JobTold {
  const { shop, things, kept } = known;
  const byId = new Map(things.map((thing) => [thing.id as string, thing]));
  const day = (atMs: number) => formatInstant(instant(atMs), shop.zone);
  const stones = stonesOf(kept, (id) => byId.get(id)?.kind);
  const inWords = <T>(value: T): T => allIn(shop.words, value);
  return {
    ...jobHead(known),
    title: inWords(
      piecesOf(things)
        .map(({ says }) => pieceName((says.kind ?? 'other') as keyof typeof PIECE_KINDS, says.description ?? 'piece'))
        .join(', '),
    ),
    issued: day(now),
    entries: kept.length,
    letter: inWords(letterOf(kept, reckonJob(kept, grounds), stones, { isHere: isAllHere(things), dayOf: dayIn(shop.zone) })),
    photos: photosIn(kept)
      .filter(({ forCustomer }) => forCustomer)
      .map(({ hash, atMs, shows }) => ({ hash, shows, at: day(atMs) })),
    moments: timelineOf(kept, (id) => neutralName(byId.get(id))).map((moment) => ({
      ...inWords(moment),
      at: day(moment.atMs),
      by: wordsIn(shop.words, ROLE_WORDS[roleOf(moment.by) ?? ''] ?? 'in the shop'),
    })),
  };
}

/** Nothing of it is with somebody outside. */
function isAllHere(things: readonly Thing[]): boolean {
  const job = things.find(({ kind }) => kind === 'job');
  const away = things.filter(
    (thing) => ['piece', 'stone', 'packet'].includes(thing.kind) && !thing.gone && holderOf(thing, job) === 'outside',
  );
  return away.length === 0;
}

/** The same for a screen turned to the customer: what does not agree is being looked into, and is not said over the counter by a screen. */
export const jobFaced = (told: JobTold): JobTold =>
  told.letter.disagreements.length === 0 ? told : { ...told, letter: { ...told.letter, ...UNDER_REVIEW } };

const UNDER_REVIEW = {
  sentence: 'We are checking our entries on this piece.',
  beam: { state: 'open', tilt: 0, sentence: 'The weights are being checked.', numbers: [] },
  disagreements: [],
} as const;

const piecesOf = (things: readonly Thing[]): readonly Thing[] => things.filter(({ kind }) => kind === 'piece');

const ROLE_WORDS: Readonly<Record<string, string>> = { owner: 'by the jeweller', bench: 'at the bench', counter: 'at the counter' };

/** Words for the customer's own things; everything else is left without a name. */
function neutralName(thing: Thing | undefined): string {
  const { seat, species, description } = thing?.says ?? {};
  if (thing?.kind === 'piece') return description === undefined ? 'the piece' : typed(description);
  if (thing?.kind === 'stone') return [seat && typed(seat), species].filter(Boolean).join(', ') || 'a stone';
  if (thing?.kind === 'packet') return seat === undefined ? 'a packet' : typed(seat);
  return 'the job';
}
