// Find: a bag code goes straight to its job; anything else is looked for in what entries say, and in people's names.
import { Hono } from 'hono';
import { FindView } from '../../views/find.tsx';
import { thingOf } from '../store/shelf.ts';
import { readBagCode } from '../units/ids.ts';
import type { Env, Resource, Web } from './context.ts';
import { goTo, respond } from './negotiate.ts';
import { wordsFor } from './words.ts';

export interface Hit {
  readonly href: string;
  readonly words: string;
  readonly kind: string;
}

export const find: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/find', async (c) => {
    const words = (c.req.query('q') ?? '').normalize('NFC').trim().slice(0, 100);
    const code = readBagCode(words);
    const [bag] = code ? await web.store.read('SELECT stream FROM thing WHERE id = ?', [code]) : [];
    if (bag) return goTo(c, `/jobs/${bag.stream}`);
    const hits = [...(await findThings(web, words)), ...findPeople(web, words)];
    return respond(c, { title: 'Find', json: { words, hits }, body: FindView({ words, hits }) });
  });
  return app;
};

async function findThings(web: Web, words: string): Promise<readonly Hit[]> {
  if (words.length < 3) return [];
  const quoted = `"${words.replaceAll('"', '""')}"`;
  const rows = await web.store.read(
    'SELECT state FROM find JOIN thing ON thing.n = find.rowid WHERE find MATCH ? ORDER BY thing.n DESC LIMIT 50',
    [quoted],
  );
  return rows.map(thingOf).map((thing) => ({ href: `/things/${thing.id}`, words: wordsFor(web, thing), kind: thing.kind }));
}

/** Names are sealed in the file and looked through in memory. */
function findPeople(web: Web, words: string): readonly Hit[] {
  if (words.length < 2) return [];
  return web.directory.search(words).flatMap((id) => {
    const name = web.directory.nameOf(id) ?? '';
    return web.directory.jobsOf(id).map((job) => ({ href: `/jobs/${job}`, words: name, kind: 'customer' }));
  });
}
