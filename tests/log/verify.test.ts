import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beginVerification, verifyLog } from '../../src/log/verify.ts';
import { sha256, toHex } from './crypto.ts';
import { bytesOf, checkpointAt, drafts, ORIGIN, objects, written } from './histories.ts';
import { treeHash } from './trees.ts';

const leaves = written(drafts(40));
const plain = objects(drafts(40));
const verify = (some: readonly Uint8Array[], ...sizes: readonly number[]) =>
  verifyLog(
    sha256,
    ORIGIN,
    sizes.map((size) => checkpointAt(leaves, size)),
    some,
  );
const changed = (seq: number, change: object) => leaves.map((leaf, i) => (i === seq ? bytesOf({ ...plain[i], ...change }) : leaf));
const linksOf = (seq: number) => plain[seq]?.links as readonly object[];

describe('a whole log', () => {
  it('has the size and the root of its leaves', () => {
    const verified = verify(leaves, 0, 1, 17, 17, 40);
    expect(verified).toMatchObject({ size: 40 });
    expect('root' in verified && toHex(verified.root)).toBe(toHex(treeHash(leaves)));
  });
  it('is held against every checkpoint, two of one size among them', () => {
    expect(verify(leaves, 17, 17, 30, 40)).toMatchObject({ size: 40 });
    const other = { ...checkpointAt(leaves, 17), root: new Uint8Array(32) };
    for (const some of [
      [other, checkpointAt(leaves, 17)],
      [checkpointAt(leaves, 17), other],
    ])
      expect(verifyLog(sha256, ORIGIN, some, leaves)).toMatchObject({ code: 'root_differs', seq: 16 });
  });
  it('is of one ledger with all of its checkpoints', () =>
    expect(verifyLog(sha256, ORIGIN, [checkpointAt(leaves, 20), checkpointAt(leaves, 20, 'lemel/other/0')], leaves)).toMatchObject({
      code: 'other_origin',
    }));
  it('may be empty', () => expect(verify([], 0)).toMatchObject({ size: 0 }));
  it('may go on after its last checkpoint', () => expect(verify(leaves, 30)).toMatchObject({ size: 40 }));
});

describe('the first bad place', () => {
  it.each([
    ['not_canonical', 5, [...leaves.slice(0, 5), Uint8Array.from([...(leaves[5] ?? []), 0x20])]],
    ['unknown_version', 6, changed(6, { v: 2 })],
    ['member_unknown', 6, changed(6, { id: 'x' })],
    ['other_log', 7, changed(7, { log: 'lemel/other/0' })],
    ['wrong_seq', 8, changed(8, { seq: 9 })],
    ['wrong_seq', 9, leaves.filter((_, i) => i !== 9)],
    ['link_position', 11, changed(11, { links: linksOf(11).map((link) => ({ ...link, n: 7 })) })],
    ['link_previous', 11, changed(11, { links: linksOf(11).map((link) => ({ ...link, p: 'A'.repeat(43) })) })],
    ['link_previous', 13, changed(10, { data: { note: 'another' } })],
    ['part_broken', 4, changed(4, { command: 'command-99' })],
    ['part_broken', 4, changed(4, { part: [1, 3] })],
    ['part_broken', 5, changed(5, { part: [1, 2] })],
    ['part_broken', 39, leaves.slice(0, 39)],
  ])('is %s at entry %i', (code, seq, some) => expect(verify(some)).toMatchObject({ code, seq }));

  it.each([
    ['root_differs', 19, leaves, [{ ...checkpointAt(leaves, 20), root: new Uint8Array(32) }]],
    ['root_differs', 0, [], [{ ...checkpointAt(leaves, 0), root: new Uint8Array(32) }]],
    ['other_origin', 0, leaves, [checkpointAt(leaves, 20, 'lemel/other/0')]],
    ['truncated', 38, leaves.slice(0, 38), [checkpointAt(leaves, 40), checkpointAt(leaves, 38)]],
  ])('is %s at entry %i, by a checkpoint', (code, seq, some, checkpoints) =>
    expect(verifyLog(sha256, ORIGIN, checkpoints, some)).toMatchObject({ code, seq }),
  );

  it('stays the answer, whatever comes after', () => {
    const verification = beginVerification(sha256, ORIGIN, []);
    expect(verification.take(leaves[0] ?? new Uint8Array())).toBeNull();
    const fault = verification.take(leaves[2] ?? new Uint8Array());
    expect(fault).toMatchObject({ code: 'wrong_seq', seq: 1 });
    expect(verification.take(leaves[1] ?? new Uint8Array())).toBe(fault);
    expect(verification.finish()).toBe(fault);
  });
});

it('no byte can be changed under a checkpoint', () => {
  const checkpoint = checkpointAt(leaves, 40);
  fc.assert(
    fc.property(fc.nat(39), fc.nat(), fc.integer({ min: 1, max: 255 }), (seq, at, flip) => {
      const some = leaves.map((leaf, i) => (i === seq ? leaf.map((byte, j) => (j === at % leaf.length ? byte ^ flip : byte)) : leaf));
      expect(verifyLog(sha256, ORIGIN, [checkpoint], some)).toHaveProperty('code');
    }),
  );
});
