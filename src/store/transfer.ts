// Export and import as JSON Lines, UTF-8: each leaf's exact bytes on a line of its own, the rest as objects with a `kind`.

import type { Leaf } from '../ledger/leaf.ts';
import { checkFields, entryType, isEntryType, openData } from '../ledger/registry.ts';
import { base64url, bytesOfBase64url, utf8 } from '../log/bytes.ts';
import { formatVerifierKey, verifierKey } from '../log/note.ts';
import { beginVerification, type Verification } from '../log/verify.ts';
import { auditLog } from './audit.ts';
import { StorageFault, type Value } from './connection.ts';
import { sha256 } from './crypto.ts';
import { bytesOf, type Keys } from './keys.ts';
import { applyChunk } from './replay.ts';
import { type Grown, insertLeaves, insertMany } from './rows.ts';
import { type Query, type SqliteFile, type Tx, turnOfTheLoop } from './sqlite.ts';

/** A file that is no export of a ledger, or not the one it says; the sentence names the line. */
export class BadImport extends Error {}

const CHUNK = 200;
const TABLES = {
  signing_key: ['from_size', 'vkey'],
  checkpoint: ['size', 'signature', 'issued'],
  cosignature: ['size', 'name', 'line'],
  sealed: ['seq', 'field', 'subject', 'iv', 'ciphertext'],
} as const;
type Table = keyof typeof TABLES;

/** The lines of an export: a head, the leaves in order, then keys, signatures and sealed values (which only keys.db opens). */
export async function* exportLines(read: Query, log: string): AsyncGenerator<string> {
  yield JSON.stringify({ kind: 'ledger', version: 1, log });
  for (let from = 0; ; from += CHUNK) {
    const rows = await read('SELECT leaf FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', [from, CHUNK]);
    for (const row of rows) yield new TextDecoder().decode(bytesOf(row.leaf));
    if (rows.length < CHUNK) break;
    await turnOfTheLoop();
  }
  for (const [table, columns] of Object.entries(TABLES)) {
    for (const row of await read(`SELECT ${columns.join(', ')} FROM ${table} ORDER BY 1, 2`)) {
      const said = columns.map((column) => [column, row[column] instanceof ArrayBuffer ? base64url(bytesOf(row[column])) : row[column]]);
      yield JSON.stringify({ kind: table, ...Object.fromEntries(said) });
    }
  }
}

/**
 * Writes an export into an empty ledger, checks all of it, and answers its size; root and checkpoints are then the same.
 * With `publicKey` it must be signed by that key. Throws BadImport.
 */
export async function importLines(file: SqliteFile, keys: Keys, lines: AsyncIterable<string>, publicKey?: Uint8Array): Promise<number> {
  try {
    return await file.write((tx) => importInto(tx, keys, lines, publicKey));
  } catch (error) {
    if (error instanceof StorageFault && /CONSTRAINT|MISMATCH/.test(error.code)) {
      throw new BadImport('The rows of this file do not hold together: one is doubled, out of order or not of its form.');
    }
    throw error;
  }
}

async function importInto(tx: Tx, keys: Keys, lines: AsyncIterable<string>, publicKey?: Uint8Array): Promise<number> {
  const [row] = await tx.all('SELECT COUNT(*) AS n FROM entry');
  if (Number(row?.n) > 0) throw new BadImport('This data directory holds a ledger already. Import into an empty one.');
  const reading = beginImport();
  const rows: Record<Table, Value[][]> = { signing_key: [], checkpoint: [], cosignature: [], sealed: [] };
  let leaves: Grown[] = [];
  let number = 0;
  for await (const line of lines) {
    const taken = reading.take(line, ++number);
    if ('row' in taken) rows[taken.table].push(taken.row);
    if ('kept' in taken) leaves.push(taken);
    if (leaves.length < CHUNK) continue;
    await insertReceived(tx, keys, leaves);
    await turnOfTheLoop();
    leaves = [];
  }
  await insertReceived(tx, keys, leaves);
  for (const [table, columns] of Object.entries(TABLES)) await insertMany(tx, `${table} (${columns.join(', ')})`, rows[table as Table]);
  const vkey = publicKey && vkeyOf(publicKey, reading.log());
  const audit = await auditLog({ read: tx.all, log: reading.log(), keys, ...(vkey ? { vkey } : {}) });
  if ('bad' in audit) throw new BadImport(audit.bad.say);
  return audit.size;
}

function vkeyOf(publicKey: Uint8Array, log: string): string {
  const key = verifierKey(sha256, log, 1, publicKey);
  if ('refused' in key) throw new BadImport(key.say);
  return formatVerifierKey(key);
}

function beginImport() {
  let begun: { readonly log: string; readonly verification: Verification } | null = null;
  const takeLeaf = (line: string, number: number): Grown => {
    if (!begun) throw new BadImport('Line 1 is not the head of an exported ledger.');
    const bytes = utf8(line);
    const fault = begun.verification.take(bytes);
    if (fault) throw new BadImport(`Line ${number}: ${fault.words}`);
    const { hash, nodes, ...taken } = begun.verification.taken();
    // A verifier knows no person; the types of the stamp are the ledger's own.
    const leaf = taken.leaf as Leaf;
    if (!isReadable(leaf))
      throw new BadImport(`Line ${number}: its type is not one this program knows, or its parts are not of their form.`);
    return { kept: { seq: leaf.seq, hash, leaf, opened: {} }, bytes, nodes };
  };
  return {
    take(line: string, number: number): Grown | { table: Table; row: Value[] } | { head: true } {
      const said = parsed(line, number);
      if (said.kind === undefined) return takeLeaf(line, number);
      if (said.kind === 'ledger' && number === 1 && said.version === 1 && typeof said.log === 'string') {
        begun = { log: said.log, verification: beginVerification(sha256, said.log, []) };
        return { head: true };
      }
      if (!Object.hasOwn(TABLES, String(said.kind))) throw new BadImport(`Line ${number} is of a kind this program does not know.`);
      const table = said.kind as Table;
      return { table, row: TABLES[table].map((column) => cellOf(said[column], column, number)) };
    },
    log(): string {
      if (!begun) throw new BadImport('The file is empty.');
      return begun.log;
    },
  };
}

/** Whether this program knows the type, and the open fields are as its schema asks. */
function isReadable(leaf: Leaf): boolean {
  if (!isEntryType(leaf.type, leaf.ver)) return false;
  const entry = entryType(leaf.type, leaf.ver);
  const open = Object.entries(entry.fields).filter(([, { sealed }]) => sealed === null || sealed === 'as its target');
  return checkFields({ ...entry, fields: Object.fromEntries(open) }, openData(leaf)) === null;
}

function parsed(line: string, number: number): Readonly<Record<string, unknown>> {
  try {
    const said: unknown = JSON.parse(line);
    if (typeof said === 'object' && said !== null) return said as Readonly<Record<string, unknown>>;
  } catch {
    // said below, with the number of the line
  }
  throw new BadImport(`Line ${number} is not JSON.`);
}

const BLOBS: readonly string[] = ['signature', 'iv', 'ciphertext'];

function cellOf(said: unknown, column: string, number: number): Value {
  const bytes = BLOBS.includes(column) && typeof said === 'string' ? bytesOfBase64url(said) : null;
  if (bytes) return bytes;
  if (BLOBS.includes(column) || (typeof said !== 'string' && typeof said !== 'number')) {
    throw new BadImport(`Line ${number}: ${column} is missing or not of its form.`);
  }
  return said;
}

async function insertReceived(tx: Tx, keys: Keys, received: readonly Grown[]): Promise<void> {
  const [first] = received;
  if (!first) return;
  await insertLeaves(tx, received);
  const leaves = received.map(({ kept }) => kept);
  const begun = leaves.filter(({ leaf }) => leaf.part[0] === 0);
  // What was typed into the forms is not in an export, so none of them is taken for the same: sent again it is answered as used.
  const commands = begun.map(({ seq, leaf: { command, by, part, at } }) => [command, by, new Uint8Array(32), seq, part[1], at]);
  await insertMany(tx, 'command (id, by, mac, from_seq, size, at)', commands);
  await applyChunk(tx, keys, first.kept.seq, leaves);
}
