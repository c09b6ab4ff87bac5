// What is read of a whole ledger: the check against "read and SHA-256 every row", and the sum of every holding against Debian's `ledger`.
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { factsOf } from '../../src/ledger/corrections.js';
import { sumOf } from '../../src/ledger/thing.js';
import { ROOT } from '../../src/machine.js';
import { bytesOf } from '../../src/store/keys.js';
import { netNg } from '../../src/weighing/reading.js';
import { timed } from './append.js';
import { atLeast, atMost } from './figures.js';

const CHUNK = 1000;
async function eachLeaf(dir, take) {
  const db = createClient({ url: `file:${join(dir, 'ledger.db')}` });
  for (let from = 0; ; from += CHUNK) {
    const { rows } = await db.execute({ sql: 'SELECT leaf FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', args: [from, CHUNK] });
    for (const { leaf } of rows) take(bytesOf(leaf));
    if (rows.length < CHUNK) break;
  }
  db.close();
}
/** The check as the command line runs it, its start of a process taken off, against reading and hashing every row here. */
export async function checkFigure({ dir }, runs) {
  const cli = [join(ROOT, '.build-bench', 'src', 'cli.js')];
  const env = { ...process.env, LEMEL_DATA: dir };
  const samples = [];
  for (let run = 0; run < runs; run++) {
    const plain = await timed(() => eachLeaf(dir, (bytes) => createHash('sha256').update(bytes).digest()));
    const idle = await timed(async () => void spawnSync(process.execPath, [...cli, '--version'], { env }));
    const check = await timed(async () => void execFileSync(process.execPath, [...cli, 'verify-log'], { env, stdio: 'ignore' }));
    samples.push(plain / (check - idle));
  }
  return { what: 'check all / (read + SHA-256)', unit: '×', samples, ...atLeast(0.4) };
}
/** Sums of every holding, from leaves and from the things kept; the same flows as a journal summed by `ledger balance`. */
export async function balanceFigures({ dir }, runs) {
  const journal = await journalOf(dir);
  const has = spawnSync('ledger', ['--version']).status === 0;
  const missing = has ? {} : { missing: 'Debian’s `ledger` is not installed' };
  const fromLeaves = [];
  const fromThings = [];
  for (let run = 0; has && run < runs; run++) {
    const theirs = await timed(async () => void execFileSync('ledger', ['-f', journal.path, 'balance', '--flat'], { stdio: 'ignore' }));
    fromLeaves.push((await timed(() => sumLeaves(dir))) / theirs);
    fromThings.push((await timed(() => readSums(dir))) / theirs);
  }
  rmSync(journal.folder, { recursive: true });
  return [
    { what: 'balances of every holding, from leaves / Debian’s `ledger`', unit: '×', samples: fromLeaves, ...atMost(0.7), ...missing },
    { what: 'the same, from projections', unit: '×', samples: fromThings, ...atMost(0.1), ...missing },
  ];
}
async function sumLeaves(dir) {
  const sums = new Map();
  await eachLeaf(dir, (bytes) => {
    for (const one of factsOf(JSON.parse(Buffer.from(bytes).toString()))) {
      if (one.fact !== 'flow') continue;
      const ng = one.reading ? (netNg(one.reading) ?? 0) : 0;
      sums.set(one.from, (sums.get(one.from) ?? 0) - ng);
      sums.set(one.to, (sums.get(one.to) ?? 0) + ng);
    }
  });
  return sums;
}
async function readSums(dir) {
  const db = createClient({ url: `file:${join(dir, 'ledger.db')}` });
  const kinds = "'piece', 'stone', 'packet', 'lot', 'stock', 'skin'";
  const { rows } = await db.execute(`SELECT state ->> '$.posted' AS posted FROM thing WHERE kind IN (${kinds})`);
  db.close();
  let known = 0;
  for (const { posted } of rows) if ('ng' in sumOf(JSON.parse(String(posted)))) known++;
  return known;
}
async function journalOf(dir) {
  const folder = mkdtempSync(join(tmpdir(), 'lemel-journal-'));
  const path = join(folder, 'flows.journal');
  const lines = [];
  const account = (end) => end.replaceAll(' ', '_');
  await eachLeaf(dir, (bytes) => {
    const leaf = JSON.parse(Buffer.from(bytes).toString());
    const day = new Date(leaf.at).toISOString().slice(0, 10);
    for (const one of factsOf(leaf)) {
      if (one.fact !== 'flow') continue;
      const grams = ((one.reading ? (netNg(one.reading) ?? 0) : 0) / 1e9).toFixed(9);
      lines.push(`${day} ${leaf.type}`, `  ${account(one.to)}  ${grams} g`, `  ${account(one.from)}  -${grams} g`, '');
    }
  });
  writeFileSync(path, lines.join('\n'));
  return { folder, path };
}
