// How fast is one durable command? In one run, turn by turn: record() against an autocommit insert of the same bytes through
// @libsql/client; then 64 callers at once. Absolute times are the machine's, ratios hold. Run with `npx jiti tests/bench/append.bench.ts`; no part of the tests.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import type { Command } from '../../src/ledger/leaf.ts';
import type { Ref } from '../../src/units/ids.ts';
import { line, openShop } from '../shop.ts';

const CALLERS = 64;
const PAIRS = 1500;
const shop = await openShop();
const rawDir = mkdtempSync(join(tmpdir(), 'lemel-raw-'));
const raw = createClient({ url: `file:${join(rawDir, 'raw.db')}`, concurrency: 1 });
await raw.execute('PRAGMA journal_mode = WAL');
await raw.execute('CREATE TABLE entry (seq INTEGER PRIMARY KEY, leaf BLOB NOT NULL) STRICT');

const pieces: { piece: Ref<'piece'>; job: Ref<'job'>; size: number }[] = [];
const bags = new Set<Ref<'bag'>>();
while (bags.size < CALLERS) bags.add(shop.newBag());
for (const bag of bags) {
  const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  const parts = [{ part: 'shank', metal: 'gold-750' }];
  await shop.write(
    line('job_opened', { job, bag, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', { job, piece, kind: 'ring', description: 'Ring', parts, stones: 3, weight: shop.grams('6.82') }),
  );
  pieces.push({ piece, job, size: 2 });
}

let commands = 0;
async function weigh(one: (typeof pieces)[number]): Promise<void> {
  const command: Command = {
    id: `bench-${commands++}`,
    by: shop.owner,
    auth: 'session',
    device: 'bench-1',
    seen: { [one.job]: one.size },
    lines: [line('piece_weighed', { piece: one.piece, state: 'as received', weight: shop.grams('6.82') })],
  };
  const answer = await shop.store.record(command);
  if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
  one.size++;
}
async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
const at = (times: number[], share: number) => times.sort((a, b) => a - b)[Math.floor(times.length * share)] ?? 0;
const shown = (ms: number) => `${ms.toFixed(3)} ms`;

const [head] = await shop.store.read("SELECT leaf FROM entry WHERE type = 'piece_received' LIMIT 1");
const leaf = new Uint8Array(head?.leaf as ArrayBuffer);
const own: number[] = [];
const plain: number[] = [];
for (let pair = 0; pair < PAIRS; pair++) {
  const one = pieces[pair % CALLERS];
  if (one) own.push(await timed(() => weigh(one)));
  plain.push(await timed(() => raw.execute({ sql: 'INSERT INTO entry (seq, leaf) VALUES (?, ?)', args: [pair, leaf] })));
}
console.log(`raw insert of ${leaf.length} bytes: median ${shown(at(plain, 0.5))}, p99 ${shown(at(plain, 0.99))}`);
console.log(`one command:             median ${shown(at(own, 0.5))}, p99 ${shown(at(own, 0.99))}`);
console.log(`ratio ${(at(plain, 0.5) / at(own, 0.5)).toFixed(2)} of a raw insert (goal 0.40)`);

const waits: number[] = [];
const rounds = 30;
const together = await timed(() =>
  Promise.all(
    pieces.map(async (one) => {
      for (let round = 0; round < rounds; round++) waits.push(await timed(() => weigh(one)));
    }),
  ),
);
const each = together / (rounds * CALLERS);
console.log(`${CALLERS} callers:  ${shown(each)} a command, ratio ${(at(plain, 0.5) / each).toFixed(2)} (goal 2.0)`);
console.log(`p99 of an answer ${shown(at(waits, 0.99))}, ${(at(waits, 0.99) / at(own, 0.5)).toFixed(1)} of one command (goal 25)`);
raw.close();
await shop.close();
rmSync(rawDir, { recursive: true });
