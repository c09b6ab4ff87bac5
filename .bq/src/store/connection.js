// One connection of the engine, and what its errors mean: synchronous, nothing but statements; whoever uses it keeps its rules (sqlite.ts).
import { chmodSync, closeSync, openSync } from 'node:fs';
import { ConnectionPool } from '@libsql/client/sqlite3';

const SENTENCES = {
  FULL: 'The disk is full, so nothing was written. Free some space, then send it again.',
  READONLY: 'The data directory cannot be written. Give the program the right to write there, then start it again.',
  CANTOPEN: 'The data directory cannot be opened. Give the program the right to read and write there, then start it again.',
  CORRUPT: 'A file of the ledger is damaged, so nothing was written. Stop here, keep the files, and restore the last good copy.',
  NOTADB: 'A file of the ledger is no database any more. Stop here, keep the files, and restore the last good copy.',
  BUSY: 'Another program holds the ledger, so nothing was written. Close it, then send this again.',
};
/** A fault of the machine, with a sentence; the engine's code is kept, its parameters are not. */
export class StorageFault extends Error {
  code;
  constructor(code) {
    const kind = Object.keys(SENTENCES).find((word) => code.startsWith(`SQLITE_${word}`));
    super(kind === undefined ? `The ledger's file could not be used (${code}). Check the disk, then send this again.` : SENTENCES[kind]);
    this.name = 'StorageFault';
    this.code = code;
  }
}
const STATEMENTS_MAX = 300;
/** How long the engine itself waits for another process, in ms: the program stands still meanwhile. */
const ENGINE_WAITS_MS = 250;
/** Connects through the client's own binding: what the client puts around each statement costs as much as the statement. */
export const connect = (path) => {
  const pool = new ConnectionPool(path, { timeout: ENGINE_WAITS_MS }, 1);
  const db = opened(pool);
  const statements = new Map();
  const prepared = (sql, raw) => {
    const name = raw ? `values ${sql}` : sql;
    const kept = statements.get(name) ?? (raw ? db.prepare(sql).raw(true) : db.prepare(sql));
    if (statements.size >= STATEMENTS_MAX) statements.clear();
    statements.set(name, kept);
    return kept;
  };
  return {
    all: (sql, args) => prepared(sql, false).all(bound(args)),
    values: (sql, args) => prepared(sql, true).all(bound(args)),
    run: (sql, args) => void prepared(sql, false).run(bound(args)),
    close() {
      statements.clear();
      pool.release(db);
      pool.close();
    },
  };
};
/** The engine takes a missing value for NULL. */
function bound(args) {
  if (args.includes(undefined)) throw new TypeError('a value of a statement is missing');
  return args;
}
/** The engine says "cannot open" in its own way, without a code. */
function opened(pool) {
  try {
    return pool.acquireSync();
  } catch {
    throw new StorageFault('SQLITE_CANTOPEN');
  }
}
/** Makes the file where it is missing, for nobody else to read. The write-ahead log and its index take the mode of their file. */
export function makeOwn(path) {
  try {
    closeSync(openSync(path, 'a', 0o600));
  } catch {
    throw new StorageFault('SQLITE_CANTOPEN');
  }
  for (const name of [path, `${path}-wal`, `${path}-shm`]) {
    try {
      chmodSync(name, 0o600);
    } catch {
      // not there yet, or somebody else's: the engine says so when it matters
    }
  }
}
/** The engine's word for what went wrong; UNKNOWN where it said none. */
export function codeOf(error) {
  for (let at = error; at instanceof Error; at = at.cause) {
    const { code, extendedCode } = at;
    if (typeof extendedCode === 'string') return extendedCode;
    if (typeof code === 'string') return code;
  }
  return 'UNKNOWN';
}
/** Errors of the engine carry parameters, so only their code goes on; a bug of our own goes on as it is. */
export function scrubbed(error) {
  const code = codeOf(error);
  return code.startsWith('SQLITE') ? new StorageFault(code) : error;
}
