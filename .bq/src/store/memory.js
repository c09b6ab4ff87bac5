// Memory outside the database: checkpoints.log, one line a checkpoint, by which an older copy or a second history shows at the next start.
import { appendFileSync, readFileSync } from 'node:fs';
import { base64, bytesOfBase64 } from '../log/bytes.js';
/** Appends "time size root signature". */
export function noteCheckpoint(path, at, size, root, signature) {
  appendFileSync(path, `${new Date(at).toISOString()} ${size} ${base64(root)} ${base64(signature)}\n`);
}
/** All checkpoints noted, in the order of their lines; a line cut short by a crash is passed over. */
export function notedCheckpoints(path) {
  return readText(path)
    .split('\n')
    .flatMap((line) => {
      const [at, size, rootText, signatureText] = line.split(' ');
      const root = bytesOfBase64(rootText ?? '');
      const signature = bytesOfBase64(signatureText ?? '');
      if (!at || !size || !/^[1-9]\d{0,15}$/.test(size) || root?.length !== 32 || signature?.length !== 64) return [];
      return [{ at, size: Number(size), root, signature }];
    });
}
function readText(path) {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (error.code === 'ENOENT') return '';
    throw error;
  }
}
