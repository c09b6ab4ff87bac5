// The program as it is run, built once before any test that starts it as a process of its own.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
export const ROOT = join(import.meta.dirname, '..');
/** Where the built program lies for tests; beside the sources, so that it finds the packages. */
export const BUILD = join(ROOT, '.build-tests');
/** Runs once before all tests. */
export default function build() {
  const { stdout } = spawnSync('npx', ['tsc', '-p', 'src/tsconfig.json', '--outDir', BUILD], { cwd: ROOT, encoding: 'utf8' });
  if (!existsSync(join(BUILD, 'src', 'server.js'))) throw new Error(`the program does not build: ${stdout}`);
}
