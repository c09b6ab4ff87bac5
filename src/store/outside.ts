// The ledger against what is remembered outside it: lines of checkpoints.log, and checkpoints that screens and slips kept.
import { equal, utf8 } from '../log/bytes.ts';
import { type Checkpoint, formatCheckpoint } from '../log/checkpoint.ts';
import { append, rootOf } from '../log/merkle.ts';
import type { LogKey } from '../log/note.ts';
import { instant } from '../units/dates.ts';
import { sha256, verifySignature } from './crypto.ts';
import { bytesOf } from './keys.ts';
import { highestNoted, type OutsideMemory } from './memory.ts';
import type { Query } from './sqlite.ts';
import { readFrontier } from './tree.ts';

/** A checkpoint as somebody outside kept it; nothing is believed of it before its signature. */
export type Kept = Omit<Checkpoint, 'origin'> & { readonly signature: Uint8Array };

/** Whether this ledger's key signed it. */
export const isSignedBy = (key: LogKey, origin: string, { size, root, signature }: Kept): boolean =>
  verifySignature(key.publicKey, utf8(formatCheckpoint({ origin, size, root })), signature);

/** Why a ledger that holds `size` entries is not the one this checkpoint was signed over, as a sentence; null when it is. */
export async function outsideTrouble(read: Query, size: number, kept: Kept, keptBy: string): Promise<string | null> {
  if (kept.size > size) {
    const [first, last] = [size, kept.size - 1];
    const which = first === last ? `Entry ${first} is missing` : `Entries ${first} to ${last} are missing`;
    return `${which}: this ledger holds ${size} entries, but ${kept.size} were signed, as ${keptBy} remembers: it is an older copy. Put back the newest one.`;
  }
  if (equal(rootOf(sha256, await readFrontier(read, kept.size)), kept.root)) return null;
  return `The first ${kept.size} entries are not the ones that were signed, as ${keptBy} remembers. Keep these files, and restore the last good copy.`;
}

/** The same for the highest line of checkpoints.log that this ledger's key signed; `noted` is that line's size, or 0. */
export async function memoryTrouble(
  read: Query,
  size: number,
  path: string,
  key: LogKey,
  origin: string,
): Promise<{ readonly noted: number; readonly say: string | null }> {
  const highest = highestNoted(path, (one) => isSignedBy(key, origin, one));
  if (!highest) return { noted: 0, say: null };
  const keptBy = `checkpoints.log of ${new Date(highest.at).toISOString()}`;
  return { noted: highest.size, say: await outsideTrouble(read, size, highest, keptBy) };
}

const CHUNK = 1000;

/** Notes every checkpoint after the first `from` entries: those of a commit whose line was lost with the power, or of a whole import. */
export async function noteFrom(read: Query, memory: OutsideMemory, from: number): Promise<void> {
  let frontier = await readFrontier(read, from);
  for (;;) {
    const rows = await read(
      `SELECT entry.leaf_hash, checkpoint.size, signature, issued FROM entry LEFT JOIN checkpoint ON checkpoint.size = entry.seq + 1
       WHERE entry.seq >= ? ORDER BY entry.seq LIMIT ?`,
      [frontier.size, CHUNK],
    );
    for (const { leaf_hash, size, signature, issued } of rows) {
      frontier = append(sha256, frontier, bytesOf(leaf_hash)).frontier;
      if (size === null) continue;
      memory.note({ at: instant(Number(issued)), size: frontier.size, root: rootOf(sha256, frontier), signature: bytesOf(signature) });
    }
    if (rows.length < CHUNK) return;
  }
}
