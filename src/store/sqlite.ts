// One libSQL file: one writer connection behind an async queue, readers beside it, and writes only inside an explicit write transaction.
// A single SQLITE_BUSY poisons a connection (later autocommit writes on it report success and are lost: libsql-client-ts #352),
// so a connection that has seen any error is never used again.
import { AsyncLocalStorage } from 'node:async_hooks';
import { type Connect, type Connection, codeOf, connect, makeOwn, type Row, StorageFault, scrubbed, type Value } from './connection.ts';

export type Query = (sql: string, args?: readonly Value[]) => Promise<readonly Row[]>;
/** Statements inside one write transaction; there is no other way to write. */
export interface Tx {
  readonly all: Query;
  run(sql: string, args?: readonly Value[]): Promise<void>;
}
export interface SqliteFile {
  /** Runs `work` in a write transaction of its own, in order; on BUSY or a failed commit the whole of it again on a new connection. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /** Reads what is committed, or inside `snapshot` what was committed when it began. */
  readonly read: Query;
  /** Runs `work`, all of whose reads, handed on or through this file, see the file as it is now, whatever is written meanwhile. */
  snapshot<T>(work: (read: Query) => Promise<T>): Promise<T>;
  /** How many times `write` was called, by anybody. */
  writes(): number;
  /** A whole copy at `path`, where no file may be, made on a connection of its own. */
  copyTo(path: string): Promise<void>;
  /** Empties the write-ahead log into the file: what was deleted is then in neither. */
  emptyWal(): Promise<void>;
  /** The same, and lets go of the file. */
  close(): Promise<void>;
}

const ATTEMPTS = 40;
const VIEWS_KEPT = 4;
/** Lets everybody else have a turn: the engine never waits, so whoever reads or writes for long would keep the program to himself. */
export const turnOfTheLoop = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Opens the file at `path`, made if missing, for nobody else to read. Only one process may write it. `connectWith` lets a test put faults in between; PRAGMAs are the writer's. */
export function openFile(path: string, connectWith: Connect = connect, ...pragmas: readonly string[]): SqliteFile {
  makeOwn(path);
  const writer = connectionOf(() => connectWith(path, 'write'), 'PRAGMA journal_mode = WAL', ...pragmas);
  const reading = openReading(path, connectWith);
  let queue: Promise<unknown> = Promise.resolve();
  let writes = 0;
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = queue.then(work);
    queue = turn.catch(() => undefined);
    return turn;
  };
  const emptyWal = () => inTurn(() => writer.use(async (db) => void db.all('PRAGMA wal_checkpoint(TRUNCATE)', [])));
  return {
    ...reading,
    write(work) {
      writes++;
      return inTurn(() => writer.use((db) => inTransaction(db, work)));
    },
    writes: () => writes,
    copyTo: (to) => copyFile(path, to, connectWith),
    emptyWal,
    async close() {
      await reading.close();
      await emptyWal().catch(() => undefined);
      await writer.close();
    },
  };
}

/** Reads the file at `path` and cannot write it, beside whoever does. */
export function openReading(path: string, connectWith: Connect = connect): Pick<SqliteFile, 'read' | 'snapshot' | 'close'> {
  const make = () => connectionOf(() => connectWith(path, 'read'), 'PRAGMA query_only = ON');
  const reader = make();
  const idle: Reusable[] = [];
  const held = new AsyncLocalStorage<Connection>();
  const using = <T>(work: (db: Connection) => T): Promise<T> => {
    const db = held.getStore();
    return db ? said(() => work(db)) : reader.use(async (db) => work(db));
  };
  return {
    read: (sql, args = []) => using((db) => db.all(sql, args)),
    async snapshot(work) {
      const outer = held.getStore();
      if (outer) return work((sql, args = []) => said(() => outer.all(sql, args)));
      const view = idle.pop() ?? make();
      const db = await view.use(begun);
      try {
        const result = await held.run(db, () => work((sql, args = []) => said(() => db.all(sql, args))));
        db.run('COMMIT', []);
        if (idle.push(view) > VIEWS_KEPT) await idle.shift()?.close();
        return result;
      } catch (error) {
        rollBack(db);
        await view.close();
        throw error;
      }
    },
    async close() {
      for (const view of [reader, ...idle.splice(0)]) await view.close();
    },
  };
}

/** A whole copy of the file at `to`, where none may be, whoever writes it meanwhile. */
export async function copyFile(path: string, to: string, connectWith: Connect = connect): Promise<void> {
  makeOwn(to);
  const copier = connectionOf(() => connectWith(path, 'read'));
  await copier.use(async (db) => db.run('VACUUM INTO ?', [to]));
  await copier.close();
}

/** A transaction sees the file as it is at its first read. */
async function begun(db: Connection): Promise<Connection> {
  db.run('BEGIN', []);
  db.all('SELECT 1 FROM sqlite_schema LIMIT 1', []);
  return db;
}

/** The engine's error without its parameters. */
async function said<T>(work: () => T): Promise<T> {
  try {
    return work();
  } catch (error) {
    throw scrubbed(error);
  }
}

interface Reusable {
  /** Runs `work` on the connection; after any error on a new one, again if the error may pass. */
  use<T>(work: (db: Connection) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** A connection made when first needed and thrown away after any error. PRAGMAs are of a connection, so each new one is told them. */
function connectionOf(make: () => Connection, ...pragmas: readonly string[]): Reusable {
  let current: Connection | null = null;

  function open(): Connection {
    const db = make();
    current = db;
    for (const pragma of pragmas) db.all(pragma, []);
    return db;
  }
  function discard(): void {
    const db = current;
    current = null;
    db?.close();
  }

  return {
    async use(work) {
      for (let tried = 1; ; tried++) {
        try {
          return await work(current ?? open());
        } catch (error) {
          discard();
          if (!isPassing(error)) throw scrubbed(error);
          if (tried === ATTEMPTS) throw new StorageFault(codeOf(error));
          await pause(Math.min(250, 5 * tried) + (tried % 7) * 3);
        }
      }
    },
    close: async () => discard(),
  };
}

async function inTransaction<T>(db: Connection, work: (tx: Tx) => Promise<T>): Promise<T> {
  db.run('BEGIN IMMEDIATE', []);
  try {
    const result = await work({ all: async (sql, args = []) => db.all(sql, args), run: async (sql, args = []) => db.run(sql, args) });
    commit(db);
    return result;
  } catch (error) {
    rollBack(db);
    throw error;
  }
}

/** A connection that is closed with its transaction open holds the lock until its memory is collected. */
function rollBack(db: Connection): void {
  try {
    db.run('ROLLBACK', []);
  } catch {
    // the connection is thrown away whatever it says
  }
}

/** A commit that fails may have succeeded: whoever retries must be able to see that it did. */
class CommitFailed extends Error {
  readonly code: string;
  constructor(cause: unknown) {
    super('commit failed', { cause });
    this.code = codeOf(cause);
  }
}

function commit(db: Connection): void {
  try {
    db.run('COMMIT', []);
  } catch (error) {
    throw new CommitFailed(error);
  }
}

/** Worth another try on a new connection. A full disk is not: it is said at once. */
function isPassing(error: unknown): boolean {
  const code = codeOf(error);
  if (/FULL|READONLY|CORRUPT|NOTADB|IOERR/.test(code)) return false;
  return error instanceof CommitFailed || /BUSY|LOCKED|CLOSED/.test(code);
}
