// One libSQL file: one writer connection behind an async queue, readers beside it, and writes only inside an explicit write transaction.
// A single SQLITE_BUSY poisons a connection (later autocommit writes on it report success and are lost: libsql-client-ts #352),
// so a connection that has seen any error is never used again.
import { AsyncLocalStorage } from 'node:async_hooks';
import { codeOf, connect, makeOwn, StorageFault, scrubbed } from './connection.js';

const ATTEMPTS = 40;
const VIEWS_KEPT = 4;
/** Lets everybody else have a turn: the engine never waits, so whoever reads or writes for long would keep the program to himself. */
export const turnOfTheLoop = () => new Promise((resolve) => setImmediate(resolve));
const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
/** Opens the file at `path`, made if missing, for nobody else to read. Only one process may write it. `connectWith` lets a test put faults in between; PRAGMAs are the writer's. */
export function openFile(path, connectWith = connect, ...pragmas) {
  makeOwn(path);
  const writer = connectionOf(() => connectWith(path, 'write'), 'PRAGMA journal_mode = WAL', ...pragmas);
  const reading = openReading(path, connectWith);
  let queue = Promise.resolve();
  let writes = 0;
  const inTurn = (work) => {
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
    async copyTo(to) {
      makeOwn(to);
      const copier = connectionOf(() => connectWith(path, 'read'));
      await copier.use(async (db) => db.run('VACUUM INTO ?', [to]));
      await copier.close();
    },
    emptyWal,
    async close() {
      await reading.close();
      await emptyWal().catch(() => undefined);
      await writer.close();
    },
  };
}
/** Reads the file at `path` and cannot write it, beside whoever does. */
export function openReading(path, connectWith = connect) {
  const make = () => connectionOf(() => connectWith(path, 'read'), 'PRAGMA query_only = ON');
  const reader = make();
  const idle = [];
  const held = new AsyncLocalStorage();
  const using = (work) => {
    const db = held.getStore();
    return db ? said(() => work(db)) : reader.use(async (db) => work(db));
  };
  return {
    read: (sql, args = []) => using((db) => db.all(sql, args)),
    values: (sql, args = []) => using((db) => db.values(sql, args)),
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
/** A transaction sees the file as it is at its first read. */
async function begun(db) {
  db.run('BEGIN', []);
  db.all('SELECT 1 FROM sqlite_schema LIMIT 1', []);
  return db;
}
/** The engine's error without its parameters. */
async function said(work) {
  try {
    return work();
  } catch (error) {
    throw scrubbed(error);
  }
}
/** A connection made when first needed and thrown away after any error. PRAGMAs are of a connection, so each new one is told them. */
function connectionOf(make, ...pragmas) {
  let current = null;
  function open() {
    const db = make();
    current = db;
    for (const pragma of pragmas) db.all(pragma, []);
    return db;
  }
  function discard() {
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
async function inTransaction(db, work) {
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
function rollBack(db) {
  try {
    db.run('ROLLBACK', []);
  } catch {
    // the connection is thrown away whatever it says
  }
}
/** A commit that fails may have succeeded: whoever retries must be able to see that it did. */
class CommitFailed extends Error {
  code;
  constructor(cause) {
    super('commit failed', { cause });
    this.code = codeOf(cause);
  }
}
function commit(db) {
  try {
    db.run('COMMIT', []);
  } catch (error) {
    throw new CommitFailed(error);
  }
}
/** Worth another try on a new connection. A full disk is not: it is said at once. */
function isPassing(error) {
  const code = codeOf(error);
  if (/FULL|READONLY|CORRUPT|NOTADB|IOERR/.test(code)) return false;
  return error instanceof CommitFailed || /BUSY|LOCKED|CLOSED/.test(code);
}
