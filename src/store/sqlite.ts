// One libSQL file: one writer client behind an async queue, one reader client, and writes only inside an explicit write transaction.
// A single SQLITE_BUSY poisons a connection (later autocommit writes on it report success and are lost: libsql-client-ts #352),
// so a client that has seen any error is never used again.
import type { Client, InValue, Row, Transaction } from '@libsql/client';
import { ConnectionPool, Sqlite3Client } from '@libsql/client/sqlite3';

export type Value = InValue;
/** Statements inside one write transaction; there is no other way to write. */
export interface Tx {
  all(sql: string, args?: readonly Value[]): Promise<readonly Row[]>;
  run(sql: string, args?: readonly Value[]): Promise<void>;
}
export interface SqliteFile {
  /** Runs `work` in a write transaction of its own, in order; on BUSY or a failed commit the whole of it again on a new client. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  read(sql: string, args?: readonly Value[]): Promise<readonly Row[]>;
  /** How many times `write` was called, by anybody. */
  writes(): number;
  /** A whole copy at `path`, where no file may be, made on a client of its own. */
  copyTo(path: string): Promise<void>;
  /** Empties the write-ahead log into the file: what was deleted is then in neither. */
  emptyWal(): Promise<void>;
  /** The same, and lets go of the file. */
  close(): Promise<void>;
}

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

export type Connect = (path: string, use: 'write' | 'read') => Client;

const STATEMENTS_MAX = 300;

/** A client of one connection that prepares each statement once: preparing them afresh is half of what an append costs. */
export const connect: Connect = (path) => {
  const pool = new ConnectionPool(path, { timeout: 250 }, 1);
  const db = opened(pool);
  const prepare = db.prepare.bind(db);
  const prepared = new Map<string, ReturnType<typeof prepare>>();
  db.prepare = ((sql: string) => {
    const kept = prepared.get(sql) ?? described(prepare(sql));
    if (prepared.size >= STATEMENTS_MAX) prepared.clear();
    prepared.set(sql, kept);
    return kept;
  }) as typeof db.prepare;
  pool.release(db);
  return new Sqlite3Client(pool, 'number');
};

/** The client asks a statement each time what it returns; it is answered from memory. */
function described<S extends { readonly reader: boolean; raw(on?: boolean): S; columns(): unknown }>(statement: S): S {
  if (!statement.reader) {
    statement.raw = () => {
      throw NO_ROWS;
    };
    return statement;
  }
  const columns = statement.columns();
  statement.columns = () => columns;
  return statement;
}
const NO_ROWS = new Error('this statement returns no rows');

/** The engine says "cannot open" in its own way, without a code. */
function opened(pool: ConnectionPool): ReturnType<ConnectionPool['acquireSync']> {
  try {
    return pool.acquireSync();
  } catch {
    throw new StorageFault('SQLITE_CANTOPEN');
  }
}

const ATTEMPTS = 40;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Opens the file at `path`, made if missing. Only one process may write it. `connectWith` lets a test put faults in between; PRAGMAs are the writer's. */
export function openFile(path: string, connectWith: Connect = connect, ...pragmas: readonly string[]): SqliteFile {
  const writer = clientOf(() => connectWith(path, 'write'), 'PRAGMA journal_mode = WAL', ...pragmas);
  const reader = clientOf(() => connectWith(path, 'read'), 'PRAGMA query_only = ON');
  let queue: Promise<unknown> = Promise.resolve();
  let writes = 0;
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = queue.then(work);
    queue = turn.catch(() => undefined);
    return turn;
  };
  const emptyWal = () => inTurn(() => writer.use(async (client) => void (await client.execute('PRAGMA wal_checkpoint(TRUNCATE)'))));
  return {
    write(work) {
      writes++;
      return inTurn(() => writer.use((client) => inTransaction(client, work)));
    },
    writes: () => writes,
    read: (sql, args = []) => reader.use(async (client) => (await client.execute({ sql, args: [...args] })).rows),
    async copyTo(to) {
      const copier = clientOf(() => connectWith(path, 'read'));
      await copier.use((client) => client.execute({ sql: 'VACUUM INTO ?', args: [to] }));
      await copier.close();
    },
    emptyWal,
    async close() {
      await reader.close();
      await emptyWal().catch(() => undefined);
      await writer.close();
    },
  };
}

interface Reusable {
  /** Runs `work` on the client; after any error on a new one, again if the error may pass. */
  use<T>(work: (client: Client) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** A client made when first needed and thrown away after any error. PRAGMAs are of a connection, so each new one is told them. */
function clientOf(make: () => Client, ...pragmas: readonly string[]): Reusable {
  let current: Promise<Client> | null = null;

  async function open(): Promise<Client> {
    const client = make();
    for (const pragma of pragmas) await client.execute(pragma);
    return client;
  }
  async function discard(used: Promise<Client>): Promise<void> {
    if (current === used) current = null;
    const client = await used.catch(() => null);
    client?.close();
  }

  return {
    async use(work) {
      for (let tried = 1; ; tried++) {
        current ??= open();
        const used = current;
        try {
          return await work(await used);
        } catch (error) {
          await discard(used);
          if (!isPassing(error)) throw scrubbed(error);
          if (tried === ATTEMPTS) throw new StorageFault(codeOf(error));
          await pause(Math.min(250, 5 * tried) + (tried % 7) * 3);
        }
      }
    },
    close: async () => {
      if (current) await discard(current);
    },
  };
}

async function inTransaction<T>(client: Client, work: (tx: Tx) => Promise<T>): Promise<T> {
  const transaction = await client.transaction('write');
  try {
    const result = await work(txOf(transaction));
    await commit(transaction);
    return result;
  } catch (error) {
    rollBack(transaction);
    throw error;
  }
}

function rollBack(transaction: Transaction): void {
  try {
    transaction.close();
  } catch {
    // the client is thrown away whatever it says
  }
}

function txOf(transaction: Transaction): Tx {
  return {
    all: async (sql, args = []) => (await transaction.execute({ sql, args: [...args] })).rows,
    run: async (sql, args = []) => {
      await transaction.execute({ sql, args: [...args] });
    },
  };
}

/** A commit that fails may have succeeded: whoever retries must be able to see that it did. */
class CommitFailed extends Error {
  readonly code: string;
  constructor(cause: unknown) {
    super('commit failed', { cause });
    this.code = codeOf(cause);
  }
}

async function commit(transaction: Transaction): Promise<void> {
  try {
    await transaction.commit();
  } catch (error) {
    throw new CommitFailed(error);
  }
}

/** Worth another try on a new client. A full disk is not: it is said at once. */
function isPassing(error: unknown): boolean {
  const code = codeOf(error);
  if (/FULL|READONLY|CORRUPT|NOTADB|IOERR/.test(code)) return false;
  return error instanceof CommitFailed || /BUSY|LOCKED|CLOSED/.test(code);
}

function codeOf(error: unknown): string {
  for (let at = error; at instanceof Error; at = at.cause) {
    const { code, extendedCode } = at as { code?: unknown; extendedCode?: unknown };
    if (typeof extendedCode === 'string') return extendedCode;
    if (typeof code === 'string') return code;
  }
  return 'UNKNOWN';
}

/** Errors of the engine carry parameters, so only their code goes on; a bug of our own goes on as it is. */
function scrubbed(error: unknown): unknown {
  const code = codeOf(error);
  return code.startsWith('SQLITE') ? new StorageFault(code) : error;
}
