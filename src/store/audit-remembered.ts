// checkpoints.log beside the checkpoints in their order: a line for each, word for word, and none that nobody signed.
import { equal } from '../log/bytes.ts';
import type { LogKey } from '../log/note.ts';
import { type Audited, type Bad, bad } from './beside.ts';
import { type Noted, notedLines } from './memory.ts';
import { isSignedBy } from './outside.ts';

export interface Remembered {
  /** Compares the next checkpoint with its line. */
  look(one: Noted): Bad | null;
  /** The most entries that a line after the last checkpoint counts, or what is wrong with such a line. */
  end(size: number): Promise<number | Bad>;
}

const WAITED_FOR_MAX = 10_000;
const TURNS_WAITED = 50;
const TURN_MS = 20;

/** Reads the lines that were there before the ledger was read; the line of a commit is written a moment after it, so the last ones are waited for. */
export function rememberedIn(memory: NonNullable<Audited['memory']>, origin: string, key: LogKey | null, told: string[]): Remembered {
  const next = different(notedLines(memory.path, 0, memory.bytes));
  const waitedFor: Noted[] = [];
  let ahead: Noted | null = null;
  let begins: 'unknown' | 'later' | 'seen' = 'unknown';
  return {
    look(one) {
      ahead ??= next();
      if (!ahead) return waitedFor.push(one) > WAITED_FOR_MAX ? lost(one) : null;
      if (begins !== 'seen' && ahead.size > one.size) begins = 'later';
      if (begins === 'later' && ahead.size > one.size) return null;
      if (begins === 'later') told.push(`checkpoints.log begins with the first ${one.size} entries: what it remembered before is gone.`);
      begins = 'seen';
      const trouble = difference(ahead, one);
      ahead = null;
      return trouble;
    },
    async end(size) {
      let highest = 0;
      for (let line = ahead ?? next(); line; line = next()) {
        if (!key || !isSignedBy(key, origin, line))
          return wrong(`checkpoints.log has a line over ${line.size} entries that nobody signed.`);
        highest = Math.max(highest, line.size);
      }
      return highest > size ? highest : ((await waited(memory, waitedFor)) ?? highest);
    },
  };
}

/** The lines that are some, each once where it stands twice in a row: one that was written by halves is written again. */
function different(lines: Iterator<Noted | null>): () => Noted | null {
  let before: Noted | null = null;
  return () => {
    for (let line = lines.next(); !line.done; line = lines.next()) {
      if (!line.value || (before && isSame(line.value, before))) continue;
      before = line.value;
      return before;
    }
    return null;
  };
}

async function waited({ path, bytes }: NonNullable<Audited['memory']>, waitedFor: readonly Noted[]): Promise<Bad | null> {
  let due = waitedFor;
  for (let turn = 0; turn < TURNS_WAITED; turn++) {
    const since = [...notedLines(path, bytes)];
    due = due.filter((one) => !since.some((line) => line && isSame(line, one)));
    if (!due[0]) return null;
    await new Promise((resolve) => setTimeout(resolve, TURN_MS));
  }
  return due[0] ? lost(due[0]) : null;
}

function difference(line: Noted, one: Noted): Bad | null {
  if (line.size > one.size) return lost(one);
  if (line.size < one.size) return wrong(`checkpoints.log has a line over ${line.size} entries that the ledger does not have.`);
  return isSame(line, one) ? null : wrong(`The line of checkpoints.log over ${one.size} entries is not what was signed.`, one.size - 1);
}

const wrong = (say: string, seq: number | null = null): Bad => bad(seq, 'memory', say);
const lost = ({ size }: Noted): Bad => wrong(`checkpoints.log has lost its line over ${size} entries.`, size - 1);
const isSame = (a: Noted, b: Noted): boolean =>
  a.size === b.size && a.at === b.at && equal(a.root, b.root) && equal(a.signature, b.signature);
