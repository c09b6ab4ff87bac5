// The program compiled once for tests that start it as a process of its own: node runs no TypeScript by itself.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..');

/** Compiles src/ and answers the folder of its JavaScript; `name` keeps tests that run at once apart. Below node_modules, so that packages are found. */
export function built(name: string): string {
  const folder = join(ROOT, 'node_modules', '.cache', 'lemel', name);
  const compiler = join(ROOT, 'node_modules/typescript/bin/tsc');
  execFileSync(process.execPath, [compiler, '-p', join(ROOT, 'src/tsconfig.json'), '--noCheck', '--outDir', folder]);
  return join(folder, 'src');
}
