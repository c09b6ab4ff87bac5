// What of a data directory is there. Nothing that entries rest on is made anew in silence: what is missing stops the start, with what to put back.
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { isRemembering } from './memory.ts';
import { openReading, type Query } from './sqlite.ts';

/** There is no ledger where one was asked for. */
export class NoLedger extends Error {}
/** Something is missing that the entries rest on. */
export class Missing extends Error {}

const hasBytes = (path: string): boolean => (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > 0;

/** Whether the directory holds a ledger, if only an empty one. Throws Missing where what is remembered of one is there without it. */
export function holdsLedger(dir: string): boolean {
  if (hasBytes(join(dir, 'ledger.db'))) return true;
  if (!isRemembering(join(dir, 'checkpoints.log')) && !existsSync(join(dir, 'keys', 'seed'))) return false;
  throw new Missing(
    `${join(dir, 'ledger.db')} is missing, though what belongs to it is there. Put it back from the newest backup; a new one would be another ledger.`,
  );
}

/** Throws NoLedger unless the directory holds one: a name that was mistyped makes nothing. */
export function askForLedger(dir: string): void {
  if (holdsLedger(dir)) return;
  throw new NoLedger(`There is no ledger in ${dir}. Name its data directory in LEMEL_DATA; nothing was made.`);
}

const NEEDED: readonly (readonly [file: string, costs: string])[] = [
  ['keys/seed', 'without it nothing can be signed. Put it back from the recovery sheet or a backup'],
  ['keys/mac', 'without it a form sent twice would be written twice. Put it back from a backup'],
  ['keys/pepper', 'without it no PIN and no password is right. Put it back from a backup'],
  ['keys.db', 'without it no name can be read. Put it back from a backup'],
];

/**
 * Throws Missing where the ledger has entries and something they rest on is not there; asked before anything is opened for writing.
 * An import may find the keys alone: they are put there for it.
 */
export async function askForWhole(dir: string, isImporting = false): Promise<void> {
  if (isImporting && !hasBytes(join(dir, 'ledger.db'))) return;
  if (!holdsLedger(dir)) return;
  const reading = openReading(join(dir, 'ledger.db'));
  try {
    if (!(await hasEntries(reading.read))) return;
    for (const [file, costs] of NEEDED) {
      if (!hasBytes(join(dir, file))) throw new Missing(`${join(dir, file)} is missing: ${costs}, then start again. It is not made anew.`);
    }
    const [sealed] = await reading.read('SELECT COUNT(*) AS n FROM (SELECT 1 FROM sealed LIMIT 1)');
    if (Number(sealed?.n) > 0 && !(await hasKeys(dir))) {
      throw new Missing(
        `${join(dir, 'keys.db')} holds no key, though there are sealed values. Put it back from a backup, then start again.`,
      );
    }
  } finally {
    await reading.close();
  }
}

/** The origin of a ledger's log: `lemel/<id>/<epoch>`, or an empty text before its first entry. */
export async function originOf(read: Query): Promise<string> {
  const [first] = await read('SELECT leaf FROM entry WHERE seq = 0');
  return first ? (JSON.parse(new TextDecoder().decode(first.leaf as ArrayBuffer)) as { log: string }).log : '';
}

async function hasEntries(read: Query): Promise<boolean> {
  const [table] = await read("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'entry'");
  return table !== undefined && (await read('SELECT 1 FROM entry LIMIT 1')).length > 0;
}

async function hasKeys(dir: string): Promise<boolean> {
  const keys = openReading(join(dir, 'keys.db'));
  try {
    return (await keys.read('SELECT 1 FROM subject_key LIMIT 1')).length > 0;
  } finally {
    await keys.close();
  }
}
