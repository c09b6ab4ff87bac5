// Before `npm start` and `npm test`: installs what the lock file names, unless that was done already. Node built-ins only.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const stamp = join(root, 'node_modules', '.lemel-installed');
const lock = join(root, '.lemel-installing');
const STALE_MS = 10 * 60_000;

if (Number.parseInt(process.versions.node, 10) < 20) {
  console.error(`Lemel needs Node 20 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const wanted = createHash('sha256')
  .update(readFileSync(join(root, 'package-lock.json')))
  .update(process.version)
  .digest('hex');

const read = (path) => {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
};
const sleep = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);

/** Takes the lock, so that two commands may start at once; a lock left by a dead install is broken after ten minutes. */
function takeLock() {
  for (;;) {
    try {
      mkdirSync(lock);
      return;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
      if (Date.now() - statSync(lock).mtimeMs > STALE_MS) rmSync(lock, { recursive: true, force: true });
      else sleep(250);
    }
  }
}

if (read(stamp) !== wanted) {
  takeLock();
  try {
    if (read(stamp) !== wanted) {
      const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: root, stdio: 'inherit' });
      if (status !== 0) {
        console.error('The packages could not be installed. Check the network, then run the command again.');
        process.exit(status ?? 1);
      }
      writeFileSync(stamp, wanted);
    }
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}
