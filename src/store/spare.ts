// Room kept for reading: a file that is given up when the disk is full, so that people can still sign in, look things up and keep what they typed.
// The ledger is never written into that room.
import { rmSync, statfsSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeOf } from './connection.ts';
import type { SqliteFile } from './sqlite.ts';

/** What the engine needs to read three files (32 kB each), and sign-in and drafts for a long day. */
const SPARE_BYTES = 1024 * 1024;
/** It is kept only where as much again is left. */
const ENOUGH_BYTES = 2 * SPARE_BYTES;

export interface Spare {
  /** Why the ledger is not written: the room that is left is for reading. Null where there is enough; the spare is then kept again. */
  trouble(): string | null;
  /** Lets go of it; whether there was any. */
  spend(): boolean;
}

/** Gives the spare room of a data directory up at once where there is hardly any other, so that the files can be opened at all. */
export function openSpare(dir: string): Spare {
  const path = join(dir, 'spare');
  const spend = () => {
    const had = isThere(path);
    rmSync(path, { force: true });
    return had;
  };
  if (roomIn(dir) < SPARE_BYTES) spend();
  return {
    spend,
    trouble() {
      if (isThere(path)) return null;
      const room = roomIn(dir);
      // A file system that tells no room at all is tried.
      if (room > 0 && room < ENOUGH_BYTES) return FULL;
      return hasRoomFor(path) ? null : FULL;
    },
  };
}

const FULL = 'The disk is full: what room is left is kept for reading. Free some space; nothing need be started again.';

/** The file with its writes tried once more in the spare room where there is no other. */
export const sparing = (file: SqliteFile, spare: Spare): SqliteFile => ({
  ...file,
  write: (work) =>
    file.write(work).catch((error: unknown) => {
      if (!isFull(error) || !spare.spend()) throw error;
      return file.write(work);
    }),
});

/** Whether the engine found no room. */
export const isFull = (error: unknown): boolean => codeOf(error).startsWith('SQLITE_FULL');

const isThere = (path: string): boolean => (statSync(path, { throwIfNoEntry: false })?.size ?? 0) >= SPARE_BYTES;

function roomIn(dir: string): number {
  const { bavail, bsize } = statfsSync(dir);
  return bavail * bsize;
}

/** Makes the file; where it may not be made for another reason than room, whoever writes is told that reason by the engine. */
function hasRoomFor(path: string): boolean {
  try {
    writeFileSync(path, Buffer.alloc(SPARE_BYTES), { mode: 0o600 });
    return true;
  } catch (error) {
    rmSync(path, { force: true });
    return !/ENOSPC|EDQUOT|EFBIG/.test(codeOf(error));
  }
}
