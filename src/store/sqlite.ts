// One libSQL file: one writer client behind an async queue, one reader client, and writes only inside an explicit write transaction.
// A single SQLITE_BUSY poisons a connection (later autocommit writes on it report success and are lost), so any BUSY, LOCKED
// or failed COMMIT throws the client away (libsql-client-ts #352).
import { type Client, createClient, type InStatement, type InValue, type Row, type Transaction } from '@libsql/client';

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
  /** Empties the write-ahead log into the file and lets go of it. */
  close(): Promise<void>;
}
/** A fault of the machine: nothing was written; the cause is kept, parameters are not. */
export class StorageFault extends Error {
  readonly code: string;
  constructor(code: string) {
    super(`not written: ${code}`);
    this.name = 'StorageFault';
    this.code = code;
  }
}

export type Connect = (url: string, use: 'write' | 'read') => Client;
const connect: Connect = (url) => createClient({ url, concurrency: 1, timeout: 2000 });

const ATTEMPTS = 40;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** PRAGMAs are of a connection, not of the file. */
async function prepared(client: Client, pragma: string): Promise<Client> {
  await client.execute(pragma);
  return client;
}

/** Opens the file at `path`, made if missing. Only one process may write it. `connectWith` lets a test put faults in between. */
export function openFile(path: string, connectWith: Connect = connect): SqliteFile {
  const url = `file:${path}`;
  let writer: Client | null = null;
  let reader: Promise<Client> | null = null;
  let queue: Promise<unknown> = Promise.resolve();

  async function attempt<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
    writer ??= await prepared(connectWith(url, 'write'), 'PRAGMA journal_mode = WAL');
    const transaction = await writer.transaction('write');
    try {
      const result = await work(txOf(transaction));
      await commit(transaction);
      return result;
    } finally {
      transaction.close();
    }
  }

  async function persist<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
    for (let tried = 1; ; tried++) {
      try {
        return await attempt(work);
      } catch (error) {
        if (!isPassing(error)) throw scrubbed(error);
        writer?.close();
        writer = null;
        if (tried === ATTEMPTS) throw new StorageFault(codeOf(error));
        await pause(Math.min(250, 5 * tried) + (tried % 7) * 3);
      }
    }
  }

  return {
    write(work) {
      const turn = queue.then(() => persist(work));
      queue = turn.catch(() => undefined);
      return turn;
    },
    async read(sql, args = []) {
      for (let tried = 1; ; tried++) {
        try {
          reader ??= prepared(connectWith(url, 'read'), 'PRAGMA query_only = ON');
          return (await (await reader).execute({ sql, args: [...args] })).rows;
        } catch (error) {
          if (!isPassing(error)) throw scrubbed(error);
          (await reader)?.close();
          reader = null;
          if (tried === ATTEMPTS) throw new StorageFault(codeOf(error));
          await pause(5 * tried);
        }
      }
    },
    async close() {
      await queue;
      (await reader)?.close();
      reader = null;
      writer ??= connectWith(url, 'write');
      await writer.execute('PRAGMA wal_checkpoint(TRUNCATE)').catch(() => undefined);
      writer.close();
      writer = null;
    },
  };
}

function txOf(transaction: Transaction): Tx {
  const statement = (sql: string, args: readonly Value[]): InStatement => ({ sql, args: [...args] });
  return {
    all: async (sql, args = []) => (await transaction.execute(statement(sql, args))).rows,
    run: async (sql, args = []) => {
      await transaction.execute(statement(sql, args));
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
  return error instanceof CommitFailed || /BUSY|LOCKED|TRANSACTION_CLOSED/.test(code);
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
