// Secrets outside the database: the signing seed, the key of the commands' MACs, the pepper of the PINs. Mode 0600, or not read.
import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
/** A secret file that others can read, or that is not what it should be. */
export class BadSecret extends Error {}
/** Reads 32 bytes from `folder/name`, or makes them where there is no such file; `made` says which. */
export function secret(folder, name, random) {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, name);
  const existing = modeOf(path);
  if (existing === null) {
    const bytes = random(32);
    writeFileSync(`${path}.new`, `${Buffer.from(bytes).toString('hex')}\n`, { mode: 0o600, flush: true });
    renameSync(`${path}.new`, path);
    return { bytes, made: true };
  }
  if ((existing & 0o077) !== 0) throw new BadSecret(`Others can read the secret ${name}. Run: chmod 600 on it, then start again.`);
  const bytes = Buffer.from(readFileSync(path, 'utf8').trim(), 'hex');
  if (bytes.length !== 32)
    throw new BadSecret(`The secret ${name} is not 64 hexadecimal digits. Put it back from the recovery sheet or a backup.`);
  return { bytes, made: false };
}
function modeOf(path) {
  try {
    return statSync(path).mode;
  } catch (error) {
    if (error.code === 'ENOENT') return null;
    throw error;
  }
}
