// The writer: commands queue, are decided over what stands in the file plus this batch, and are committed together, signed once.

import { type Drafted, decideCommand } from '../ledger/decide.ts';
import type { Answer, Command, Writer } from '../ledger/leaf.ts';
import { type Overlay, overlayOn } from '../ledger/overlay.ts';
import { entryType } from '../ledger/registry.ts';
import { bytesOfBase64url, utf8 } from '../log/bytes.ts';
import { type Json, jcs } from '../log/canonical.ts';
import { formatCheckpoint } from '../log/checkpoint.ts';
import { append, type Frontier, type MerkleNode, rootOf } from '../log/merkle.ts';
import { wordsOf } from '../projections/find.ts';
import { civilDateOf, type Instant } from '../units/dates.ts';
import { encrypt, hmac, type Signer, sha256 } from './crypto.ts';
import { bytesOf, type Keys } from './keys.ts';
import { sealedAbout, shelfOn } from './shelf.ts';
import type { SqliteFile, Tx, Value } from './sqlite.ts';
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
  /** Called after each commit, never before. */
  readonly onCommit: (written: { readonly size: number; readonly root: Uint8Array; readonly drafted: readonly Drafted[] }) => void;
}
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
interface Batch {
  readonly answers: readonly Answer[];
  readonly drafted: readonly Drafted[];
  readonly frontier: Frontier;
}

export function openAppender(deps: AppendDeps): Appender {
  const waiting: Waiting[] = [];
  let frontier: Frontier | null = null;
  let draining = false;

  async function drain(): Promise<void> {
    if (draining) return;
    draining = true;
    while (waiting.length > 0) await commitTogether(waiting.splice(0, BATCH_MAX));
    draining = false;
  }

  /** A bug in a batch hits only its author: each command is then tried alone. */
  async function commitTogether(batch: readonly Waiting[]): Promise<void> {
    try {
      const written = await deps.file.write((tx) =>
        writeBatch(
          tx,
          deps,
          batch.map(({ command }) => command),
          frontier,
        ),
      );
      frontier = written.frontier;
      if (written.drafted.length > 0) {
        deps.onCommit({ size: frontier.size, root: rootOf(sha256, frontier), drafted: written.drafted });
      }
      for (const [index, one] of batch.entries()) one.answer(written.answers[index] as Answer);
    } catch (error) {
      if (batch.length === 1) batch[0]?.fail(error);
      else for (const one of batch) await commitTogether([one]);
    }
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

async function writeBatch(tx: Tx, deps: AppendDeps, commands: readonly Command[], remembered: Frontier | null): Promise<Batch> {
  const [head] = await tx.all('SELECT COALESCE(MAX(seq) + 1, 0) AS size FROM entry');
  const size = Number(head?.size);
  let frontier = remembered?.size === size ? remembered : await readFrontier(tx.all, size);
  const overlay = overlayOn(shelfOn(tx.all, deps.keys));
  const answers: Answer[] = [];
  const drafted: Drafted[] = [];
  const recorded = await knownCommands(tx, commands);
  const fresh: { command: Command; from: number; size: number }[] = [];
  const writer = await writerOf(overlay, tx, deps);
  for (const command of commands) {
    const twin = fresh.find((one) => one.command.id === command.id);
    const row = twin
      ? { by: twin.command.by, mac: macOf(twin.command, deps.macKey), from_seq: twin.from, size: twin.size }
      : recorded.get(command.id);
    if (row) {
      answers.push(recordedAnswer(row, command, deps.macKey));
      continue;
    }
    const decided = await decideCommand(overlay, command, { ...writer, seq: size + drafted.length });
    if ('answer' in decided) {
      answers.push(decided.answer);
      continue;
    }
    const from = size + drafted.length;
    drafted.push(...decided.drafted);
    fresh.push({ command, from, size: decided.drafted.length });
    answers.push({ answer: 'written', from, size: decided.drafted.length });
  }
  if (drafted.length === 0) return { answers, drafted, frontier };
  const completed: MerkleNode[] = [];
  for (const { kept } of drafted) {
    const grown = append(sha256, frontier, hashOf(kept.hash));
    frontier = grown.frontier;
    completed.push(...grown.completed);
  }
  await saveThings(tx, overlay);
  await insertLeaves(tx, drafted, deps);
  await insertMany(
    tx,
    'node (level, position, hash)',
    completed.map(({ level, index, hash }) => [level, index, hash]),
  );
  const macs = fresh.map(({ command, from, size: count }) => [command.id, command.by, macOf(command, deps.macKey), from, count, writer.at]);
  await insertMany(tx, 'command (id, by, mac, from_seq, size, at)', macs);
  if (size === 0) await insertMany(tx, 'signing_key (from_size, vkey)', [[0, deps.vkey]]);
  const text = formatCheckpoint({ origin: deps.log, size: frontier.size, root: rootOf(sha256, frontier) });
  await insertMany(tx, 'checkpoint (size, signature, issued)', [[frontier.size, deps.signer.sign(utf8(text)), writer.at]]);
  return { answers, drafted, frontier };
}

const hashOf = (hash: string): Uint8Array => bytesOfBase64url(hash) ?? new Uint8Array();

/** The writer's own members: policy is read from the shop as it stands before the batch. */
async function writerOf(overlay: Overlay, tx: Tx, deps: AppendDeps): Promise<Writer> {
  const [row] = await tx.all("SELECT id FROM thing WHERE kind = 'shop'");
  const shop = row && (await overlay.thing(String(row.id)));
  const at = deps.clock();
  const today = civilDateOf(at, shop?.says.zone ?? 'UTC');
  const { log, random } = deps;
  return { log, seq: 0, shop: shop?.id, at, today, alone: shop?.says.staffing !== 'two', sha256, random };
}

async function knownCommands(tx: Tx, commands: readonly Command[]) {
  const marks = commands.map(() => '?').join(', ');
  const rows = await tx.all(
    `SELECT id, by, mac, from_seq, size FROM command WHERE id IN (${marks})`,
    commands.map(({ id }) => id),
  );
  return new Map(rows.map((row) => [String(row.id), row]));
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

async function insertLeaves(tx: Tx, drafted: readonly Drafted[], deps: AppendDeps): Promise<void> {
  const entries = drafted.map(({ kept, bytes }) => [kept.seq, bytes, hashOf(kept.hash), kept.leaf.type, kept.leaf.at]);
  await insertMany(tx, 'entry (seq, leaf, leaf_hash, type, at)', entries);
  const links = drafted.flatMap(({ kept }) => kept.leaf.links.map(({ s, n }) => [s, n, kept.seq]));
  await insertMany(tx, 'entry_link (stream, n, seq)', links);
  const sealed: Value[][] = [];
  for (const one of drafted) {
    if (one.sealed.length === 0) continue;
    const subject = await sealingSubject(tx, one);
    const key = await deps.keys.keyFor(subject.id, subject.wrappedBy);
    for (const { field, salt, value } of one.sealed) {
      const iv = deps.random(12);
      const plain = utf8(JSON.stringify([salt, value]));
      sealed.push([one.kept.seq, field, subject.id, iv, encrypt(key, iv, plain, sealedAbout(deps.log, one.kept.seq, field))]);
    }
  }
  await insertMany(tx, 'sealed (seq, field, subject, iv, ciphertext)', sealed);
}

/** Whose key seals an entry: in the shop's stream the customer's or person's it is about; in any other the stream's own, a job's wrapped by its customer's. */
async function sealingSubject(tx: Tx, { kept }: Drafted): Promise<{ id: string; wrappedBy?: string }> {
  const { leaf, opened } = kept;
  const fields = Object.entries(entryType(leaf.type).fields);
  const target = fields.find(([, { kinds }]) => kinds.includes('entry'))?.[0];
  if (target) {
    const sql = 'SELECT subject FROM sealed JOIN entry USING (seq) WHERE leaf_hash = ? LIMIT 1';
    const [row] = await tx.all(sql, [hashOf(String(leaf.data[target]))]);
    if (row) return { id: String(row.subject) };
  }
  const about = (kinds: readonly string[], from: Readonly<Record<string, unknown>>) =>
    fields
      .filter(([name, field]) => field.role !== 'tells' && field.kinds.some((kind) => kinds.includes(kind)) && from[name] !== undefined)
      .map(([name]) => String(from[name]))[0];
  const stream = leaf.links[0].s;
  const inShop = about(['customer', 'person'], leaf.data);
  const [row] = await tx.all("SELECT 1 FROM thing WHERE id = ? AND kind = 'shop'", [stream]);
  if (inShop && (row || leaf.seq === 0)) return { id: inShop };
  const customer = about(['customer'], opened);
  return customer === undefined ? { id: stream } : { id: stream, wrappedBy: customer };
}

/** Writes the things an overlay changed. */
export async function saveThings(tx: Tx, { things }: Overlay): Promise<void> {
  const rows = [...things.values()].map((thing) => [
    thing.id,
    thing.kind,
    thing.stream,
    thing.status ?? null,
    thing.stones ?? null,
    wordsOf(thing),
    JSON.stringify(thing),
  ]);
  const upsert =
    'ON CONFLICT (id) DO UPDATE SET status = excluded.status, stones = excluded.stones, words = excluded.words, state = excluded.state';
  await insertMany(tx, 'thing (id, kind, stream, status, stones, words, state)', rows, upsert);
}

/** One statement per few hundred values: every statement is prepared afresh. */
export async function insertMany(tx: Tx, into: string, rows: readonly (readonly Value[])[], tail = ''): Promise<void> {
  const width = rows[0]?.length ?? 0;
  const perStatement = Math.max(1, Math.floor(900 / Math.max(1, width)));
  for (let at = 0; at < rows.length; at += perStatement) {
    const some = rows.slice(at, at + perStatement);
    const marks = some.map(() => `(${Array(width).fill('?').join(', ')})`).join(', ');
    await tx.run(`INSERT INTO ${into} VALUES ${marks} ${tail}`, some.flat());
  }
}
