// The stored tree: complete subtrees as nodes, level 0 from the leaf hashes of the entries themselves.
import { frontierOf, nodesForRoot } from '../log/merkle.js';
import { bytesOf } from './keys.js';
/** Fetches the nodes a computation will read; a node that is not stored is a bug or damage, named by its place. */
export async function readNodes(query, wanted) {
  const found = new Map();
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
export async function readFrontier(query, size) {
  return frontierOf(size, await readNodes(query, nodesForRoot(size)));
}
