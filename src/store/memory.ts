// Memory outside the database: checkpoints.log, one line for every commit, written before it is answered and synced within a second.
// By it an older copy or a second history shows at the next start. Only lines that this ledger's key signed count.
import { closeSync, fstatSync, fsync, fsyncSync, openSync, readSync, writeSync } from 'node:fs';
import { base64, bytesOfBase64 } from '../log/bytes.ts';
import { type Instant, instant } from '../units/dates.ts';

export interface Noted {
  readonly size: number;
  readonly root: Uint8Array;
  readonly signature: Uint8Array;
  readonly at: Instant;
}
export interface OutsideMemory {
  /** Writes the line; one that found no room is written with the next. */
  note(noted: Noted): void;
  /** Why the last line could not be written: the system's word for it, or null. */
  trouble(): string | null;
  close(): void;
}

const SYNC_MS = 1000;
const TAIL_BYTES = 64 * 1024;
/** No line is longer. */
const LINE_BYTES = 256;
const BLOCK_BYTES = 256 * 1024;

/** Opens the file for appending, made if missing, for nobody else to read. */
export function openMemory(path: string): OutsideMemory {
  const fd = openSync(path, 'a', 0o600);
  let waiting: NodeJS.Timeout | null = null;
  // A line that a crash cut short is ended, so that the next one begins on its own.
  let unwritten = isAtLineStart(path) ? '' : '\n';
  let trouble: string | null = null;
  const sync = () => {
    waiting = null;
    fsync(fd, (error) => {
      if (error && error.code !== 'EBADF') trouble = error.code ?? error.message;
    });
  };
  return {
    note({ at, size, root, signature }) {
      unwritten += `${new Date(at).toISOString()} ${size} ${base64(root)} ${base64(signature)}\n`;
      try {
        const bytes = Buffer.from(unwritten);
        // Where only a part found room, the whole is written again on a line of its own: a line cut short is passed over.
        const whole = writeSync(fd, bytes) === bytes.length;
        unwritten = whole ? '' : `\n${unwritten}`;
        trouble = whole ? null : 'ENOSPC';
      } catch (error) {
        trouble = (error as NodeJS.ErrnoException).code ?? 'EIO';
      }
      waiting ??= setTimeout(sync, SYNC_MS).unref();
    },
    trouble: () => trouble,
    close() {
      if (waiting) clearTimeout(waiting);
      fsyncSync(fd);
      closeSync(fd);
    },
  };
}

/** Every line in order, read block by block; null stands for a line that is none, such as one cut short. */
export function* notedLines(path: string, fromByte = 0, toByte = Number.POSITIVE_INFINITY): Generator<Noted | null> {
  const fd = openIfThere(path);
  if (fd === null) return;
  try {
    const block = Buffer.alloc(BLOCK_BYTES);
    let rest = '';
    for (let at = fromByte; ; ) {
      const read = readSync(fd, block, 0, Math.min(BLOCK_BYTES, toByte - at), at);
      if (read === 0) break;
      at += read;
      const lines = (rest + block.toString('latin1', 0, read)).split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) yield parsed(line);
    }
    if (rest !== '') yield null;
  } finally {
    closeSync(fd);
  }
}

/** The highest checkpoint of the last lines that `isSigned` vouches for, looked for from the end on until there is one: what nobody signed hides nothing. Null where there is none. */
export function highestNoted(path: string, isSigned: (noted: Noted) => boolean): Noted | null {
  for (let end = sizeOf(path); end > 0; end -= TAIL_BYTES) {
    const lines = [...notedLines(path, Math.max(0, end - TAIL_BYTES - LINE_BYTES), end)].filter((one) => one !== null);
    const found = lines.toSorted((a, b) => b.size - a.size).find(isSigned);
    if (found) return found;
  }
  return null;
}

/** Whether the file is there at all. */
export const isRemembering = (path: string): boolean => sizeOf(path) > 0;

/** How many bytes the file holds; none where it is missing. */
export function sizeOf(path: string): number {
  const fd = openIfThere(path);
  if (fd === null) return 0;
  const { size } = fstatSync(fd);
  closeSync(fd);
  return size;
}

function isAtLineStart(path: string): boolean {
  const size = sizeOf(path);
  if (size === 0) return true;
  const fd = openSync(path, 'r');
  const last = Buffer.alloc(1);
  readSync(fd, last, 0, 1, size - 1);
  closeSync(fd);
  return last.toString() === '\n';
}

function openIfThere(path: string): number | null {
  try {
    return openSync(path, 'r');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

function parsed(line: string): Noted | null {
  const [time = '', decimal = '', rootText = '', signatureText = '', ...more] = line.split(' ');
  const root = bytesOfBase64(rootText);
  const signature = bytesOfBase64(signatureText);
  if (more.length > 0 || !/^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(time) || !/^[1-9]\d{0,15}$/.test(decimal)) return null;
  const at = Date.parse(time);
  return root?.length === 32 && signature?.length === 64 && at >= 0 ? { at: instant(at), size: Number(decimal), root, signature } : null;
}
