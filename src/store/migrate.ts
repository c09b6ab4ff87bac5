// Numbered SQL files, read by a person and never edited after they were first run: applied once, in order, each with its hash kept.
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { connect } from './connection.ts';
import type { Query, SqliteFile, Tx } from './sqlite.ts';

/** The schema in the file is not the one these migrations make. */
export class SchemaMismatch extends Error {}

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly hash: string;
}

/**
 * Brings a file to the newest schema of its family ('ledger', 'keys' or 'access'); answers how many migrations ran.
 * A file that holds a schema already is first copied into `backups`. Throws SchemaMismatch.
 */
export async function migrate(file: SqliteFile, folder: string, family: string, backups: string): Promise<number> {
  const all = readMigrations(folder, family);
  await file.write((tx) => tx.run(MIGRATIONS_TABLE));
  const done = await file.read('SELECT name, hash FROM migration ORDER BY name');
  for (const [index, { name, hash }] of done.entries()) compare(all[index], String(name), String(hash));
  const due = all.slice(done.length);
  const [next] = due;
  if (!next) return 0;
  if (done.length > 0) await backUp(file, backups, `before-${next.name}.db`);
  await file.write(async (tx) => {
    for (const migration of due) await apply(tx, migration);
  });
  return due.length;
}

/** A copy left by a migration that then failed is of the same state, and is made anew. */
async function backUp(file: SqliteFile, folder: string, name: string): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  rmSync(join(folder, name), { force: true });
  await file.copyTo(join(folder, name));
}

/** Compares every table, index and trigger of a file with what its migrations make; throws SchemaMismatch, naming the first that is missing, differs or was added. */
export async function checkSchema(read: Query, folder: string, family: string): Promise<void> {
  const done = await read('SELECT name, hash FROM migration ORDER BY name');
  const all = readMigrations(folder, family);
  for (const [index, { name, hash }] of done.entries()) compare(all[index], String(name), String(hash));
  if (done.length < all.length)
    throw new SchemaMismatch('The data were written by an older version of this program. Start it once, then check.');
  const due = schemaDue(all);
  const found = new Map((await read(SCHEMA)).map(({ name, type, sql }) => [String(name), [type, sql].join(' ')]));
  for (const name of new Set([...due.keys(), ...found.keys()])) {
    if (due.get(name) === found.get(name)) continue;
    throw new SchemaMismatch(
      `${name} of ${family}.db is missing, was changed or does not belong there. Restore a backup, or ask for help before writing on.`,
    );
  }
}

/** Names that the engine gives itself are of no table of ours. */
const SCHEMA = "SELECT name, type, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_stat%' ESCAPE '\\'";
const MIGRATIONS_TABLE = 'CREATE TABLE IF NOT EXISTS migration (name TEXT PRIMARY KEY, hash TEXT NOT NULL) STRICT';

function schemaDue(all: readonly Migration[]): ReadonlyMap<string, string> {
  const db = connect(':memory:', 'write');
  db.run(MIGRATIONS_TABLE, []);
  for (const statement of all.flatMap(({ sql }) => statements(sql))) db.run(statement, []);
  const due = new Map(db.all(SCHEMA, []).map(({ name, type, sql }) => [String(name), [type, sql].join(' ')]));
  db.close();
  return due;
}

function readMigrations(folder: string, family: string): readonly Migration[] {
  const names = readdirSync(folder).filter((name) => name.startsWith(`${family}-`) && name.endsWith('.sql'));
  return names.sort().map((name) => {
    const sql = readFileSync(join(folder, name), 'utf8');
    return { name, sql, hash: createHash('sha256').update(sql).digest('hex') };
  });
}

function compare(due: Migration | undefined, name: string, hash: string): void {
  if (!due) throw new SchemaMismatch(`The data was written by a newer version of this program (${name}). Start that version.`);
  if (due.name !== name || due.hash !== hash) throw new SchemaMismatch(`Migration ${name} differs from the one the data was made with.`);
}

async function apply(tx: Tx, { name, sql, hash }: Migration): Promise<void> {
  for (const statement of statements(sql)) await tx.run(statement);
  await tx.run('INSERT INTO migration (name, hash) VALUES (?, ?)', [name, hash]);
}

/** The statements of a migration: the engine runs only the first of several, so they are cut at each `;` that ends a line, or at `END;`. */
function statements(sql: string): readonly string[] {
  const lines = sql.split('\n').filter((line) => !line.startsWith('--') && line.trim() !== '');
  const found: string[] = [];
  let open: string[] = [];
  for (const line of lines) {
    open.push(line);
    const inTrigger = open[0]?.startsWith('CREATE TRIGGER');
    if (inTrigger ? /\bEND;$/.test(line) : line.endsWith(';')) {
      found.push(open.join('\n').replace(/;$/, ''));
      open = [];
    }
  }
  return found;
}
