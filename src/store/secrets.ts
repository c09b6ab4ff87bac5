// Secrets outside the database: the signing seed, the key of the commands' MACs, the pepper of the PINs. Mode 0600, or not read.
import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A secret file that others can read, or that is not what it should be. */
export class BadSecret extends Error {}

/** Reads 32 bytes from `folder/name`, or makes them where there is no such file; `made` says which. */
export function secret(
  folder: string,
  name: string,
  random: (bytes: number) => Uint8Array,
): { readonly bytes: Uint8Array; readonly made: boolean } {
  const path = join(folder, name);
  if (modeOf(path) !== null) return { bytes: readSecret(folder, name), made: false };
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const bytes = random(32);
  writeFileSync(`${path}.new`, `${Buffer.from(bytes).toString('hex')}\n`, { mode: 0o600, flush: true });
  renameSync(`${path}.new`, path);
  return { bytes, made: true };
}

/** Reads 32 bytes from `folder/name`; throws BadSecret where they are not there, others can read them, or they are none. */
export function readSecret(folder: string, name: string): Uint8Array {
  const path = join(folder, name);
  const existing = modeOf(path);
  if (existing === null) throw new BadSecret(`The secret ${name} is missing. Put it back from the recovery sheet or a backup.`);
  if ((existing & 0o077) !== 0) throw new BadSecret(`Others can read the secret ${name}. Run: chmod 600 on it, then start again.`);
  const bytes = Buffer.from(readFileSync(path, 'utf8').trim(), 'hex');
  if (bytes.length !== 32)
    throw new BadSecret(`The secret ${name} is not 64 hexadecimal digits. Put it back from the recovery sheet or a backup.`);
  return bytes;
}

function modeOf(path: string): number | null {
  try {
    return statSync(path).mode;
  } catch (error) {
    if ((error as { code?: unknown }).code === 'ENOENT') return null;
    throw error;
  }
}
