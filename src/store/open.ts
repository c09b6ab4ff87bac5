// A data directory, opened: what must be there is asked for, the lock taken, three files brought to the newest schema, guards and memory checked.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Answer, Command } from '../ledger/leaf.ts';
import { formatCheckpoint } from '../log/checkpoint.ts';
import { type Frontier, rootOf } from '../log/merkle.ts';
import { type LogKey, signNote } from '../log/note.ts';
import { type Instant, instant } from '../units/dates.ts';
import { openAppender, type Signed } from './append.ts';
import { goneWords, photographsGone, troubleAtStart } from './at-start.ts';
import type { Audit } from './beside.ts';
import { checkData } from './check.ts';
import { clockTrouble } from './clock-trouble.ts';
import type { Connect } from './connection.ts';
import { sha256 } from './crypto.ts';
import { guardOf } from './guard.ts';
import { type Identity, identityOf, keyTrouble } from './identity.ts';
import { type Keys, openKeys } from './keys.ts';
import { type Lock, takeLock } from './lock.ts';
import { isRemembering, openMemory } from './memory.ts';
import { checkSchema, migrate } from './migrate.ts';
import { isSignedBy, type Kept, memoryTrouble, noteFrom, outsideTrouble } from './outside.ts';
import { sweepPhotos } from './photos.ts';
import { askForLedger, askForWhole } from './present.ts';
import { pruneCommands } from './rows.ts';
import { secret } from './secrets.ts';
import { isFull, openSpare, type Spare, sparing } from './spare.ts';
import { openFile, type SqliteFile } from './sqlite.ts';
import { readFrontier } from './tree.ts';

export interface StoreDeps {
  readonly dir: string;
  /** Where the numbered SQL files are. */
  readonly sqlDir: string;
  readonly clock: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
  /** There must be a ledger already: a name that was mistyped makes nothing. */
  readonly existing?: boolean;
  /** An export is about to be written into it; the keys may lie there already. */
  readonly importing?: boolean;
  /** Lets a test put faults between the ledger and its file. */
  readonly connect?: Connect;
  /** Checks the directory outside this thread; where none is given, in it. */
  readonly checkAside?: (dir: string, progress: (done: number) => void) => Promise<Audit>;
}
export interface Store extends Pick<SqliteFile, 'read' | 'snapshot'> {
  readonly keys: Keys;
  readonly log: string;
  readonly logKey: LogKey;
  readonly access: SqliteFile;
  readonly pepper: Uint8Array;
  readonly dir: string;
  /** Why nothing may be written, as a sentence; null when all is well. It may become so while the program runs. */
  readonly readOnly: string | null;
  /** What was found at the start and stops nobody, in sentences. */
  readonly told: readonly string[];
  /** How the clock disagrees with the newest entry, as a sentence; null where it does not. */
  clockTrouble(): string | null;
  /** The signing seed was made at this start: its recovery sheet has not been printed. */
  readonly seedIsNew: boolean;
  record(command: Command): Promise<Answer>;
  recorded(command: Pick<Command, 'id' | 'by' | 'lines'>): Promise<Answer | null>;
  /** The signed note of the newest checkpoint; inside a snapshot of that moment's. */
  issueCheckpoint(): Promise<{ readonly size: number; readonly root: Uint8Array; readonly note: string }>;
  /** The newest checkpoint, to be kept by whoever is answered; null before the first entry. */
  head(): Kept | null;
  /** Hears what somebody outside kept: where it is signed and this ledger is not what it was, nothing may be written any more. */
  hear(kept: Kept, keptBy: string): Promise<void>;
  /** Whether the record is whole and unaltered, as it stands now, whatever is written meanwhile. */
  check(progress?: (done: number) => void): Promise<Audit>;
  /** Why the next line of checkpoints.log waits for room: the system's word, or null. */
  memoryWaits(): string | null;
  /** Calls back after each commit with the new size. */
  onCommit(listener: (size: number) => void): void;
  close(): Promise<void>;
  /** For rebuild and import alone: the ledger's file with its writer. */
  readonly file: SqliteFile;
  /** For import alone: notes every checkpoint of what was imported. */
  noteAll(): Promise<void>;
}
/** Opens (or makes) the data directory. Throws NoLedger, Missing, AlreadyOpen, SchemaMismatch, BadSecret or StorageFault, each with a sentence. */
export async function openStore(deps: StoreDeps): Promise<Store> {
  const { dir } = deps;
  if (deps.existing) askForLedger(dir);
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  const spare = openSpare(dir);
  const lock = takeLock(dir);
  const opened: SqliteFile[] = [];
  const letGo = async () => {
    for (const one of opened) await one.close();
    lock.release();
  };
  const open = async (family: string, connect: Connect | undefined, ...pragmas: readonly string[]) => {
    const file = openFile(join(dir, `${family}.db`), connect, ...pragmas);
    opened.push(file);
    await migrate(file, deps.sqlDir, family, join(dir, 'backups'));
    await checkSchema(file.read, deps.sqlDir, family);
    return file;
  };
  try {
    await askForWhole(dir, deps.importing);
    sweepPhotos(join(dir, 'photos'));
    const file = await open('ledger', deps.connect, 'PRAGMA wal_autocheckpoint = 4000');
    const keysFile = await open('keys', undefined, 'PRAGMA secure_delete = ON');
    const access = sparing(await open('access', undefined, 'PRAGMA secure_delete = ON', 'PRAGMA wal_autocheckpoint = 64'), spare);
    return await openChecked(deps, { file, keys: openKeys(keysFile, deps.random), access, lock, spare, letGo });
  } catch (error) {
    await letGo();
    throw error;
  }
}

interface Opened {
  readonly file: SqliteFile;
  readonly keys: Keys;
  readonly access: SqliteFile;
  readonly lock: Lock;
  readonly spare: Spare;
  readonly letGo: () => Promise<void>;
}

async function openChecked(deps: StoreDeps, { file: raw, keys, access, lock, spare, letGo }: Opened): Promise<Store> {
  const { dir, clock, random } = deps;
  const own = await identityOf(dir, random, raw, keys);
  let head = await standing(raw);
  const { memory, told, trouble } = await recall(raw, dir, own, head.frontier.size);
  const { file, whyNot, mayWrite, stop } = guardOf(raw, lock, spare, trouble);
  const listeners: ((size: number) => void)[] = [];
  const onGrown = (frontier: Frontier, signed: Signed) => {
    head = { frontier, signed };
    memory.note(signed);
    for (const listener of listeners) attempt(() => listener(frontier.size));
  };
  const macKey = secret(join(dir, 'keys'), 'mac', random).bytes;
  const appender = openAppender({ ...own, file, keys, clock, random, macKey, frontier: head.frontier, onGrown, mayWrite });
  return {
    ...{ read: file.read, snapshot: file.snapshot, file, keys, access, dir, told },
    ...{ log: own.log, logKey: own.logKey, seedIsNew: own.seedIsNew },
    get readOnly() {
      return whyNot();
    },
    pepper: secret(join(dir, 'keys'), 'pepper', random).bytes,
    async record(command) {
      mayWrite();
      return appender.record(command);
    },
    recorded: appender.recorded,
    onCommit: (listener) => listeners.push(listener),
    head: () => head.signed,
    clockTrouble: () => (head.signed ? clockTrouble(head.signed.at, clock()) : null),
    async hear(kept, keptBy) {
      const why = whyNot() === null && (await troubleWith(file, own, head, kept, keptBy));
      if (why && stop(why)) memory.note({ ...kept, at: clock() });
    },
    issueCheckpoint: () => issue(file, own),
    check: (progress = () => undefined) => (deps.checkAside ? deps.checkAside(dir, progress) : checkData(dir, deps.sqlDir, progress)),
    memoryWaits: memory.trouble,
    noteAll: () => noteFrom(file.read, memory, 0),
    close: once(() => letGo().finally(memory.close)),
  };
}

/** What checkpoints.log remembers of this ledger and what it lacks; `trouble` is why nothing may be written, as a sentence. */
async function recall(file: SqliteFile, dir: string, { log, logKey, vkey }: Identity, size: number) {
  const path = join(dir, 'checkpoints.log');
  const remembered = await memoryTrouble(file.read, size, path, logKey, log);
  const trouble = (await keyTrouble(file, vkey)) ?? remembered.say ?? (await troubleAtStart(file.read, join(dir, 'ledger.db')));
  const forgot = size > 0 && !isRemembering(path);
  const memory = openMemory(path);
  if (trouble === null) {
    await pruneCommands(file).catch(unlessFull);
    await noteFrom(file.read, memory, forgot ? size - 1 : remembered.noted);
  }
  const gone = goneWords(await photographsGone(file.read, join(dir, 'photos')));
  return { memory, told: [...(forgot ? [NO_MEMORY] : []), ...gone], trouble };
}

/** Why a checkpoint that somebody kept shows that this ledger is not what it was; null where it does not, or we never signed it. */
async function troubleWith(
  file: SqliteFile,
  { log, logKey }: Identity,
  head: Standing,
  kept: Kept,
  keptBy: string,
): Promise<string | null> {
  if (isSame(kept, head.signed) || (await isOurs(file, kept)) || !isSignedBy(logKey, log, kept)) return null;
  return outsideTrouble(file.read, head.frontier.size, kept, keptBy);
}

async function issue(file: SqliteFile, { log, logKey }: Identity) {
  const { size, root, signature } = (await standing(file)).signed ?? nothingSigned();
  return { size, root, note: signNote(formatCheckpoint({ origin: log, size, root }), logKey, () => signature) };
}

const NO_MEMORY =
  'checkpoints.log is missing, so nothing outside shows whether this ledger is the newest one. It begins anew with the newest entry; compare that with the last slip.';

/** What is forgotten can be forgotten at another start. */
function unlessFull(error: unknown): void {
  if (!isFull(error)) throw error;
}

const isSame = (kept: Kept, signed: Kept | null): boolean => signed !== null && Buffer.compare(kept.signature, signed.signature) === 0;

/** Whether the signature is the one that stands over the first so many entries: a second history has another (Ed25519 signs the same only once). */
async function isOurs(file: SqliteFile, { size, signature }: Kept): Promise<boolean> {
  return (await file.read('SELECT 1 FROM checkpoint WHERE size = ? AND signature = ?', [size, signature])).length > 0;
}

function nothingSigned(): never {
  throw new Error('a ledger without entries has no checkpoint to issue');
}

/** Done the first time; later callers wait for the same. */
function once(work: () => Promise<void>): () => Promise<void> {
  let done: Promise<void> | null = null;
  return () => (done ??= work());
}

/** What is written is written: trouble with telling it must not look like trouble with writing. */
function attempt(work: () => void): void {
  try {
    work();
  } catch {
    // nothing to take back
  }
}

interface Standing {
  readonly frontier: Frontier;
  readonly signed: Signed | null;
}
/** The tree as it stands, or stood when the snapshot began, and the signature over it. */
async function standing(file: SqliteFile): Promise<Standing> {
  const [row] = await file.read('SELECT COALESCE(MAX(seq) + 1, 0) AS size FROM entry');
  const frontier = await readFrontier(file.read, Number(row?.size));
  const [last] = await file.read('SELECT signature, issued FROM checkpoint WHERE size = ?', [frontier.size]);
  if (!last) return { frontier, signed: null };
  const signature = new Uint8Array(last.signature as ArrayBuffer);
  return { frontier, signed: { size: frontier.size, root: rootOf(sha256, frontier), signature, at: instant(Number(last.issued)) } };
}
