// One process for one data directory: a write transaction held open on lock.db for life, freed by the system when the process dies.
// Where lock.db is new, the ledger's own file is asked whether somebody has it open: deleting the lock is no way round it.
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type Connection, codeOf, connect, isOpenElsewhere, makeOwn, StorageFault } from './connection.ts';
import { isFull } from './spare.ts';

/** Another server has these data open. */
export class AlreadyOpen extends Error {}

export interface Lock {
  /** Whether the file that is held is still the one that another start would ask. */
  isHeld(): boolean;
  release(): void;
}

/** Takes the lock of a data directory, or throws AlreadyOpen; before anything else of this process opens the ledger. */
export function takeLock(dir: string): Lock {
  const path = join(dir, 'lock.db');
  makeOwn(path);
  const db = connect(path, 'write');
  try {
    db.run('BEGIN IMMEDIATE', []);
    if (isNew(db)) askLedger(db, join(dir, 'ledger.db'));
  } catch (error) {
    letGo(db);
    if (error instanceof AlreadyOpen) throw error;
    if (!/BUSY|LOCKED/.test(codeOf(error))) throw new StorageFault(codeOf(error));
    throw new AlreadyOpen('Another Lemel is running on these data. Use that one, or stop it first.');
  }
  const inode = inodeOf(path);
  return { isHeld: () => inodeOf(path) === inode, release: () => letGo(db) };
}

/** A lock that no start has asked the ledger about. */
const isNew = (db: Connection): boolean => db.all('PRAGMA user_version', [])[0]?.user_version === 0;

/** Whoever has the ledger open may be writing it under a lock that was deleted. Only a lock that was asked about is marked. */
function askLedger(db: Connection, ledger: string): void {
  if (existsSync(ledger) && isOpenElsewhere(ledger)) {
    throw new AlreadyOpen(
      'lock.db is new, but another program has ledger.db open: a Lemel whose lock was deleted, or a check or an export of these data. Stop it or let it end, then start again.',
    );
  }
  try {
    db.run('PRAGMA user_version = 1', []);
    db.run('COMMIT', []);
  } catch (error) {
    // On a full disk it stays unmarked, and the next start asks again.
    if (!isFull(error)) throw error;
    rollBack(db);
  }
  db.run('BEGIN IMMEDIATE', []);
}

function letGo(db: Connection): void {
  rollBack(db);
  db.close();
}

function rollBack(db: Connection): void {
  try {
    db.run('ROLLBACK', []);
  } catch {
    // the engine did so, or it was let go of before
  }
}

const inodeOf = (path: string): string => {
  const found = statSync(path, { throwIfNoEntry: false });
  return found ? `${found.dev} ${found.ino}` : '';
};
