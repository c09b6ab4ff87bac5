// The machine underneath: the project's root, the clock, randomness, threads. With server.ts and cli.ts the only place that knows them.
import { randomFillSync } from 'node:crypto';
import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Audit } from './store/beside.ts';
import { openStore, type Store, type StoreDeps } from './store/open.ts';
import { type Instant, instant } from './units/dates.ts';

/** The folder that holds package.json, from the sources or from the build. */
export const ROOT = rootOf(import.meta.dirname);
export const SQL_DIR = join(ROOT, 'drizzle');
export const clock = (): Instant => instant(Date.now());
export const random = (bytes: number): Uint8Array => randomFillSync(new Uint8Array(bytes));

/** Opens the data directory, relative to where the program was started. */
export function openData(dataDir: string, more: Pick<StoreDeps, 'existing' | 'importing'> = {}): Promise<Store> {
  return openStore({ dir: resolve(dataDir), sqlDir: SQL_DIR, clock, random, checkAside, ...more });
}

/** Checks the directory in a thread of its own; fails as the check fails. */
function checkAside(dir: string, progress: (done: number) => void): Promise<Audit> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(join(import.meta.dirname, 'check-worker.js'), { workerData: { dir, sqlDir: SQL_DIR } });
    worker.on('message', (said: { readonly done?: number; readonly found?: Audit }) => {
      if (said.done !== undefined) progress(said.done);
      if (said.found) resolve(said.found);
    });
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the check ended without an answer')));
  });
}

function rootOf(folder: string): string {
  return existsSync(join(folder, 'package.json')) ? folder : rootOf(dirname(folder));
}
