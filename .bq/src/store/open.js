// A data directory, opened: lock, three files brought to the newest schema, guards and memory checked, then the writer and the reader.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { base64url, equal, utf8 } from '../log/bytes.js';
import { formatCheckpoint } from '../log/checkpoint.js';
import { rootOf } from '../log/merkle.js';
import { formatVerifierKey, signNote, verifierKey } from '../log/note.js';
import { openAppender } from './append.js';
import { auditLog } from './audit.js';
import { sha256, signerOf } from './crypto.js';
import { openKeys } from './keys.js';
import { takeLock } from './lock.js';
import { noteCheckpoint, notedCheckpoints } from './memory.js';
import { checkTriggers, migrate } from './migrate.js';
import { secret } from './secrets.js';
import { keptOf } from './shelf.js';
import { openFile } from './sqlite.js';
import { readFrontier } from './tree.js';

const MINUTE_MS = 60_000;
/** After a month nobody sends a form again that was answered. */
const COMMANDS_KEPT_MS = 30 * 24 * 60 * MINUTE_MS;
/** Opens (or makes) the data directory. Throws AlreadyOpen, SchemaMismatch, BadSecret or StorageFault, each with a sentence. */
export async function openStore(deps) {
  const { dir } = deps;
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  const lock = takeLock(join(dir, 'lock.db'));
  const opened = [];
  const letGo = async () => {
    for (const one of opened) await one.close();
    lock.release();
  };
  const open = async (family, connect, ...pragmas) => {
    const file = openFile(join(dir, `${family}.db`), connect, ...pragmas);
    opened.push(file);
    await migrate(file, deps.sqlDir, family, join(dir, 'backups'));
    return file;
  };
  try {
    const file = await open('ledger', deps.connect, 'PRAGMA wal_autocheckpoint = 4000');
    const keysFile = await open('keys', undefined, 'PRAGMA secure_delete = ON');
    const access = await open('access', undefined, 'PRAGMA secure_delete = ON');
    await checkTriggers(file, deps.sqlDir, 'ledger');
    return await openChecked(deps, file, openKeys(keysFile, deps.random), access, letGo);
  } catch (error) {
    await letGo();
    throw error;
  }
}
async function openChecked({ dir, clock, random }, file, keys, access, letGo) {
  const keysDir = join(dir, 'keys');
  const seed = secret(keysDir, 'seed', random);
  const signer = signerOf(seed.bytes);
  const [first] = await file.read('SELECT seq, leaf, leaf_hash FROM entry WHERE seq = 0');
  const log = first ? (await keptOf(file.read, keys, first)).leaf.log : `lemel/${base64url(random(16))}/1`;
  const logKey = verifierKey(sha256, log, 1, signer.publicKey);
  if ('refused' in logKey) throw new Error(logKey.say);
  const vkey = formatVerifierKey(logKey);
  const memory = join(dir, 'checkpoints.log');
  let frontier = await currentFrontier(file);
  const readOnly = (await keyTrouble(file, vkey)) ?? (await memoryTrouble(file, frontier, memory));
  if (readOnly === null) await file.write((tx) => tx.run('DELETE FROM command WHERE at < ?', [clock() - COMMANDS_KEPT_MS]));
  let notedAt = 0;
  const listeners = [];
  const text = () => formatCheckpoint({ origin: log, size: frontier.size, root: rootOf(sha256, frontier) });
  const note = () => {
    noteCheckpoint(memory, clock(), frontier.size, rootOf(sha256, frontier), signer.sign(utf8(text())));
    notedAt = clock();
  };
  const onGrown = (grown) => {
    frontier = grown;
    if (clock() - notedAt >= MINUTE_MS) attempt(note);
    for (const listener of listeners) attempt(() => listener(grown.size));
  };
  const macKey = secret(keysDir, 'mac', random).bytes;
  const appender = openAppender({ file, keys, signer, vkey, log, clock, random, macKey, frontier, onGrown });
  return {
    ...{ read: file.read, values: file.values, snapshot: file.snapshot },
    ...{ file, keys, log, logKey, access, dir, readOnly },
    pepper: secret(keysDir, 'pepper', random).bytes,
    seedIsNew: seed.made,
    record: (command) => (readOnly === null ? appender.record(command) : Promise.reject(new ReadOnly(readOnly))),
    recorded: appender.recorded,
    onCommit: (listener) => listeners.push(listener),
    async issueCheckpoint() {
      const { size, root } = await headOf(file, frontier);
      if (size === 0) throw new Error('a ledger without entries has no checkpoint to issue');
      note();
      return { size, root, note: signNote(formatCheckpoint({ origin: log, size, root }), logKey, signer.sign) };
    },
    check(progress) {
      // What is noted was committed before: read first, it never counts more than the moment that is checked.
      const noted = notedCheckpoints(memory);
      return file.snapshot((read) => auditLog({ read, log, noted, vkey }, progress));
    },
    async close() {
      if (frontier.size > 0 && readOnly === null) attempt(note);
      await letGo();
    },
  };
}
/** What is written is written: trouble with noting or telling it must not look like trouble with writing. It is tried again at the next commit. */
function attempt(work) {
  try {
    work();
  } catch {
    // nothing to take back
  }
}
/** Nothing may be written until the sentence it carries is dealt with. */
export class ReadOnly extends Error {}
/** The head as whoever asks sees the ledger: a page that began before the last commit is given the one of its own moment. */
async function headOf(file, newest) {
  const size = await sizeOf(file);
  return { size, root: rootOf(sha256, size === newest.size ? newest : await readFrontier(file.read, size)) };
}
async function sizeOf(file) {
  const [row] = await file.read('SELECT COALESCE(MAX(seq) + 1, 0) AS size FROM entry');
  return Number(row?.size);
}
async function currentFrontier(file) {
  return readFrontier(file.read, await sizeOf(file));
}
async function keyTrouble(file, vkey) {
  const [row] = await file.read('SELECT vkey FROM signing_key ORDER BY from_size DESC LIMIT 1');
  if (!row || row.vkey === vkey) return null;
  return 'The signing key beside these data is not the one this ledger was signed with. Put back keys/seed from the recovery sheet.';
}
/** Compares the ledger with the highest checkpoint noted outside it: behind it, or another history, and nothing may be written. */
async function memoryTrouble(file, { size }, path) {
  const highest = notedCheckpoints(path).toSorted((a, b) => b.size - a.size)[0];
  if (!highest) return null;
  if (size < highest.size) {
    return `This ledger holds ${size} entries, but ${highest.size} were signed by ${highest.at}: it is an older copy. Put back the newest one.`;
  }
  if (equal(rootOf(sha256, await readFrontier(file.read, highest.size)), highest.root)) return null;
  return `The first ${highest.size} entries are not the ones that were signed at ${highest.at}. Keep these files, and restore the last good copy.`;
}
