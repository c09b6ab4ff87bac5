// A job as it is told outside the house: the one projection that its slip, its letter and the screen turned to the customer read.
import { stonesWords } from '../book/words.js';
import { reckonJob } from '../projections/job-reckoning.js';
import { stonesOf } from '../projections/job-stones.js';
import { photosIn } from '../projections/photos.js';
import { formatCivilDate, formatInstant, instant } from '../units/dates.js';
import { timelineOf } from './timeline.js';
import { letterOf } from './words.js';
/** What stands at the head of every paper of a job. */
export function jobHead({ shop, job, things, kept }) {
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
export function jobTold(known, grounds, roleOf, now) {
  const { shop, things, kept } = known;
  const byId = new Map(things.map((thing) => [thing.id, thing]));
  const day = (atMs) => formatInstant(instant(atMs), shop.zone);
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
export const jobFaced = (told) =>
  told.letter.disagreements.length === 0 ? told : { ...told, letter: { ...told.letter, ...UNDER_REVIEW } };
const UNDER_REVIEW = {
  sentence: 'We are checking our entries on this piece.',
  beam: { state: 'open', tilt: 0, sentence: 'The weights are being checked.', numbers: [] },
  disagreements: [],
};
const piecesOf = (things) => things.filter(({ kind }) => kind === 'piece');
const pieceWords = (words, stones) => (stones === undefined ? words : `${words}, ${stones === 0 ? 'no stones' : stonesWords(stones)}`);
const ROLE_WORDS = { owner: 'by the jeweller', bench: 'at the bench', counter: 'at the counter' };
/** Words for the customer's own things; everything else is left without a name. */
function neutralName(thing) {
  if (thing?.kind === 'piece') return thing.says.description ?? 'the piece';
  if (thing?.kind === 'stone') return [thing.says.seat, thing.says.species].filter(Boolean).join(', ') || 'a stone';
  if (thing?.kind === 'packet') return thing.says.seat ?? 'a packet';
  return 'the job';
}
