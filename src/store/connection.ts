// One connection of the engine, and what its errors mean: synchronous, nothing but statements; whoever uses it keeps its rules (sqlite.ts).
import { chmodSync, closeSync, openSync } from 'node:fs';
import { ConnectionPool } from '@libsql/client/sqlite3';

export type Value = string | number | bigint | Uint8Array | null;
/** A row by its columns; BLOBs are ArrayBuffers. */
export type Row = { readonly [column: string]: unknown };
const SENTENCES: Readonly<Record<string, string>> = {
  FULL: 'The disk is full, so nothing was written. Free some space, then send it again.',
  READONLY: 'The data directory cannot be written. Give the program the right to write there, then start it again.',
  CANTOPEN: 'The data directory cannot be opened. Give the program the right to read and write there, then start it again.',
  CORRUPT: 'A file of the ledger is damaged, so nothing was written. Stop here, keep the files, and restore the last good copy.',
  NOTADB: 'A file of the ledger is no database any more. Stop here, keep the files, and restore the last good copy.',
  BUSY: 'Another program holds the ledger, so nothing was written. Close it, then send this again.',
};
/** A fault of the machine, with a sentence; the engine's code is kept, its parameters are not. */
export class StorageFault extends Error {
  readonly code: string;
  constructor(code: string) {
    const kind = Object.keys(SENTENCES).find((word) => code.startsWith(`SQLITE_${word}`));
    super(kind === undefined ? `The ledger's file could not be used (${code}). Check the disk, then send this again.` : SENTENCES[kind]);
    this.name = 'StorageFault';
    this.code = code;
  }
}

/** One connection of the engine: synchronous, each statement prepared once, for preparing it afresh is half of what an append costs. */
export interface Connection {
  all(sql: string, args: readonly Value[]): readonly Row[];
  run(sql: string, args: readonly Value[]): void;
  close(): void;
}
export type Connect = (path: string, use: 'write' | 'read') => Connection;

const STATEMENTS_MAX = 300;
/** How long the engine itself waits for another process, in ms: the program stands still meanwhile. */
const ENGINE_WAITS_MS = 250;

/** Connects through the client's own binding: what the client puts around each statement costs as much as the statement. */
export const connect: Connect = (path) => {
  const pool = new ConnectionPool(path, { timeout: ENGINE_WAITS_MS }, 1);
  const db = opened(pool);
  const statements = new Map<string, ReturnType<typeof db.prepare>>();
  const prepared = (sql: string) => {
    const kept = statements.get(sql) ?? db.prepare(sql);
    if (statements.size >= STATEMENTS_MAX) statements.clear();
    statements.set(sql, kept);
    return kept;
  };
  return {
    all: (sql, args) => prepared(sql).all(bound(args)) as Row[],
    run: (sql, args) => void prepared(sql).run(bound(args)),
    close() {
      statements.clear();
      pool.release(db);
      pool.close();
    },
  };
};

/**
 * Whether anybody has the file open, in this process or another: whoever does holds a shared lock on it for as long as that (sqlite.org/wal.html).
 * Nothing is prepared, for what was prepared keeps a connection's locks until its memory is collected.
 */
export function isOpenElsewhere(path: string): boolean {
  const pool = new ConnectionPool(path, { timeout: ENGINE_WAITS_MS }, 1);
  const db = opened(pool);
  try {
    db.exec('PRAGMA locking_mode = EXCLUSIVE; BEGIN IMMEDIATE; ROLLBACK');
    return false;
  } catch (error) {
    return /BUSY|LOCKED/.test(codeOf(error));
  } finally {
    pool.release(db);
    pool.close();
  }
}

/** The engine takes a missing value for NULL. */
function bound(args: readonly Value[]): readonly Value[] {
  if (args.includes(undefined as never)) throw new TypeError('a value of a statement is missing');
  return args;
}

/** The engine says "cannot open" in its own way, without a code. */
function opened(pool: ConnectionPool): ReturnType<ConnectionPool['acquireSync']> {
  try {
    return pool.acquireSync();
  } catch {
    throw new StorageFault('SQLITE_CANTOPEN');
  }
}

/**
 * Makes the file where it is missing, for nobody else to read. The write-ahead log and its index take the mode of their file.
 * A file that is there is never opened here: closing it would let go of every lock this process holds on it (POSIX, fcntl).
 */
export function makeOwn(path: string): void {
  try {
    closeSync(openSync(path, 'wx', 0o600));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw new StorageFault('SQLITE_CANTOPEN');
    for (const name of [path, `${path}-wal`, `${path}-shm`]) {
      try {
        chmodSync(name, 0o600);
      } catch {
        // not there yet, or somebody else's: the engine says so when it matters
      }
    }
  }
}

/** The engine's word for what went wrong; UNKNOWN where it said none. */
export function codeOf(error: unknown): string {
  for (let at = error; at instanceof Error; at = at.cause) {
    const { code, extendedCode } = at as { code?: unknown; extendedCode?: unknown };
    if (typeof extendedCode === 'string') return extendedCode;
    if (typeof code === 'string') return code;
  }
  return 'UNKNOWN';
}

/** Errors of the engine carry parameters, so only their code goes on; a bug of our own goes on as it is. */
export function scrubbed(error: unknown): unknown {
  const code = codeOf(error);
  return code.startsWith('SQLITE') ? new StorageFault(code) : error;
}
