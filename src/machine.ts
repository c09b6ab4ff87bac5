// The machine underneath: the project's root, the clock, randomness. With server.ts and cli.ts the only place that knows them.
import { randomFillSync } from 'node:crypto';
import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { openStore, type Store } from './store/open.ts';
import { type Instant, instant } from './units/dates.ts';

/** The folder that holds package.json, from the sources or from the build. */
export const ROOT = rootOf(import.meta.dirname);
export const clock = (): Instant => instant(Date.now());
export const random = (bytes: number): Uint8Array => randomFillSync(new Uint8Array(bytes));

/** Opens the data directory, relative to where the program was started. */
export function openData(dataDir: string): Promise<Store> {
  return openStore({ dir: resolve(dataDir), sqlDir: join(ROOT, 'drizzle'), clock, random });
}

function rootOf(folder: string): string {
  return existsSync(join(folder, 'package.json')) ? folder : rootOf(dirname(folder));
}
