// The stored tree: complete subtrees as nodes, level 0 from the leaf hashes of the entries themselves.
import { type Coordinate, type Frontier, frontierOf, type NodeReader, nodesForRoot } from '../log/merkle.ts';
import { bytesOf } from './keys.ts';
import type { Query } from './sqlite.ts';

const LEAVES = 'SELECT seq AS position, leaf_hash AS hash FROM entry WHERE seq IN (SELECT value FROM json_each(?))';
const NODES = `SELECT level, position, hash FROM json_each(?) AS wanted
  CROSS JOIN node WHERE level = wanted.value ->> 0 AND position = wanted.value ->> 1`;

/** Fetches the nodes a computation will read, in two statements however many; a node that is not stored is a bug or damage, named by its place. */
export async function readNodes(query: Query, wanted: readonly Coordinate[]): Promise<NodeReader> {
  const leaves = wanted.filter(({ level }) => level === 0).map(({ index }) => index);
  const nodes = wanted.filter(({ level }) => level > 0).map(({ level, index }) => [level, index]);
  const rows = [
    ...(leaves.length === 0 ? [] : await query(LEAVES, [JSON.stringify(leaves)])),
    ...(nodes.length === 0 ? [] : await query(NODES, [JSON.stringify(nodes)])),
  ];
  const found = new Map(rows.map(({ level = 0, position, hash }) => [`${level}.${position}`, bytesOf(hash)]));
  return (level, index) => {
    const hash = found.get(`${level}.${index}`);
    if (!hash) throw new Error(`the tree's node at level ${level}, position ${index} is missing`);
    return hash;
  };
}

/** The frontier of the tree of `size` leaves. */
export async function readFrontier(query: Query, size: number): Promise<Frontier> {
  return frontierOf(size, await readNodes(query, nodesForRoot(size)));
}
