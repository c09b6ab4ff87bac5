// The writer: commands queue, are decided over what stands in the file plus this batch, and are committed together, signed once.
import { decideCommand } from '../ledger/decide.js';
import { overlayOn } from '../ledger/overlay.js';
import { utf8 } from '../log/bytes.js';
import { jcs } from '../log/canonical.js';
import { formatCheckpoint } from '../log/checkpoint.js';
import { append, rootOf } from '../log/merkle.js';
import { civilDateOf } from '../units/dates.js';
import { StorageFault } from './connection.js';
import { hmac, sha256 } from './crypto.js';
import { bytesOf } from './keys.js';
import { hashOf, insertLeaves, insertMany, insertSealed, saveThings } from './rows.js';
import { forget, noMemory, remember, remembering, shelfOn } from './shelf.js';
import { turnOfTheLoop } from './sqlite.js';
import { readFrontier } from './tree.js';

const BATCH_MAX = 64;
/** The one writer of a ledger. Its promises fail with StorageFault, or with a bug of the command's own. */
export function openAppender(deps) {
  const waiting = [];
  let known = { frontier: deps.frontier, memory: noMemory(), writes: deps.file.writes() };
  let draining = false;
  async function drain() {
    if (draining) return;
    draining = true;
    while (waiting.length > 0) {
      await turnOfTheLoop();
      await commitTogether(waiting.splice(0, BATCH_MAX));
    }
    draining = false;
  }
  async function commitTogether(batch) {
    const commands = batch.map(({ command }) => command);
    const { frontier } = known;
    const memory = deps.file.writes() === known.writes ? known.memory : noMemory();
    const writes = deps.file.writes() + 1;
    try {
      const written = await deps.file.write((tx) => writeBatch(tx, deps, commands, { frontier, memory }));
      remember(memory, written.overlay);
      known = { frontier: written.frontier, memory, writes };
      for (const [index, one] of batch.entries()) one.answer(written.answers[index]);
      if (written.frontier.size !== frontier.size) deps.onGrown(written.frontier);
    } catch (error) {
      known = { frontier, memory: noMemory(), writes };
      if (batch.length === 1 || isOfTheMachine(error)) for (const one of batch) one.fail(error);
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
/** A bug of one command breaks a constraint or throws; it must hit only its author. Anything else hits all. */
const isOfTheMachine = (error) => error instanceof StorageFault && !error.code.startsWith('SQLITE_CONSTRAINT');
async function writeBatch(tx, deps, commands, known) {
  const { size, shop, recorded } = await standing(tx, commands);
  // A commit that took effect but reported failure leaves the file ahead of what is remembered.
  if (size !== known.frontier.size) forget(known.memory);
  const frontier = size === known.frontier.size ? known.frontier : await readFrontier(tx.all, size);
  const overlay = overlayOn(remembering(shelfOn(tx.all, deps.keys), known.memory));
  const at = deps.clock();
  const writer = (drafted) => writerAt(overlay, shop, { ...deps, at, seq: size + drafted });
  const decided = await decideAll(overlay, commands, recorded, writer, deps.macKey);
  if (decided.drafted.length === 0) return { answers: decided.answers, overlay, frontier };
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
  const text = formatCheckpoint({ origin: deps.log, size: after.size, root: rootOf(sha256, after) });
  await insertMany(tx, 'checkpoint (size, signature, issued)', [[after.size, deps.signer.sign(utf8(text)), at]]);
  return { answers: decided.answers, overlay, frontier: after };
}
/** Decides the commands in order, each over what those before it changed. */
async function decideAll(overlay, commands, recorded, writer, macKey) {
  const answers = [];
  const drafted = [];
  const fresh = [];
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
function grow(frontier, drafted) {
  let after = frontier;
  const grown = drafted.map(({ kept, bytes }) => {
    const step = append(sha256, after, hashOf(kept.hash));
    after = step.frontier;
    return { kept, bytes, nodes: step.completed };
  });
  return { grown, after };
}
/** The writer's own members: policy is the shop's as it stands, what this batch said of it included. */
async function writerAt(overlay, id, { log, random, at, seq }) {
  const shop = typeof id === 'string' ? await overlay.thing(id) : [...overlay.things.values()].find(({ kind }) => kind === 'shop');
  const today = dayOf(at, shop?.says.zone ?? 'UTC');
  return { log, seq, shop: shop?.id, at, today, alone: shop?.says.staffing !== 'two', sha256, random };
}
/** Zones change their offset on a quarter of an hour, so one answer serves for the whole of it: asking costs as much as signing. */
function dayOf(at, zone) {
  const quarter = `${Math.floor(at / 900_000)} ${zone}`;
  if (lastDay.quarter !== quarter) lastDay = { quarter, day: civilDateOf(at, zone) };
  return lastDay.day;
}
let lastDay = { quarter: '', day: '' };
/** How the file stands: its size, its shop, and those of the commands that were recorded before. */
async function standing(tx, commands) {
  const ids = JSON.stringify(commands.map(({ id }) => id));
  const rows = await tx.all('SELECT id, by, mac, from_seq, size FROM command WHERE id IN (SELECT value FROM json_each(?))', [ids]);
  const recorded = new Map(rows.map((row) => [String(row.id), row]));
  const [head] = await tx.all(
    "SELECT (SELECT COALESCE(MAX(seq) + 1, 0) FROM entry) AS size, (SELECT id FROM thing WHERE kind = 'shop') AS shop",
  );
  return { size: Number(head?.size), shop: head?.shop, recorded };
}
/** The same person and the same fields: the recorded answer; anything else under the same id is another form. */
function recordedAnswer(row, command, macKey) {
  const recorded = { answer: 'written', from: Number(row.from_seq), size: Number(row.size) };
  const same = row.by === command.by && Buffer.compare(bytesOf(row.mac), macOf(command, macKey)) === 0;
  return same ? recorded : { answer: 'form reused', recorded };
}
/** Keyed, since a plain hash of a form gives its short fields back to whoever tries them all. */
const macOf = ({ lines }, key) => hmac(key, jcs(lines));
