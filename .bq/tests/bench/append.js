// One durable command against an autocommit insert of the same bytes, turn by turn in one run; then 64 callers at once.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { bytesOf } from '../../src/store/keys.js';
import { line, openShop } from '../shop.js';
import { atLeast, atMost, median, quantile } from './figures.js';

const CALLERS = 64;
const PAIRS = 1500;
const RUNS = 5;
const ROUNDS = 20;
/** Ratios, each of one run: a raw insert's time over a command's. */
export async function appendFigures(sqlDir) {
  const shop = await openShop({ sqlDir });
  const pieces = await takenIn(shop);
  const rawDir = mkdtempSync(join(tmpdir(), 'lemel-raw-'));
  const raw = createClient({ url: `file:${join(rawDir, 'raw.db')}`, concurrency: 1 });
  await raw.execute('PRAGMA journal_mode = WAL');
  await raw.execute('CREATE TABLE entry (seq INTEGER PRIMARY KEY, leaf BLOB NOT NULL) STRICT');
  const [head] = await shop.store.read("SELECT leaf FROM entry WHERE type = 'piece_received' LIMIT 1");
  const leaf = bytesOf(head?.leaf);
  let seq = 0;
  const plainly = () => timed(() => raw.execute({ sql: 'INSERT INTO entry (seq, leaf) VALUES (?, ?)', args: [seq++, leaf] }));
  const single = [];
  const together = [];
  const waits = [];
  for (let run = 0; run < RUNS; run++) {
    const own = [];
    const plain = [];
    for (let pair = 0; pair < PAIRS / RUNS; pair++) {
      const one = pieces[pair % CALLERS];
      if (one) own.push(await timed(() => weigh(shop, one)));
      plain.push(await plainly());
    }
    single.push(median(plain) / median(own));
    const all = await allAtOnce(shop, pieces);
    together.push(median(plain) / all.each);
    waits.push(quantile(all.waits, 0.99) / median(all.waits));
  }
  raw.close();
  await shop.close();
  rmSync(rawDir, { recursive: true });
  return [
    { what: 'one durable command / raw autocommit insert', unit: '×', samples: single, ...atLeast(0.42) },
    { what: `${CALLERS} callers / the same`, unit: '×', samples: together, ...atLeast(2) },
    { what: `${CALLERS} callers: p99 / their median wait`, unit: '×', samples: waits, ...atMost(3) },
  ];
}
async function takenIn(shop) {
  const bags = new Set();
  while (bags.size < CALLERS) bags.add(shop.newBag());
  const pieces = [];
  for (const bag of bags) {
    const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
    const ring = {
      kind: 'ring',
      description: 'Ring',
      parts: [{ part: 'shank', metal: 'gold-750' }],
      stones: 3,
      weight: shop.grams('6.82'),
    };
    await shop.write(
      line('job_opened', { job, bag, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      line('piece_received', { job, piece, ...ring }),
    );
    pieces.push({ piece, job, size: 2 });
  }
  return pieces;
}
let commands = 0;
async function weigh(shop, one) {
  const command = {
    ...{ id: `bench-${commands++}`, by: shop.owner, auth: 'session', device: 'bench-1', seen: { [one.job]: one.size } },
    lines: [line('piece_weighed', { piece: one.piece, state: 'as received', weight: shop.grams('6.82') })],
  };
  const answer = await shop.store.record(command);
  if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
  one.size++;
}
async function allAtOnce(shop, pieces) {
  const waits = [];
  const rounds = async (one) => {
    for (let round = 0; round < ROUNDS; round++) waits.push(await timed(() => weigh(shop, one)));
  };
  const all = await timed(() => Promise.all(pieces.map(rounds)));
  return { each: all / (ROUNDS * CALLERS), waits };
}
export async function timed(work) {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
