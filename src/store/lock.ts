// One process for one data directory: a write transaction held open on lock.db for life, freed by the system when the process dies.
import { statSync } from 'node:fs';
import { type Connection, codeOf, connect, makeOwn, StorageFault } from './connection.ts';

/** Another server has these data open. */
export class AlreadyOpen extends Error {}

export interface Lock {
  /** Whether the file that is held is still the one that another start would ask: whoever deletes it lets a second server in. */
  isHeld(): boolean;
  release(): void;
}

/** Takes the lock, or throws AlreadyOpen. */
export function takeLock(path: string): Lock {
  makeOwn(path);
  const db = connect(path, 'write');
  try {
    db.run('BEGIN IMMEDIATE', []);
  } catch (error) {
    db.close();
    if (!/BUSY|LOCKED/.test(codeOf(error))) throw new StorageFault(codeOf(error));
    throw new AlreadyOpen('Another Lemel is running on these data. Use that one, or stop it first.');
  }
  const inode = inodeOf(path);
  return { isHeld: () => inodeOf(path) === inode, release: () => letGo(db) };
}

function letGo(db: Connection): void {
  try {
    db.run('ROLLBACK', []);
  } catch {
    // it was let go of before
  }
  db.close();
}

const inodeOf = (path: string): string => {
  const found = statSync(path, { throwIfNoEntry: false });
  return found ? `${found.dev} ${found.ino}` : '';
};
