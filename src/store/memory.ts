// Memory outside the database: checkpoints.log, one line a checkpoint, by which an older copy or a second history shows at the next start.
import { appendFileSync, readFileSync } from 'node:fs';
import { base64, bytesOfBase64 } from '../log/bytes.ts';
import type { Instant } from '../units/dates.ts';

export interface Noted {
  readonly size: number;
  readonly root: Uint8Array;
  readonly signature: Uint8Array;
  readonly at: string;
}

/** Appends "time size root signature". */
export function noteCheckpoint(path: string, at: Instant, size: number, root: Uint8Array, signature: Uint8Array): void {
  appendFileSync(path, `${new Date(at).toISOString()} ${size} ${base64(root)} ${base64(signature)}\n`);
}

/** All checkpoints noted, in the order of their lines; a line cut short by a crash is passed over. */
export function notedCheckpoints(path: string): readonly Noted[] {
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

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as { code?: unknown }).code === 'ENOENT') return '';
    throw error;
  }
}
