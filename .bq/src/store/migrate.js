// Numbered SQL files, read by a person and never edited after they were first run: applied once, in order, each with its hash kept.
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
/** The schema in the file is not the one these migrations make. */
export class SchemaMismatch extends Error {}
/**
 * Brings a file to the newest schema of its family ('ledger', 'keys' or 'access'); answers how many migrations ran.
 * A file that holds a schema already is first copied into `backups`. Throws SchemaMismatch.
 */
export async function migrate(file, folder, family, backups) {
  const all = readMigrations(folder, family);
  await file.write((tx) => tx.run('CREATE TABLE IF NOT EXISTS migration (name TEXT PRIMARY KEY, hash TEXT NOT NULL) STRICT'));
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
async function backUp(file, folder, name) {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  rmSync(join(folder, name), { force: true });
  await file.copyTo(join(folder, name));
}
/** Compares every trigger in the file with the migrations' own text; throws SchemaMismatch, naming the first that is missing, differs or was added. */
export async function checkTriggers(file, folder, family) {
  const rows = await file.read("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
  const found = new Map(rows.map(({ name, sql }) => [String(name), squeezed(String(sql))]));
  const due = new Map();
  for (const text of readMigrations(folder, family).flatMap(({ sql }) => statements(sql))) {
    const [, verb, name] = /^(CREATE|DROP) TRIGGER (\w+)/.exec(text) ?? [];
    if (verb === 'DROP' && name) due.delete(name);
    if (verb === 'CREATE' && name) due.set(name, squeezed(text));
  }
  for (const name of new Set([...due.keys(), ...found.keys()])) {
    if (due.get(name) === found.get(name)) continue;
    throw new SchemaMismatch(
      `The guard ${name} of the ledger is missing, was changed or does not belong there. Restore a backup, or ask for help before writing on.`,
    );
  }
}
function readMigrations(folder, family) {
  const names = readdirSync(folder).filter((name) => name.startsWith(`${family}-`) && name.endsWith('.sql'));
  return names.sort().map((name) => {
    const sql = readFileSync(join(folder, name), 'utf8');
    return { name, sql, hash: createHash('sha256').update(sql).digest('hex') };
  });
}
function compare(due, name, hash) {
  if (!due) throw new SchemaMismatch(`The data was written by a newer version of this program (${name}). Start that version.`);
  if (due.name !== name || due.hash !== hash) throw new SchemaMismatch(`Migration ${name} differs from the one the data was made with.`);
}
async function apply(tx, { name, sql, hash }) {
  for (const statement of statements(sql)) await tx.run(statement);
  await tx.run('INSERT INTO migration (name, hash) VALUES (?, ?)', [name, hash]);
}
/** The statements of a migration: the engine runs only the first of several, so they are cut at each `;` that ends a line, or at `END;`. */
function statements(sql) {
  const lines = sql.split('\n').filter((line) => !line.startsWith('--') && line.trim() !== '');
  const found = [];
  let open = [];
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
const squeezed = (sql) => sql.replace(/\s+/g, ' ').trim();
