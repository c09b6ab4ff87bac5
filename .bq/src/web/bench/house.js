import { holderOf, placeOf } from '../../ledger/thing.js';
import { thingsInHouse } from '../../queries/jobs.js';
import { civilDateOf, formatCivilDate } from '../../units/dates.js';
import { wordsFor } from '../job/words.js';
import { thingsOf } from '../session/context.js';
/** Jobs that are neither closed nor withdrawn, by the day they were promised for; those without a day last. */
export async function jobsInHouse(web, policy) {
  const all = await thingsInHouse(web.store);
  const byJob = new Map();
  for (const thing of all) byJob.set(thing.stream, [...(byJob.get(thing.stream) ?? []), thing]);
  const places = new Map((await thingsOf(web, 'place')).map((place) => [place.id, place]));
  const today = civilDateOf(web.clock(), policy.zone);
  return all
    .filter(({ kind }) => kind === 'job')
    .map((job) => inHouse(web, job, byJob.get(job.id) ?? [], places, today))
    .sort((a, b) => (a.job.promise ?? '9999').localeCompare(b.job.promise ?? '9999') || a.job.begun - b.job.begun);
}
function inHouse(web, job, things, places, today) {
  const pieces = things.filter(({ kind, gone }) => kind === 'piece' && !gone);
  const [first] = pieces;
  const holder = holderOf(first ?? job, job);
  const place = placeOf(first ?? job, job);
  const taken = Math.max(first?.custody?.seq ?? -1, job.custody?.seq ?? -1);
  const put = Math.max(first?.place?.seq ?? -1, job.place?.seq ?? -1);
  return {
    ...{ job, things, pieces, holder, place },
    bag: job.says.bag ?? '',
    metal: first?.says.metal ?? 'other',
    what: pieces.map((piece) => wordsFor(web, piece)).join(', ') || 'nothing received yet',
    customer: web.directory.nameOf(web.directory.customerOf(job.id) ?? '') ?? '',
    promised: job.promise ? formatCivilDate(job.promise) : '',
    late: job.promise !== undefined && job.promise < today && job.status !== 'finished',
    holderWords: holderWords(web, holder),
    placeWords: place ? (places.get(place)?.says.name ?? '') : '',
    inSafe: put > taken && holder !== 'outside' && isInSafe(place, places),
  };
}
export const holderWords = (web, holder) =>
  holder === 'outside'
    ? 'somebody outside'
    : holder === 'customer'
      ? 'the customer'
      : holder
        ? (web.directory.nameOf(holder) ?? 'somebody')
        : '';
const NESTED_MAX = 5;
/** A safe, a tray, or a container kept in one of them. */
export function isInSafe(id, places) {
  let place = id === null ? undefined : places.get(id);
  for (let step = 0; place && step < NESTED_MAX; step++) {
    if (place.says.kind === 'safe' || (place.says.kind === 'tray' && place.says.inside === undefined)) return true;
    place = places.get(place.says.inside ?? '');
  }
  return false;
}
