// The writer: commands queue, are decided over what stands in the file plus this batch, and are committed together, signed once.
import { type Drafted, decideCommand } from '../ledger/decide.ts';
import type { Answer, Command, Writer } from '../ledger/leaf.ts';
import { type Overlay, overlayOn } from '../ledger/overlay.ts';
import { utf8 } from '../log/bytes.ts';
import { type Json, jcs } from '../log/canonical.ts';
import { formatCheckpoint } from '../log/checkpoint.ts';
import { append, type Frontier, rootOf } from '../log/merkle.ts';
import { civilDateOf, type Instant, instant } from '../units/dates.ts';
import { StorageFault } from './connection.ts';
import { hmac, type Signer, sha256 } from './crypto.ts';
import { bytesOf, type Keys } from './keys.ts';
import type { Noted } from './memory.ts';
import { type Grown, hashOf, insertLeaves, insertMany, insertSealed, saveThings } from './rows.ts';
import { forget, type Memory, noMemory, remember, remembering, shelfOn } from './shelf.ts';
import { type SqliteFile, type Tx, turnOfTheLoop } from './sqlite.ts';
import { readFrontier } from './tree.ts';

export interface AppendDeps {
  readonly file: SqliteFile;
  readonly keys: Keys;
  readonly signer: Signer;
  readonly vkey: string;
  /** Origin of the log: `lemel/<id>/<epoch>`. */
  readonly log: string;
  readonly macKey: Uint8Array;
  readonly clock: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
  /** The tree as it stands in the file. */
  readonly frontier: Frontier;
  /** Called whenever the ledger has grown, with the checkpoint over it, before anybody is answered; it must not throw. */
  readonly onGrown: (frontier: Frontier, signed: Signed) => void;
  /** Asked inside the write transaction; it throws where nothing may be written. */
  readonly mayWrite: () => void;
}
/** A checkpoint with the signature over it. */
export type Signed = Noted;
export interface Appender {
  /** Writes a command once, however often it comes; refusals, questions and conflicts leave no trace. */
  record(command: Command): Promise<Answer>;
  /** The answer this command was given before, if it was: nobody is asked for a PIN twice. */
  recorded(command: Pick<Command, 'id' | 'by' | 'lines'>): Promise<Answer | null>;
}

const BATCH_MAX = 64;
interface Waiting {
  readonly command: Command;
  readonly answer: (answer: Answer) => void;
  readonly fail: (error: unknown) => void;
}
/** What the writer knows of the file; it holds while nobody else writes, which the count of all writes shows. */
interface Known {
  readonly frontier: Frontier;
  readonly memory: Memory;
  readonly writes: number;
}

/** The one writer of a ledger. Its promises fail with StorageFault, or with a bug of the command's own. */
export function openAppender(deps: AppendDeps): Appender {
  const waiting: Waiting[] = [];
  let known: Known = { frontier: deps.frontier, memory: noMemory(), writes: deps.file.writes() };
  let draining = false;

  async function drain(): Promise<void> {
    if (draining) return;
    draining = true;
    while (waiting.length > 0) {
      await turnOfTheLoop();
      await commitTogether(waiting.splice(0, BATCH_MAX));
    }
    draining = false;
  }

  async function commitTogether(batch: readonly Waiting[]): Promise<void> {
    const done = await commit(deps, batch, known);
    known = done.known;
    if ('written' in done) {
      for (const signed of done.written.signed) deps.onGrown(known.frontier, signed);
      for (const [index, one] of batch.entries()) one.answer(done.written.answers[index] as Answer);
    } else if (batch.length === 1 || isOfTheMachine(done.error)) for (const one of batch) one.fail(done.error);
    else for (const one of batch) await commitTogether([one]);
  }

  return {
    record: (command) =>
      new Promise((answer, fail) => {
        waiting.push({ command, answer, fail });
        void drain();
      }),
    recorded: async (command) => {
      const [row] = await deps.file.read('SELECT by, mac, from_seq, size FROM command WHERE id = ?', [command.id]);
      return row ? recordedAnswer(row, command, deps.macKey) : null;
    },
  };
}

/** Writes a batch in one transaction; `known` is what is known after it, which after a failure is the tree alone. */
async function commit(
  deps: AppendDeps,
  batch: readonly Pick<Waiting, 'command'>[],
  known: Known,
): Promise<{ readonly known: Known } & ({ readonly written: Batch } | { readonly error: unknown })> {
  const { frontier } = known;
  const memory = deps.file.writes() === known.writes ? known.memory : noMemory();
  const writes = deps.file.writes() + 1;
  const commands = batch.map(({ command }) => command);
  try {
    const written = await deps.file.write((tx) => writeBatch(tx, deps, commands, { frontier, memory }));
    remember(memory, written.overlay);
    return { known: { frontier: written.frontier, memory, writes }, written };
  } catch (error) {
    return { known: { frontier, memory: noMemory(), writes }, error };
  }
}

/** A bug of one command breaks a constraint or throws; it must hit only its author. Anything else hits all. */
const isOfTheMachine = (error: unknown) => error instanceof StorageFault && !error.code.startsWith('SQLITE_CONSTRAINT');

interface Batch {
  readonly answers: readonly Answer[];
  readonly overlay: Overlay;
  readonly frontier: Frontier;
  /** The checkpoint over what was written, after that of a commit which succeeded but said no. */
  readonly signed: readonly Signed[];
}

async function writeBatch(tx: Tx, deps: AppendDeps, commands: readonly Command[], known: Omit<Known, 'writes'>): Promise<Batch> {
  deps.mayWrite();
  const { size, shop, recorded } = await standing(tx, commands);
  // A commit that took effect but reported failure leaves the file ahead of what is remembered.
  if (size !== known.frontier.size) forget(known.memory);
  const frontier = size === known.frontier.size ? known.frontier : await readFrontier(tx.all, size);
  const before = size === known.frontier.size ? [] : await signedOver(tx, frontier);
  const overlay = overlayOn(remembering(shelfOn(tx.all, deps.keys), known.memory));
  const at = deps.clock();
  const writer = (drafted: number) => writerAt(overlay, shop, { ...deps, at, seq: size + drafted });
  const decided = await decideAll(overlay, commands, recorded, writer, deps.macKey);
  if (decided.drafted.length === 0) return { answers: decided.answers, overlay, frontier, signed: before };
  const { grown, after } = grow(frontier, decided.drafted);
  await saveThings(tx, overlay.things.values());
  await insertLeaves(tx, grown);
  await insertSealed(tx, deps.keys, decided.drafted, deps.random);
  await insertMany(
    tx,
    'command (id, by, mac, from_seq, size, at)',
    decided.fresh.map(({ id, by, mac, from_seq, size: count }) => [id, by, mac, from_seq, count, at]),
  );
  if (size === 0) await insertMany(tx, 'signing_key (from_size, vkey)', [[0, deps.vkey]]);
  const head = { size: after.size, root: rootOf(sha256, after) };
  const signature = deps.signer.sign(utf8(formatCheckpoint({ origin: deps.log, ...head })));
  await insertMany(tx, 'checkpoint (size, signature, issued)', [[after.size, signature, at]]);
  return { answers: decided.answers, overlay, frontier: after, signed: [...before, { ...head, signature, at }] };
}

async function signedOver(tx: Tx, frontier: Frontier): Promise<readonly Signed[]> {
  const rows = await tx.all('SELECT signature, issued FROM checkpoint WHERE size = ?', [frontier.size]);
  const head = { size: frontier.size, root: rootOf(sha256, frontier) };
  return rows.map(({ signature, issued }) => ({ ...head, signature: bytesOf(signature), at: instant(Number(issued)) }));
}

/** A command as it is recorded. */
interface Recorded {
  readonly id: string;
  readonly by: string;
  readonly mac: Uint8Array;
  readonly from_seq: number;
  readonly size: number;
}

/** Decides the commands in order, each over what those before it changed. */
async function decideAll(
  overlay: Overlay,
  commands: readonly Command[],
  recorded: Map<string, { readonly [column: string]: unknown }>,
  writer: (drafted: number) => Promise<Writer>,
  macKey: Uint8Array,
) {
  const answers: Answer[] = [];
  const drafted: Drafted[] = [];
  const fresh: Recorded[] = [];
  for (const command of commands) {
    const row = recorded.get(command.id);
    const now = await writer(drafted.length);
    const decided = row ? { answer: recordedAnswer(row, command, macKey) } : await decideCommand(overlay, command, now);
    if ('answer' in decided) {
      answers.push(decided.answer);
      continue;
    }
    drafted.push(...decided.drafted);
    const written = { from: now.seq, size: decided.drafted.length };
    const one = { id: command.id, by: command.by, mac: macOf(command, macKey), from_seq: written.from, size: written.size };
    fresh.push(one);
    recorded.set(command.id, { ...one });
    answers.push({ answer: 'written', ...written });
  }
  return { answers, drafted, fresh };
}

function grow(frontier: Frontier, drafted: readonly Drafted[]): { readonly grown: readonly Grown[]; readonly after: Frontier } {
  let after = frontier;
  const grown = drafted.map(({ kept, bytes }) => {
    const step = append(sha256, after, hashOf(kept.hash));
    after = step.frontier;
    return { kept, bytes, nodes: step.completed };
  });
  return { grown, after };
}

interface At extends Pick<AppendDeps, 'log' | 'random'> {
  readonly at: Instant;
  readonly seq: number;
}
/** The writer's own members: policy is the shop's as it stands, what this batch said of it included. */
async function writerAt(overlay: Overlay, id: unknown, { log, random, at, seq }: At): Promise<Writer> {
  const shop = typeof id === 'string' ? await overlay.thing(id) : [...overlay.things.values()].find(({ kind }) => kind === 'shop');
  const today = civilDateOf(at, shop?.says.zone ?? 'UTC');
  return { log, seq, shop: shop?.id, at, today, alone: shop?.says.staffing !== 'two', sha256, random };
}

/** How the file stands: its size, its shop, and those of the commands that were recorded before. */
async function standing(tx: Tx, commands: readonly Command[]) {
  const ids = JSON.stringify(commands.map(({ id }) => id));
  const rows = await tx.all('SELECT id, by, mac, from_seq, size FROM command WHERE id IN (SELECT value FROM json_each(?))', [ids]);
  const recorded = new Map<string, { readonly [column: string]: unknown }>(rows.map((row) => [String(row.id), row]));
  const [head] = await tx.all(
    "SELECT (SELECT COALESCE(MAX(seq) + 1, 0) FROM entry) AS size, (SELECT id FROM thing WHERE kind = 'shop') AS shop",
  );
  return { size: Number(head?.size), shop: head?.shop, recorded };
}

/** The same person and the same fields: the recorded answer; anything else under the same id is another form. */
function recordedAnswer(
  row: { readonly [column: string]: unknown },
  command: Pick<Command, 'by' | 'lines'>,
  macKey: Uint8Array,
): Extract<Answer, { answer: 'written' | 'form reused' }> {
  const recorded = { answer: 'written', from: Number(row.from_seq), size: Number(row.size) } as const;
  const same = row.by === command.by && Buffer.compare(bytesOf(row.mac), macOf(command, macKey)) === 0;
  return same ? recorded : { answer: 'form reused', recorded };
}

/** Keyed, since a plain hash of a form gives its short fields back to whoever tries them all. */
const macOf = ({ lines }: Pick<Command, 'lines'>, key: Uint8Array): Uint8Array => hmac(key, jcs(lines as unknown as Json));
