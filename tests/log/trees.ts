// Trees for the tests: every node kept, and the definitions of RFC 9162, section 2.1, written out as they stand there.
import { append, EMPTY_FRONTIER, type Frontier, leafHash, type NodeReader, rootOf } from '../../src/log/merkle.ts';
import { sha256 } from './crypto.ts';

export interface FullTree {
  readonly frontier: Frontier;
  readonly root: Uint8Array;
  readonly read: NodeReader;
}

/** A tree grown leaf by leaf with all its nodes stored; reading a node that is not there throws. */
export function fullTree(leaves: readonly Uint8Array[]): FullTree {
  const nodes = new Map<string, Uint8Array>();
  let frontier = EMPTY_FRONTIER;
  for (const [i, leaf] of leaves.entries()) {
    const hash = leafHash(sha256, leaf);
    nodes.set(`0/${i}`, hash);
    const grown = append(sha256, frontier, hash);
    for (const node of grown.completed) nodes.set(`${node.level}/${node.index}`, node.hash);
    frontier = grown.frontier;
  }
  const read: NodeReader = (level, index) => {
    const hash = nodes.get(`${level}/${index}`);
    if (hash === undefined) throw new Error(`no node ${level}/${index}`);
    return hash;
  };
  return { frontier, root: rootOf(sha256, frontier), read };
}

const joined = (left: Uint8Array, right: Uint8Array) => sha256(Buffer.concat([Uint8Array.of(1), left, right]));
const split = (n: number): number => (n <= 2 ? n / 2 : 2 ** Math.floor(Math.log2(n - 1)));

/** MTH(D[n]) (RFC 9162, section 2.1.1). */
export function treeHash(leaves: readonly Uint8Array[]): Uint8Array {
  const [only] = leaves;
  if (only === undefined) return sha256(new Uint8Array());
  if (leaves.length === 1) return sha256(Buffer.concat([Uint8Array.of(0), only]));
  const k = split(leaves.length);
  return joined(treeHash(leaves.slice(0, k)), treeHash(leaves.slice(k)));
}

/** PATH(m, D[n]) (RFC 9162, section 2.1.3.1). */
export function path(m: number, leaves: readonly Uint8Array[]): readonly Uint8Array[] {
  if (leaves.length <= 1) return [];
  const k = split(leaves.length);
  return m < k
    ? [...path(m, leaves.slice(0, k)), treeHash(leaves.slice(k))]
    : [...path(m - k, leaves.slice(k)), treeHash(leaves.slice(0, k))];
}

/** SUBPROOF(m, D[n], b) (RFC 9162, section 2.1.4.1). */
export function subproof(m: number, leaves: readonly Uint8Array[], whole: boolean): readonly Uint8Array[] {
  if (m === leaves.length) return whole ? [] : [treeHash(leaves)];
  const k = split(leaves.length);
  return m <= k
    ? [...subproof(m, leaves.slice(0, k), whole), treeHash(leaves.slice(k))]
    : [...subproof(m - k, leaves.slice(k), false), treeHash(leaves.slice(0, k))];
}
