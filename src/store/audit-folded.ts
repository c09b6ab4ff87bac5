// What the screens show and what is answered twice: things folded anew from the leaves, and commands as their leaves tell them.
import { whyNotAllowed } from '../ledger/allowed.ts';
import { applyLeaf } from '../ledger/apply.ts';
import { overlayOn } from '../ledger/overlay.ts';
import type { Thing } from '../ledger/thing.ts';
import { type Bad, type Beside, bad } from './beside.ts';
import { noKeys } from './keys.ts';
import { COMMANDS_KEPT_MS, columnsOf } from './rows.ts';
import { shelfOn } from './shelf.ts';
import type { Query } from './sqlite.ts';

const CHUNK = 200;

/** Compares the things on the screens with those folded anew, column by column, and asks of each entry whether its writer was allowed to write it. */
export function thingsBeside(read: Query): Beside {
  const shelf = shelfOn(read, noKeys);
  const none = async () => undefined;
  let start = 0;
  const before = async (stream: string) => (await shelf.leaves(stream)).filter(({ seq }) => seq < start);
  const overlay = overlayOn({ thing: none, head: none, entry: shelf.entry, openPieces: async () => [], leaves: before });
  let shop = '';
  return {
    async look(chunk) {
      for (const { leaf, hash } of chunk) {
        if (leaf.seq === 0) shop = leaf.links[0].s;
        const why = await whyNotAllowed(overlay, leaf, shop);
        if (why) return bad(leaf.seq, 'authority', `Entry ${leaf.seq} was written ${why}.`);
        await applyLeaf(overlay, { seq: leaf.seq, hash, leaf, opened: {} });
      }
      overlay.written.length = 0;
      start += chunk.length;
      return null;
    },
    end: () => shownTrouble(read, overlay.things),
  };
}

/** What the screens show against the things as they follow from the entries, row by row. */
async function shownTrouble(read: Query, things: ReadonlyMap<string, Thing>): Promise<Bad | null> {
  const sql = 'SELECT n, id, kind, stream, status, stones, words, state FROM thing WHERE n > ? ORDER BY n LIMIT ?';
  let count = 0;
  for (let after = 0; ; ) {
    const rows = await read(sql, [after, CHUNK]);
    for (const row of rows) {
      const thing = things.get(String(row.id));
      const { n: _, ...shown } = row;
      const due = thing && columnsOf(thing);
      if (!due || Object.values(shown).some((value, column) => value !== due[column])) {
        return bad(null, 'fold', `What the screens show of ${row.id} does not follow from the entries. Run: lemel rebuild.`);
      }
    }
    count += rows.length;
    after = Number(rows.at(-1)?.n ?? after);
    if (rows.length < CHUNK) break;
  }
  return count === things.size ? null : bad(null, 'fold', 'Something the entries tell of is not on the screens. Run: lemel rebuild.');
}

/** Commands of the last thirty days are all there, as their leaves tell them; older ones may be forgotten, but say nothing else. */
export async function commandsBeside(read: Query): Promise<Beside> {
  const [newest] = await read('SELECT MAX(at) AS at FROM command');
  const since = Number(newest?.at ?? 0) - COMMANDS_KEPT_MS;
  let isKept = newest?.at === null;
  let seen = 0;
  const sql = 'SELECT id, by, from_seq, size, at FROM command WHERE id IN (SELECT value FROM json_each(?))';
  return {
    async look(chunk) {
      const begun = chunk.filter(({ leaf }) => leaf.part[0] === 0).map(({ leaf }) => leaf);
      const rows = new Map((await read(sql, [JSON.stringify(begun.map(({ command }) => command))])).map((row) => [row.id, row]));
      seen += rows.size;
      for (const { command, by, seq, part, at } of begun) {
        isKept ||= at >= since;
        const row = rows.get(command);
        if (!row && !isKept) continue;
        if (row?.by === by && row.from_seq === seq && row.size === part[1] && row.at === at) continue;
        return bad(
          seq,
          'command',
          `Entry ${seq}: the form it was written with is ${row ? 'recorded as another' : 'not recorded, so it could be written twice'}.`,
        );
      }
      return null;
    },
    async end() {
      const [row] = await read('SELECT COUNT(*) AS n FROM command');
      return Number(row?.n) === seen ? null : bad(null, 'command', 'There are forms recorded that no entry was written with.');
    },
  };
}
