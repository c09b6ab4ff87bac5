// A job as it is told outside the house: the one projection that its slip, its letter and the screen turned to the customer read.
import { stonesWords } from '../book/words.ts';
import type { Kept } from '../ledger/leaf.ts';
import type { Thing } from '../ledger/thing.ts';
import { type Grounds, reckonJob } from '../projections/job-reckoning.ts';
import { stonesOf } from '../projections/job-stones.ts';
import { photosIn } from '../projections/photos.ts';
import { formatCivilDate, formatInstant, type Instant, instant } from '../units/dates.ts';
import { type Moment, timelineOf } from './timeline.ts';
import { type Letter, letterOf } from './words.ts';

/** What is known of a job: its things, the job among them, and its entries in order. */
export interface JobKnown {
  readonly shop: { readonly name: string; readonly zone: string };
  readonly job: Thing;
  readonly things: readonly Thing[];
  readonly kept: readonly Kept[];
}
/** Whose it is said to be on paper, what it is, and which entries are meant. */
export interface JobHead {
  readonly shop: string;
  readonly bag: string;
  readonly metal: string;
  /** Each piece with its stones, as it was received. */
  readonly pieces: readonly string[];
  /** The day it is promised for. */
  readonly promise: string | null;
  /** The numbers of its first entry and its last. */
  readonly first: number;
  readonly last: number;
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

/** What stands at the head of every paper of a job. */
export function jobHead({ shop, job, things, kept }: JobKnown): JobHead {
  const pieces = piecesOf(things);
  return {
    shop: shop.name,
    bag: job.says.bag ?? '',
    metal: pieces[0]?.says.metal ?? 'other',
    pieces: pieces.map(({ says, stones }) => pieceWords(says.description ?? 'piece', stones)),
    promise: job.promise ? formatCivilDate(job.promise) : null,
    first: kept[0]?.seq ?? 0,
    last: kept.at(-1)?.seq ?? 0,
  };
}

/** All that is told of a job at `now`; writers are told by their roles alone. */
export function jobTold(known: JobKnown, grounds: Grounds, roleOf: (person: string) => string | undefined, now: Instant): JobTold {
  const { shop, things, kept } = known;
  const byId = new Map(things.map((thing) => [thing.id as string, thing]));
  const day = (atMs: number) => formatInstant(instant(atMs), shop.zone);
  const stones = stonesOf(kept, (id) => byId.get(id)?.kind);
  return {
    ...jobHead(known),
    title: piecesOf(things)
      .map(({ says }) => says.description)
      .join(', '),
    issued: day(now),
    entries: kept.length,
    letter: letterOf(kept, reckonJob(kept, grounds), stones),
    photos: photosIn(kept)
      .filter(({ forCustomer }) => forCustomer)
      .map(({ hash, atMs, shows }) => ({ hash, shows, at: day(atMs) })),
    moments: timelineOf(kept, (id) => neutralName(byId.get(id))).map((moment) => ({
      ...moment,
      at: day(moment.atMs),
      by: ROLE_WORDS[roleOf(moment.by) ?? ''] ?? 'in the shop',
    })),
  };
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

const pieceWords = (words: string, stones: number | undefined): string =>
  stones === undefined ? words : `${words}, ${stones === 0 ? 'no stones' : stonesWords(stones)}`;

const ROLE_WORDS: Readonly<Record<string, string>> = { owner: 'by the jeweller', bench: 'at the bench', counter: 'at the counter' };

/** Words for the customer's own things; everything else is left without a name. */
function neutralName(thing: Thing | undefined): string {
  if (thing?.kind === 'piece') return thing.says.description ?? 'the piece';
  if (thing?.kind === 'stone') return [thing.says.seat, thing.says.species].filter(Boolean).join(', ') || 'a stone';
  if (thing?.kind === 'packet') return thing.says.seat ?? 'a packet';
  return 'the job';
}
