// A data directory, opened: lock, three files brought to the newest schema, guards and memory checked, then the writer and the reader.
import { chmodSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Answer, Command } from '../ledger/leaf.ts';
import { base64url, equal } from '../log/bytes.ts';
import { formatCheckpoint } from '../log/checkpoint.ts';
import { type Frontier, rootOf } from '../log/merkle.ts';
import { formatVerifierKey, type LogKey, signNote, verifierKey } from '../log/note.ts';
import type { Instant } from '../units/dates.ts';
import { openAppender } from './append.ts';
import { sha256, signerOf } from './crypto.ts';
import { type Keys, openKeys } from './keys.ts';
import { takeLock } from './lock.ts';
import { noteCheckpoint, notedCheckpoints } from './memory.ts';
import { checkTriggers, migrate } from './migrate.ts';
import { secret } from './secrets.ts';
import { keptOf } from './shelf.ts';
import { type Connect, openFile, type SqliteFile } from './sqlite.ts';
import { readFrontier } from './tree.ts';

export interface StoreDeps {
  readonly dir: string;
  /** Where the numbered SQL files are. */
  readonly sqlDir: string;
  readonly clock: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
  /** Lets a test put faults between the ledger and its file. */
  readonly connect?: Connect;
}
export interface Store {
  /** Read only; there is no way to write but `record`. */
  readonly read: SqliteFile['read'];
  readonly keys: Keys;
  readonly log: string;
  readonly logKey: LogKey;
  readonly access: SqliteFile;
  readonly pepper: Uint8Array;
  readonly dir: string;
  /** Why nothing may be written, as a sentence; null when all is well. */
  readonly readOnly: string | null;
  /** The signing seed was made at this start: its recovery sheet has not been printed. */
  readonly seedIsNew: boolean;
  record(command: Command): Promise<Answer>;
  recorded(command: Pick<Command, 'id' | 'by' | 'lines'>): Promise<Answer | null>;
  /** The signed note of the newest checkpoint; noted outside the database because somebody is given it. */
  issueCheckpoint(): Promise<{ readonly size: number; readonly root: Uint8Array; readonly note: string }>;
  /** Calls back after each commit with the new size. */
  onCommit(listener: (size: number) => void): void;
  close(): Promise<void>;
  /** For rebuild and import alone: the ledger's file with its writer. */
  readonly file: SqliteFile;
}

const MINUTE_MS = 60_000;

/** Opens (or makes) the data directory. Throws AlreadyOpen, SchemaMismatch, BadSecret or a fault of the machine, each with a sentence. */
export async function openStore({ dir, sqlDir, clock, random, connect }: StoreDeps): Promise<Store> {
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  const unlock = await takeLock(join(dir, 'lock.db'));
  try {
    const file = openFile(join(dir, 'ledger.db'), connect);
    const keysFile = openFile(join(dir, 'keys.db'));
    const access = openFile(join(dir, 'access.db'));
    await migrate(file, sqlDir, 'ledger');
    await migrate(keysFile, sqlDir, 'keys');
    await migrate(access, sqlDir, 'access');
    for (const name of ['ledger.db', 'keys.db', 'access.db']) chmodSync(join(dir, name), 0o600);
    await checkTriggers(file, sqlDir, 'ledger');

    const keysDir = join(dir, 'keys');
    const seed = secret(keysDir, 'seed', random);
    const signer = signerOf(seed.bytes);
    const keys = openKeys(keysFile, random);
    const [first] = await file.read('SELECT seq, leaf, leaf_hash FROM entry WHERE seq = 0');
    const log = first ? (await keptOf(file.read, keys, first)).leaf.log : `lemel/${base64url(random(16))}/1`;
    const logKey = verifierKey(sha256, log, 1, signer.publicKey);
    if ('refused' in logKey) throw new Error(logKey.say);
    const vkey = formatVerifierKey(logKey);
    const memory = join(dir, 'checkpoints.log');
    const readOnly = (await keyTrouble(file, vkey)) ?? (await memoryTrouble(file, memory));

    let newest: { size: number; root: Uint8Array } | null = await newestOf(file);
    let notedAt = 0;
    const listeners: ((size: number) => void)[] = [];
    const note = (at: Instant) => {
      if (!newest) return;
      const text = formatCheckpoint({ origin: log, size: newest.size, root: newest.root });
      noteCheckpoint(memory, at, newest.size, newest.root, signer.sign(new TextEncoder().encode(text)));
      notedAt = at;
    };
    const appender = openAppender({
      file,
      keys,
      signer,
      vkey,
      log,
      clock,
      random,
      macKey: secret(keysDir, 'mac', random).bytes,
      onCommit: ({ size, root }) => {
        newest = { size, root };
        const now = clock();
        if (now - notedAt >= MINUTE_MS) note(now);
        for (const listener of listeners) listener(size);
      },
    });
    return {
      read: file.read,
      file,
      keys,
      log,
      logKey,
      access,
      dir,
      readOnly,
      pepper: secret(keysDir, 'pepper', random).bytes,
      seedIsNew: seed.made,
      record: (command) => (readOnly === null ? appender.record(command) : Promise.reject(new ReadOnly(readOnly))),
      recorded: appender.recorded,
      onCommit: (listener) => listeners.push(listener),
      async issueCheckpoint() {
        if (!newest) throw new Error('a ledger without entries has no checkpoint to issue');
        note(clock());
        const text = formatCheckpoint({ origin: log, size: newest.size, root: newest.root });
        return { ...newest, note: signNote(text, logKey, signer.sign) };
      },
      async close() {
        if (newest && readOnly === null) note(clock());
        for (const one of [file, keysFile, access]) await one.close();
        unlock();
      },
    };
  } catch (error) {
    unlock();
    throw error;
  }
}

/** Nothing may be written until the sentence it carries is dealt with. */
export class ReadOnly extends Error {}

async function newestOf(file: SqliteFile): Promise<{ size: number; root: Uint8Array } | null> {
  const [row] = await file.read('SELECT COALESCE(MAX(seq) + 1, 0) AS size FROM entry');
  const size = Number(row?.size);
  return size === 0 ? null : { size, root: rootAt(await readFrontier(file.read, size)) };
}

const rootAt = (frontier: Frontier): Uint8Array => rootOf(sha256, frontier);

async function keyTrouble(file: SqliteFile, vkey: string): Promise<string | null> {
  const [row] = await file.read('SELECT vkey FROM signing_key ORDER BY from_size DESC LIMIT 1');
  if (!row || row.vkey === vkey) return null;
  return 'The signing key beside these data is not the one this ledger was signed with. Put back keys/seed from the recovery sheet.';
}

/** Compares the ledger with the highest checkpoint noted outside it: behind it, or another history, and nothing may be written. */
async function memoryTrouble(file: SqliteFile, path: string): Promise<string | null> {
  const highest = notedCheckpoints(path).reduce<{ size: number; root: Uint8Array; at: string } | null>(
    (top, one) => (top && top.size >= one.size ? top : one),
    null,
  );
  if (!highest) return null;
  const size = (await newestOf(file))?.size ?? 0;
  if (size < highest.size) {
    return `This ledger holds ${size} entries, but ${highest.size} were signed by ${highest.at}: it is an older copy. Put back the newest one.`;
  }
  if (equal(rootAt(await readFrontier(file.read, highest.size)), highest.root)) return null;
  return `The first ${highest.size} entries are not the ones that were signed at ${highest.at}. Keep these files, and restore the last good copy.`;
}
