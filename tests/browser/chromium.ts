// Which browser the walks use: the system's Chromium, else the one from the packages, with the libraries it carries for a bare machine.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';

const SYSTEM_BROWSER = process.env.LEMEL_BROWSER ?? '/usr/bin/chromium';

export interface BrowserProgram {
  readonly executablePath: string;
  /** For the browser's process alone. */
  readonly env: Readonly<Record<string, string>>;
}

/** Finds it, unpacking the packaged one where there is none; throws when the package cannot be unpacked. */
export async function browserProgram(): Promise<BrowserProgram> {
  const env = Object.fromEntries(Object.entries(process.env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])));
  if (existsSync(SYSTEM_BROWSER)) return { executablePath: SYSTEM_BROWSER, env };
  const packed = await import('@sparticuz/chromium');
  const executablePath = await packed.default.executablePath();
  const libraries = [unpackLibraries(), env.LD_LIBRARY_PATH].filter(Boolean).join(':');
  return { executablePath, env: { ...env, LD_LIBRARY_PATH: libraries } };
}

/** NSS, NSPR and expat, which a bare Debian lacks. */
function unpackLibraries(): string {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const packageDir = entry.slice(0, entry.indexOf(join('@sparticuz', 'chromium')) + join('@sparticuz', 'chromium').length);
  const folder = mkdtempSync(join(tmpdir(), 'lemel-chromium-'));
  const tar = join(folder, 'libraries.tar');
  writeFileSync(tar, brotliDecompressSync(readFileSync(join(packageDir, 'bin', 'al2023.tar.br'))));
  const { status, stderr } = spawnSync('tar', ['-xf', tar, '-C', folder], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`the browser's libraries could not be unpacked: ${stderr}`);
  return join(folder, 'lib');
}
