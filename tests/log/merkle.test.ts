import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { utf8 } from '../../src/log/bytes.ts';
import {
  append,
  type Coordinate,
  checkRecord,
  checkTree,
  EMPTY_FRONTIER,
  emptyRoot,
  frontierOf,
  leafHash,
  type NodeReader,
  nodesForRecord,
  nodesForRoot,
  nodesForTree,
  parseDecimal,
  proveRecord,
  proveTree,
  rootOf,
} from '../../src/log/merkle.ts';
import { sha256, toHex } from './crypto.ts';
import { fullTree, path, subproof, treeHash } from './trees.ts';

const SIZE = 100;
const leaves = Array.from({ length: SIZE }, (_, i) => utf8(`leaf ${i}`));
const { read } = fullTree(leaves);
const roots = Array.from({ length: SIZE + 1 }, (_, size) => rootOf(sha256, frontierOf(size, read)));
const rootAt = (size: number): Uint8Array => roots[size] ?? new Uint8Array();
/** Every way to change one of the hashes, one at a time; the change is in the first byte, as in golang.org/x/mod. */
const corruptions = (hashes: readonly Uint8Array[]) => hashes.map((_, i) => hashes.map((hash, j) => (i === j ? corrupted(hash) : hash)));
const corrupted = (hash: Uint8Array) => hash.map((byte, i) => (i === 0 ? byte ^ 1 : byte));
const recording = (): { readonly reader: NodeReader; readonly seen: Coordinate[] } => {
  const seen: Coordinate[] = [];
  const reader: NodeReader = (level, index) => {
    seen.push({ level, index });
    return read(level, index);
  };
  return { reader, seen };
};

// As TestTree of golang.org/x/mod/sumdb/tlog does: every size up to 100, every record, every earlier tree, every hash changed.
describe('a tree of every size up to 100', () => {
  it('has the root of RFC 9162, section 2.1.1, from the leaves, the frontier and the stored nodes', () => {
    for (let size = 0; size <= SIZE; size++) {
      const some = leaves.slice(0, size);
      expect(toHex(rootAt(size))).toBe(toHex(treeHash(some)));
      expect(toHex(fullTree(some).root)).toBe(toHex(rootAt(size)));
    }
    expect(toHex(emptyRoot(sha256))).toBe(toHex(rootAt(0)));
  });

  it('proves every record as RFC 9162, section 2.1.3.1, and no changed proof holds', () => {
    for (let size = 1; size <= SIZE; size++) {
      for (let index = 0; index < size; index++) {
        const proof = proveRecord(sha256, index, size, read);
        const claim = { index, size, leafHash: read(0, index), root: rootAt(size), proof };
        expect(proof.map(toHex)).toEqual(path(index, leaves.slice(0, size)).map(toHex));
        expect(checkRecord(sha256, claim)).toBeNull();
        for (const changed of corruptions(proof)) {
          expect(checkRecord(sha256, { ...claim, proof: changed })?.refused).toBe('root_differs');
        }
        expect(checkRecord(sha256, { ...claim, leafHash: corrupted(claim.leafHash) })?.refused).toBe('root_differs');
      }
    }
  });

  it('proves every earlier tree as RFC 9162, section 2.1.4.1, and no changed proof holds', () => {
    for (let newSize = 1; newSize <= SIZE; newSize++) {
      for (let oldSize = 1; oldSize <= newSize; oldSize++) {
        const proof = proveTree(sha256, oldSize, newSize, read);
        const claim = { oldSize, oldRoot: rootAt(oldSize), newSize, newRoot: rootAt(newSize), proof };
        expect(proof.map(toHex)).toEqual(subproof(oldSize, leaves.slice(0, newSize), true).map(toHex));
        expect(checkTree(sha256, claim)).toBeNull();
        for (const changed of corruptions(proof)) expect(checkTree(sha256, { ...claim, proof: changed })).not.toBeNull();
        expect(checkTree(sha256, { ...claim, oldRoot: corrupted(claim.oldRoot) })).not.toBeNull();
        expect(checkTree(sha256, { ...claim, newRoot: corrupted(claim.newRoot) })?.refused).toBe('root_differs');
      }
    }
  });

  it('says beforehand exactly which nodes it reads', () => {
    for (let size = 1; size <= SIZE; size++) {
      const root = recording();
      frontierOf(size, root.reader);
      expect(nodesForRoot(size)).toEqual(root.seen);
      for (let position = 0; position < size; position++) {
        const record = recording();
        proveRecord(sha256, position, size, record.reader);
        expect(nodesForRecord(position, size)).toEqual(record.seen);
        const tree = recording();
        proveTree(sha256, position + 1, size, tree.reader);
        expect(nodesForTree(position + 1, size)).toEqual(tree.seen);
      }
    }
  });
});

describe('appending', () => {
  it('takes two hashes a leaf: 2n less the ones in the binary size', () => {
    let count = 0;
    const counting = (bytes: Uint8Array) => {
      count++;
      return sha256(bytes);
    };
    let frontier = EMPTY_FRONTIER;
    for (let i = 0; i < 100_000; i++) frontier = append(counting, frontier, leafHash(counting, utf8(`leaf ${i}`))).frontier;
    // n leaf hashes, and one for each complete subtree above them: n less the number of ones in n, of which 100,000 has six.
    expect(count).toBe(199_994);
  });

  it('completes nodes in order, each once, and goes on from stored nodes as if it had never stopped', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: SIZE - 1 }), (size) => {
        const before = frontierOf(size, read);
        const { frontier, completed } = append(sha256, before, read(0, size));
        expect(completed.map(({ level }) => level)).toEqual(completed.map((_, i) => i + 1));
        for (const { level, index, hash } of completed) expect(toHex(hash)).toBe(toHex(read(level, index)));
        expect(frontier.hashes.map(toHex)).toEqual(frontierOf(size + 1, read).hashes.map(toHex));
        expect(before.size).toBe(size);
      }),
    );
  });
  it('stops at a frontier that cannot be', () => expect(() => append(sha256, { size: 1, hashes: [] }, read(0, 0))).toThrow('frontier'));
});

describe('a proof that somebody sends', () => {
  const claim = { index: 7, size: 50, leafHash: read(0, 7), root: rootAt(50), proof: proveRecord(sha256, 7, 50, read) };
  const tree = { oldSize: 33, oldRoot: rootAt(33), newSize: 50, newRoot: rootAt(50), proof: proveTree(sha256, 33, 50, read) };

  it.each([
    ['outside_tree', { index: 50 }],
    ['outside_tree', { index: -1 }],
    ['outside_tree', { index: 0.5 }],
    ['outside_tree', { size: Number.NaN }],
    ['outside_tree', { size: 0 }],
    ['wrong_length', { proof: claim.proof.slice(1) }],
    ['wrong_length', { proof: [...claim.proof, rootAt(50)] }],
    ['wrong_hash_size', { proof: claim.proof.map((hash) => hash.subarray(1)) }],
    ['wrong_hash_size', { leafHash: claim.leafHash.subarray(1) }],
    ['root_differs', { index: 6 }],
    ['root_differs', { root: rootAt(51) }],
  ])('for a record is refused: %s', (code, change) => expect(checkRecord(sha256, { ...claim, ...change })?.refused).toBe(code));

  it.each([
    ['outside_tree', { oldSize: 0 }],
    ['outside_tree', { oldSize: 51 }],
    ['outside_tree', { newSize: 2 ** 53 }],
    ['wrong_length', { proof: tree.proof.slice(1) }],
    ['wrong_length', { proof: [...tree.proof, rootAt(50)] }],
    ['wrong_hash_size', { proof: tree.proof.map((hash) => hash.subarray(1)) }],
    ['old_root_differs', { oldRoot: rootAt(32) }],
    ['root_differs', { newRoot: rootAt(49) }],
  ])('for an earlier tree is refused: %s', (code, change) => expect(checkTree(sha256, { ...tree, ...change })?.refused).toBe(code));

  it('needs 53 hashes at the largest size, and no 32-bit arithmetic', () => {
    expect(nodesForRoot(2 ** 53 - 1).length).toBe(53);
    expect(nodesForRecord(2 ** 40, 2 ** 41)[0]).toEqual({ level: 0, index: 2 ** 40 + 1 });
    expect(nodesForTree(2 ** 52, 2 ** 53 - 1).length).toBe(52);
  });
  it('cannot be asked of a tree that does not hold it', () => {
    expect(() => proveRecord(sha256, 5, 5, read)).toThrow(RangeError);
    expect(() => proveTree(sha256, 0, 5, read)).toThrow(RangeError);
    expect(() => proveTree(sha256, 6, 5, read)).toThrow(RangeError);
    expect(() => nodesForRoot(-1)).toThrow(RangeError);
  });
});

describe('a number that somebody sends', () => {
  it.each([
    ['0', 0],
    ['10', 10],
    ['9007199254740991', 2 ** 53 - 1],
  ])('reads %s', (text, number) => expect(parseDecimal(text)).toBe(number));
  it.each([
    ['01', 'not_decimal'],
    ['00', 'not_decimal'],
    ['', 'not_decimal'],
    ['-1', 'not_decimal'],
    ['+1', 'not_decimal'],
    ['1.0', 'not_decimal'],
    ['1e2', 'not_decimal'],
    ['0x10', 'not_decimal'],
    [' 1', 'not_decimal'],
    ['1\n', 'not_decimal'],
    ['١', 'not_decimal'],
    ['9007199254740992', 'number_too_large'],
    ['18446744073709551615', 'number_too_large'],
    ['9'.repeat(400), 'number_too_large'],
  ])('refuses %j', (text, code) => expect(parseDecimal(text)).toMatchObject({ refused: code }));
});
