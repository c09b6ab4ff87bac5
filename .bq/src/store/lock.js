// One process for one data directory: a write transaction held open on lock.db for life, freed by the system when the process dies.
import { statSync } from 'node:fs';
import { codeOf, connect, makeOwn, StorageFault } from './connection.js';
/** Another server has these data open. */
export class AlreadyOpen extends Error {}
/** Takes the lock, or throws AlreadyOpen. */
export function takeLock(path) {
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
function letGo(db) {
  try {
    db.run('ROLLBACK', []);
  } catch {
    // it was let go of before
  }
  db.close();
}
const inodeOf = (path) => {
  const found = statSync(path, { throwIfNoEntry: false });
  return found ? `${found.dev} ${found.ino}` : '';
};
