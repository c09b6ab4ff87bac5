// What is read of a whole ledger: the check against "read and SHA-256 every row", and the sum of every holding against Debian's `ledger`.
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { factsOf } from '../../src/ledger/corrections.ts';
import type { Leaf } from '../../src/ledger/leaf.ts';
import { sumOf, type Thing } from '../../src/ledger/thing.ts';
import { ROOT } from '../../src/machine.ts';
import { bytesOf } from '../../src/store/keys.ts';
import { netNg } from '../../src/weighing/reading.ts';
import { timed } from './append.ts';
import { atLeast, atMost, type Figure } from './figures.ts';
import type { BenchShop } from './shop.ts';

const CHUNK = 1000;

async function eachLeaf(dir: string, take: (bytes: Uint8Array) => void): Promise<void> {
  const db = createClient({ url: `file:${join(dir, 'ledger.db')}` });
  for (let from = 0; ; from += CHUNK) {
    const { rows } = await db.execute({ sql: 'SELECT leaf FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', args: [from, CHUNK] });
    for (const { leaf } of rows) take(bytesOf(leaf));
    if (rows.length < CHUNK) break;
  }
  db.close();
}

/** The check as the command line runs it, its start of a process taken off, against reading and hashing every row here. */
export async function checkFigure({ dir }: BenchShop, runs: number): Promise<Figure> {
  const cli = [join(ROOT, '.build-bench', 'src', 'cli.js')];
  const env = { ...process.env, LEMEL_DATA: dir };
  const samples: number[] = [];
  for (let run = 0; run < runs; run++) {
    const plain = await timed(() => eachLeaf(dir, (bytes) => createHash('sha256').update(bytes).digest()));
    const idle = await timed(async () => void spawnSync(process.execPath, [...cli, '--version'], { env }));
    const check = await timed(async () => void execFileSync(process.execPath, [...cli, 'verify-log'], { env, stdio: 'ignore' }));
    samples.push(plain / (check - idle));
  }
  return { what: 'check all / (read + SHA-256)', unit: '×', samples, ...atLeast(0.4) };
}

/** Sums of every holding, from leaves and from the things kept; the same flows as a journal summed by `ledger balance`. */
export async function balanceFigures({ dir }: BenchShop, runs: number): Promise<readonly Figure[]> {
  const journal = await journalOf(dir);
  const has = spawnSync('ledger', ['--version']).status === 0;
  const missing = has ? {} : { missing: 'Debian’s `ledger` is not installed' };
  const fromLeaves: number[] = [];
  const fromThings: number[] = [];
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

async function sumLeaves(dir: string): Promise<ReadonlyMap<string, number>> {
  const sums = new Map<string, number>();
  await eachLeaf(dir, (bytes) => {
    for (const one of factsOf(JSON.parse(Buffer.from(bytes).toString()) as Leaf)) {
      if (one.fact !== 'flow') continue;
      const ng = one.reading ? (netNg(one.reading) ?? 0) : 0;
      sums.set(one.from, (sums.get(one.from) ?? 0) - ng);
      sums.set(one.to, (sums.get(one.to) ?? 0) + ng);
    }
  });
  return sums;
}

async function readSums(dir: string): Promise<number> {
  const db = createClient({ url: `file:${join(dir, 'ledger.db')}` });
  const kinds = "'piece', 'stone', 'packet', 'lot', 'stock', 'skin'";
  const { rows } = await db.execute(`SELECT state ->> '$.posted' AS posted FROM thing WHERE kind IN (${kinds})`);
  db.close();
  let known = 0;
  for (const { posted } of rows) if ('ng' in sumOf(JSON.parse(String(posted)) as Thing['posted'])) known++;
  return known;
}

async function journalOf(dir: string): Promise<{ readonly folder: string; readonly path: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'lemel-journal-'));
  const path = join(folder, 'flows.journal');
  const lines: string[] = [];
  const account = (end: string) => end.replaceAll(' ', '_');
  await eachLeaf(dir, (bytes) => {
    const leaf = JSON.parse(Buffer.from(bytes).toString()) as Leaf;
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
