// The stored tree: complete subtrees as nodes, level 0 from the leaf hashes of the entries themselves.
import { type Coordinate, type Frontier, frontierOf, type NodeReader, nodesForRoot } from '../log/merkle.ts';
import { bytesOf } from './keys.ts';
import type { Query } from './sqlite.ts';

/** Fetches the nodes a computation will read; a node that is not stored is a bug or damage, named by its place. */
export async function readNodes(query: Query, wanted: readonly Coordinate[]): Promise<NodeReader> {
  const found = new Map<string, Uint8Array>();
  for (const { level, index } of wanted) {
    const sql =
      level === 0 ? 'SELECT leaf_hash AS hash FROM entry WHERE seq = ?' : 'SELECT hash FROM node WHERE level = ? AND position = ?';
    const [row] = await query(sql, level === 0 ? [index] : [level, index]);
    if (row) found.set(`${level}.${index}`, bytesOf(row.hash));
  }
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
