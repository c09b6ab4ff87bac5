// The page of a job of 60 entries against a hand-written template over the same leaves, in one process; and a letter's data for 40 entries.
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { createApp } from '../../src/app.ts';
import type { Leaf } from '../../src/ledger/leaf.ts';
import { entryType, openData } from '../../src/ledger/registry.ts';
import { clock, ROOT, random } from '../../src/machine.ts';
import { openAccess } from '../../src/store/access.ts';
import { bytesOf } from '../../src/store/keys.ts';
import { openDirectory } from '../../src/store/names.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import type { Ref } from '../../src/units/ids.ts';
import { checkDataOf } from '../../src/web/job/check-data.ts';
import type { Web } from '../../src/web/session/context.ts';
import { line, openShop, type Shop } from '../shop.ts';
import { timed } from './append.ts';
import { atLeast, atMost, type Figure } from './figures.ts';
import type { BenchShop } from './shop.ts';

const BASE = 'http://127.0.0.1:8417';
const RUNS = 15;
const sqlDir = join(ROOT, 'drizzle');

/** A template's time over the page's, turn by turn: both read the job's leaves from the file and say each entry in its own words. */
export async function jobPageFigure(): Promise<Figure> {
  const shop = await openShop({ sqlDir });
  const job = await jobOf(shop, 60);
  const web = await webOver(shop.store, shop.clock);
  const app = createApp(web);
  const cookie = `lemel=${await web.access.beginSession(shop.owner, 'this-pc')}`;
  const page = async () => {
    const answer = await app.request(`/jobs/${job}`, { headers: { cookie } });
    if (answer.status !== 200) throw new Error(`the job page answered ${answer.status}`);
    await answer.text();
  };
  const samples: number[] = [];
  for (let run = -3; run < RUNS; run++) {
    const theirs = await timed(() => byHand(shop.store, job));
    const ours = await timed(page);
    if (run >= 0) samples.push(theirs / ours);
  }
  await shop.close();
  return { what: 'job page of 60 entries: a template over the same leaves / the page', unit: '×', samples, ...atLeast(0.6) };
}

async function byHand({ read }: Store, job: string): Promise<string> {
  const rows = await read('SELECT seq, leaf FROM entry_link JOIN entry USING (seq) WHERE stream = ? ORDER BY n', [job]);
  const things = await read('SELECT id, state FROM thing WHERE stream = ?', [job]);
  const words = new Map(things.map(({ id, state }) => [String(id), String(JSON.parse(String(state)).says.description ?? id)]));
  const lines = rows.map(({ seq, leaf }) => {
    const read = JSON.parse(Buffer.from(bytesOf(leaf)).toString()) as Leaf;
    const said = entryType(read.type, read.ver).say(openData(read), (id) => words.get(id) ?? id);
    return `<li><a href="/entries/${seq}">${escaped(said)}</a> <time>${new Date(read.occurredAt).toISOString()}</time> ${escaped(read.by)}</li>`;
  });
  return `<!doctype html><title>${job}</title><ol>${lines.join('')}</ol>`;
}
const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** The data a letter carries for a job of 40 entries at the end of the ledger: size as sent compressed, and the time to put it together. */
export async function letterFigures({ dir, owner }: BenchShop): Promise<readonly Figure[]> {
  const store = await openStore({ dir, sqlDir, clock, random });
  const web = await webOver(store, { now: clock() });
  const job = await longestOf(store, owner as Ref<'person'>);
  const times: number[] = [];
  let bytes = 0;
  for (let run = -2; run < RUNS; run++) {
    const ms = await timed(async () => {
      bytes = gzipSync(JSON.stringify(await checkDataOf(web, job))).length;
    });
    if (run >= 0) times.push(ms);
  }
  await store.close();
  return [
    { what: 'letter’s data for 40 entries, compressed', unit: 'kB', samples: [bytes / 1000], ...atMost(30) },
    { what: 'letter’s data for 40 entries, warm', unit: 'ms', samples: times, ...atMost(25) },
  ];
}

/** The newest open job, with notes written to it until it has 40 entries. */
async function longestOf(store: Store, by: Ref<'person'>): Promise<string> {
  const [row] = await store.read("SELECT id FROM thing WHERE kind = 'job' AND state ->> '$.status' = 'agreed' ORDER BY n DESC LIMIT 1");
  const job = String(row?.id) as Ref<'job'>;
  const [{ n } = { n: 0 }] = await store.read('SELECT COUNT(*) AS n FROM entry_link WHERE stream = ?', [job]);
  for (let size = Number(n); size < 40; size++) {
    const lines = [line('note_added', { about: job, text: 'Waiting for wire of the right gauge.' })];
    const answer = await store.record({ id: `note-${job}-${size}`, by, auth: 'password', device: 'bench', seen: { [job]: size }, lines });
    if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
  }
  return job;
}

async function webOver(store: Store, at: { readonly now: Web['clock'] extends () => infer T ? T : never }): Promise<Web> {
  const access = openAccess(store.access, store.pepper, () => at.now, random);
  const directory = await openDirectory(store);
  const assetsDir = join(ROOT, 'views', 'assets');
  return {
    store,
    access,
    directory,
    clock: () => at.now,
    random,
    baseUrl: BASE,
    assetsDir,
    photosDir: join(store.dir, 'photos'),
    note: () => undefined,
  };
}

async function jobOf(shop: Shop, entries: number): Promise<Ref<'job'>> {
  const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  const terms = { dust: 'shop', cutMetal: 'shop', oldParts: 'shop', terms: '1', agreedBy: 'signature' };
  const ring = { kind: 'ring', description: 'Band', stones: 0, parts: [{ part: 'all', metal: 'gold-750' }], weight: shop.grams('6.82') };
  await shop.write(
    line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, ...ring }),
    line('work_agreed', { job, steps: ['polish'], priceKind: 'free', promise: '2026-12-08', ...terms }),
  );
  for (let n = 3; n < entries; n++) await shop.write(line('piece_weighed', { piece, state: 'polished', weight: shop.grams('6.82') }));
  return job;
}
