// The Merkle tree of RFC 9162, section 2.1 (the same as RFC 6962, section 2.1): append, root, proofs and their checks.
// A node is named (level, index) and covers the leaves from index × 2^level; only complete subtrees have a node, and they never change.
// Sizes and indexes reach 2^53 - 1, so there are no 32-bit operators here.
import { concat, equal } from './bytes.js';
import { refuseWith } from './refused.js';

const HASH_BYTES = 32;
const LEAF_PREFIX = Uint8Array.of(0);
const NODE_PREFIX = Uint8Array.of(1);
export const EMPTY_FRONTIER = { size: 0, hashes: [] };
const SAYS = {
  not_decimal: 'A number here is written in decimal digits without leading zeros. Ask for the proof again.',
  number_too_large: 'A number here is above 2^53 - 1, which no ledger reaches. Ask for the proof again.',
  outside_tree: 'The proof speaks of an entry or a size that this tree does not have. Ask for the proof again.',
  wrong_length: 'The proof has too many hashes or too few. Ask for the proof again.',
  wrong_hash_size: 'A hash in the proof is not 32 bytes long. Ask for the proof again.',
  root_differs: 'The hashes do not lead to the signed root: the entry or the proof was changed. Keep both and ask the shop.',
  old_root_differs: 'The hashes do not lead to the older root: the history was changed since. Keep both and ask the shop.',
};
const refuse = (code) => refuseWith(SAYS, code);
/** A size or index from a text that somebody else wrote: decimal digits, no leading zeros, at most 2^53 - 1. */
export function parseDecimal(text) {
  if (!/^(0|[1-9][0-9]*)$/.test(text)) return refuse('not_decimal');
  const number = Number(text);
  return Number.isSafeInteger(number) ? number : refuse('number_too_large');
}
/** Hash of one leaf's bytes: SHA-256 of 0x00 and the bytes (RFC 9162, section 2.1.1). */
export const leafHash = (sha, leaf) => sha(concat(LEAF_PREFIX, leaf));
/** Hash of a node over its two children: SHA-256 of 0x01, left, right (RFC 9162, section 2.1.1). */
export const nodeHash = (sha, left, right) => sha(concat(NODE_PREFIX, left, right));
/** Root of the tree without leaves: SHA-256 of nothing (RFC 9162, section 2.1.1). */
export const emptyRoot = (sha) => sha(new Uint8Array());
/** Appends one leaf hash: the new frontier, and the nodes it completes from level 1 upwards, to be stored once and for ever. */
export function append(sha, frontier, leaf) {
  const hashes = [...frontier.hashes];
  const completed = [];
  let hash = leaf;
  for (let level = 1, index = frontier.size; index % 2 === 1; level++) {
    index = (index - 1) / 2;
    hash = nodeHash(sha, hashes.pop() ?? missing(frontier), hash);
    completed.push({ level, index, hash });
  }
  hashes.push(hash);
  return { frontier: { size: frontier.size + 1, hashes }, completed };
}
/** Root of the tree of that frontier. */
export const rootOf = (sha, { hashes }) => (hashes.length === 0 ? emptyRoot(sha) : joined(sha, hashes));
/** The frontier of a tree of `size` leaves, from stored nodes. */
export const frontierOf = (size, read) => ({ size, hashes: readAll(nodesForRoot(size), read) });
/** The nodes that `frontierOf` reads. */
export const nodesForRoot = (size) => nodesOf({ from: 0, to: whole(size) });
/** The nodes that `proveRecord` reads. */
export const nodesForRecord = (index, size) => recordSpans(index, size).flatMap(nodesOf);
/** The nodes that `proveTree` reads. */
export const nodesForTree = (oldSize, newSize) => treeSpans(oldSize, newSize).flatMap(nodesOf);
/** Proof that the leaf at `index` is in the tree of `size` leaves, from the leaf's sibling upwards (RFC 9162, section 2.1.3.1). */
export const proveRecord = (sha, index, size, read) => recordSpans(index, size).map((span) => joined(sha, readAll(nodesOf(span), read)));
/** Proof that the tree of `oldSize` leaves (at least one) is the beginning of the tree of `newSize` (RFC 9162, section 2.1.4.1). */
export const proveTree = (sha, oldSize, newSize, read) =>
  treeSpans(oldSize, newSize).map((span) => joined(sha, readAll(nodesOf(span), read)));
/**
 * Checks that a leaf hash stands at that index of the tree with that root; null when it does (RFC 9162, section 2.1.3.2).
 * Size and root must come from one signed checkpoint, since trees of several sizes share a path.
 */
export function checkRecord(sha, { index, leafHash, size, root, proof }) {
  if (!isWhole(index) || !isWhole(size) || index >= size) return refuse('outside_tree');
  const spans = recordSpans(index, size);
  const flaw = flawIn(proof, spans.length) ?? flawIn([leafHash], 1);
  if (flaw !== null) return flaw;
  return equal(climbed(sha, leafHash, stepsOf(proof, spans), index), root) ? null : refuse('root_differs');
}
/** Checks that the old tree is the beginning of the new; null when it is; an empty old tree proves nothing (RFC 9162, section 2.1.4.2). */
export function checkTree(sha, { oldSize, oldRoot, newSize, newRoot, proof }) {
  if (!isWhole(oldSize) || !isWhole(newSize) || oldSize < 1 || oldSize > newSize) return refuse('outside_tree');
  const spans = treeSpans(oldSize, newSize);
  const flaw = flawIn(proof, spans.length);
  if (flaw !== null) return flaw;
  const steps = stepsOf(proof, spans);
  // Both climbs begin at the last complete subtree of the old tree: the first hash, left out when it is the whole old tree.
  const given = spans[0]?.to === oldSize ? steps[0] : undefined;
  const start = given?.hash ?? oldRoot;
  const above = given === undefined ? steps : steps.slice(1);
  const within = above.filter((step) => step.from < oldSize);
  if (!equal(climbed(sha, start, within, oldSize - 1), oldRoot)) return refuse('old_root_differs');
  return equal(climbed(sha, start, above, oldSize - 1), newRoot) ? null : refuse('root_differs');
}
const stepsOf = (proof, spans) => proof.map((hash, i) => ({ hash, from: spans[i]?.from ?? 0 }));
/** The hash reached from a subtree that holds the leaf `position`, joining each step on its own side. */
const climbed = (sha, start, steps, position) =>
  steps.reduce((hash, step) => (step.from > position ? nodeHash(sha, hash, step.hash) : nodeHash(sha, step.hash, hash)), start);
function flawIn(proof, count) {
  if (proof.length !== count) return refuse('wrong_length');
  return proof.every((hash) => hash.length === HASH_BYTES) ? null : refuse('wrong_hash_size');
}
/** The leaves covered by each hash of a record proof, from the leaf upwards: PATH of RFC 9162, section 2.1.3.1. */
function recordSpans(index, size) {
  if (whole(index) >= whole(size)) throw new RangeError(`no leaf ${index} in a tree of ${size}`);
  const spans = [];
  for (let from = 0, to = size; to - from > 1; ) {
    const middle = from + splitOf(to - from);
    spans.unshift(index < middle ? { from: middle, to } : { from, to: middle });
    if (index < middle) to = middle;
    else from = middle;
  }
  return spans;
}
/** The leaves covered by each hash of a tree proof: SUBPROOF of RFC 9162, section 2.1.4.1. */
function treeSpans(oldSize, newSize) {
  if (whole(oldSize) < 1 || oldSize > whole(newSize)) throw new RangeError(`no proof from size ${oldSize} to ${newSize}`);
  const spans = [];
  let from = 0;
  for (let to = newSize; to !== oldSize; ) {
    const middle = from + splitOf(to - from);
    spans.unshift(oldSize <= middle ? { from: middle, to } : { from, to: middle });
    if (oldSize <= middle) to = middle;
    else from = middle;
  }
  return from === 0 ? spans : [{ from, to: oldSize }, ...spans];
}
/** The complete subtrees that a span consists of, the largest first; a span of a proof always begins at a multiple of its largest. */
function nodesOf({ from, to }) {
  const nodes = [];
  for (let start = from; start < to; ) {
    const level = levelWithin(to - start);
    nodes.push({ level, index: start / 2 ** level });
    start += 2 ** level;
  }
  return nodes;
}
const readAll = (nodes, read) => nodes.map(({ level, index }) => read(level, index));
const joined = (sha, hashes) => hashes.reduceRight((right, left) => nodeHash(sha, left, right));
/** Level of the largest complete subtree in `count` leaves. */
function levelWithin(count) {
  let level = 0;
  while (2 ** (level + 1) <= count) level++;
  return level;
}
/** The largest power of two below `count`, where a tree of `count` leaves splits (RFC 9162, section 2.1.1). */
const splitOf = (count) => 2 ** levelWithin(count - 1);
const isWhole = (number) => Number.isSafeInteger(number) && number >= 0;
function whole(number) {
  if (!isWhole(number)) throw new RangeError(`not an index or a size: ${number}`);
  return number;
}
function missing({ size, hashes }) {
  throw new Error(`a frontier of ${size} leaves cannot have ${hashes.length} hashes`);
}
