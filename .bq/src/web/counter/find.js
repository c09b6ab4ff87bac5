// Find: a bag code goes straight to its job; anything else is looked for in what entries say, and in people's names and telephones.
import { Hono } from 'hono';
import { FindView } from '../../../views/find.js';
import { findThings, thingAt, thingsAt } from '../../queries/things.js';
import { readBagCode } from '../../units/ids.js';
import { goTo, respond } from '../form/negotiate.js';
import { wordsFor } from '../job/words.js';
export const find = (web) => {
  const app = new Hono();
  app.get('/find', async (c) => {
    const words = (c.req.query('q') ?? '').normalize('NFC').trim().slice(0, 100);
    const code = readBagCode(words);
    const bag = code && (await thingAt(web.store, code, 'bag'));
    if (bag) return goTo(c, `/jobs/${bag.stream}`);
    const things = await findThings(web.store, words);
    const people = findPeople(web, words);
    const bags = await bagsOf(web, [...things.map(({ stream }) => stream), ...people.map(({ job }) => job)]);
    const hits = [
      ...people
        .filter(({ job }) => bags.has(job))
        .map(({ job, name }) => ({ href: `/jobs/${job}`, words: name, kind: 'customer', bag: bags.get(job) ?? '' })),
      ...things
        .filter(({ kind, stream }) => kind !== 'bag' || !things.some(({ id }) => id === stream))
        .map((thing) => ({
          href: `/things/${thing.id}`,
          words: wordsFor(web, thing),
          kind: thing.kind,
          bag: bags.get(thing.stream) ?? '',
        })),
    ];
    return respond(c, { title: 'Find', json: { words, hits }, body: FindView({ words, hits }) });
  });
  return app;
};
async function bagsOf(web, jobs) {
  return new Map((await thingsAt(web.store, jobs)).map(({ id, says }) => [id, says.bag ?? '']));
}
const HITS_MAX = 50;
/** Names are sealed in the file and looked through in memory. */
function findPeople(web, words) {
  if (words.length < 2) return [];
  return web.directory
    .search(words, HITS_MAX)
    .flatMap((id) => web.directory.jobsOf(id).map((job) => ({ job, name: web.directory.nameOf(id) ?? 'no longer known' })))
    .slice(0, HITS_MAX);
}
