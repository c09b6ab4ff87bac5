// The machine underneath: the project's root, the clock, randomness. With server.ts and cli.ts the only place that knows them.
import { randomFillSync } from 'node:crypto';
import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { openStore } from './store/open.js';
import { instant } from './units/dates.js';
/** The folder that holds package.json, from the sources or from the build. */
export const ROOT = rootOf(import.meta.dirname);
export const clock = () => instant(Date.now());
export const random = (bytes) => randomFillSync(new Uint8Array(bytes));
/** Opens the data directory, relative to where the program was started. */
export function openData(dataDir) {
  return openStore({ dir: resolve(dataDir), sqlDir: join(ROOT, 'drizzle'), clock, random });
}
function rootOf(folder) {
  return existsSync(join(folder, 'package.json')) ? folder : rootOf(dirname(folder));
}
