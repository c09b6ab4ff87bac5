// Places in streams and nodes of the tree, as they stand beside the leaves.
import { equal } from '../log/bytes.ts';
import { type Beside, bad } from './beside.ts';
import { bytesOf } from './keys.ts';
import type { Query } from './sqlite.ts';

/** Every place in a stream that a leaf names is there and is its own, and there is no other. */
export function linksBeside(read: Query): Beside {
  let seen = 0;
  const sql =
    'SELECT key AS i, seq FROM json_each(?) AS said JOIN entry_link ON stream = said.value ->> 0 AND n = said.value ->> 1 ORDER BY key';
  return {
    async look(chunk) {
      const links = chunk.flatMap(({ leaf }) => leaf.links.map(({ s, n }) => ({ s, n, seq: leaf.seq })));
      const found = new Map((await read(sql, [JSON.stringify(links.map(({ s, n }) => [s, n]))])).map(({ i, seq }) => [i, seq]));
      seen += links.length;
      const wrong = links.find(({ seq }, index) => found.get(index) !== seq);
      return wrong ? bad(wrong.seq, 'links', `Entry ${wrong.seq}: the places of its streams were changed beside it.`) : null;
    },
    async end() {
      const [row] = await read('SELECT COUNT(*) AS n FROM entry_link');
      return Number(row?.n) === seen ? null : bad(null, 'links', 'There are places in streams that belong to no entry.');
    },
  };
}

/** Every node that the leaves complete is there as they make it, and there is no other. */
export function nodesBeside(read: Query): Beside {
  let seen = 0;
  const sql =
    'SELECT key AS i, hash FROM json_each(?) AS said JOIN node ON level = said.value ->> 0 AND position = said.value ->> 1 ORDER BY key';
  return {
    async look(chunk) {
      const nodes = chunk.flatMap(({ leaf, nodes: completed }) => completed.map((node) => ({ ...node, seq: leaf.seq })));
      const rows = await read(sql, [JSON.stringify(nodes.map(({ level, index }) => [level, index]))]);
      const found = new Map(rows.map(({ i, hash }) => [i, bytesOf(hash)]));
      seen += nodes.length;
      const wrong = nodes.find(({ hash }, index) => !equal(found.get(index) ?? new Uint8Array(), hash));
      if (!wrong) return null;
      return bad(wrong.seq, 'node', `The tree's node at level ${wrong.level}, position ${wrong.index} is not the one that was written.`);
    },
    async end() {
      const [row] = await read('SELECT COUNT(*) AS n FROM node');
      return Number(row?.n) === seen ? null : bad(null, 'node', 'The tree has nodes that no entries lead to.');
    },
  };
}
