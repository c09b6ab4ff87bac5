// What somebody with the ledger's file, and sometimes its key, might try; and what they might send to whoever checks it.
import { describe, expect, it } from 'vitest';
import { base64, bytesOfBase64, concat, utf8 } from '../../src/log/bytes.ts';
import { profile, writable } from '../../src/log/canonical.ts';
import { type Checkpoint, formatCheckpoint, openCheckpoint } from '../../src/log/checkpoint.ts';
import { checkRecord, checkTree, leafHash, nodeHash, parseDecimal, proveRecord, proveTree } from '../../src/log/merkle.ts';
import { cosignatureLine, formatNote, signatureLine, signNote, verifierKey } from '../../src/log/note.ts';
import { formatProof, parseProof } from '../../src/log/proof.ts';
import { verifyLog } from '../../src/log/verify.ts';
import { nobleVerify, plainVerify, publicOf, sha256, signerOf, strictVerify } from '../log/crypto.ts';
import { bytesOf, checkpointAt, type Draft, drafts, ORIGIN, objects, written } from '../log/histories.ts';
import { fullTree } from '../log/trees.ts';

const code = (outcome: object | null): unknown =>
  outcome === null ? null : 'refused' in outcome ? outcome.refused : 'code' in outcome ? outcome.code : 'accepted';
const COUNT = 100;
const honest = drafts(COUNT);
const leaves = written(honest);
const latest = checkpointAt(leaves, COUNT);
/** The checkpoint on a customer's slip: older, and outside the shop. */
const slip = checkpointAt(leaves, 90);
const verify = (some: readonly Uint8Array[], ...checkpoints: readonly Checkpoint[]) => code(verifyLog(sha256, ORIGIN, checkpoints, some));
const rewrite = (change: (drafts: Draft[]) => void): readonly Uint8Array[] => {
  const copy = [...honest];
  change(copy);
  return written(copy);
};
const at = (seq: number): Draft => honest[seq] ?? { streams: [], command: '', part: [0, 1], note: '' };
const leafAt = (seq: number) => leaves[seq] ?? new Uint8Array();

it('the honest ledger verifies, or nothing below would mean anything', () => expect(verify(leaves, slip, latest)).toBe('accepted'));

describe('a thief of the file alone', () => {
  const edited = leaves.map((leaf, i) => (i === 40 ? bytesOf({ ...objects(honest)[40], data: { note: 'never weighed' } }) : leaf));
  const plain = objects(honest);
  it.each([
    ['edits an entry', edited, 'link_previous'],
    ['edits the last entry', [...leaves.slice(0, 99), bytesOf({ ...plain[99], at: 1_780_000_000_000 })], 'root_differs'],
    ['deletes an entry', leaves.filter((_, i) => i !== 40), 'wrong_seq'],
    ['doubles an entry', [...leaves.slice(0, 41), ...leaves.slice(40)], 'wrong_seq'],
    ['swaps two entries', leaves.map((leaf, i) => (i === 40 ? leafAt(41) : i === 41 ? leafAt(40) : leaf)), 'wrong_seq'],
    ['cuts off the tail', leaves.slice(0, 95), 'truncated'],
    [
      'brings an entry of another ledger',
      leaves.map((leaf, i) => (i === 40 ? (written(honest, 'lemel/other/0')[40] ?? leaf) : leaf)),
      'other_log',
    ],
  ])('%s', (_, some, caught) => expect(verify(some, latest)).toBe(caught));
});

describe('a thief of the file and the program, who writes the whole history anew', () => {
  it.each([
    ['edits', rewrite((copy) => copy.splice(40, 1, { ...at(40), note: 'never weighed' }))],
    ['deletes and renumbers', rewrite((copy) => copy.splice(40, 1))],
    ['puts in an entry dated back', rewrite((copy) => copy.splice(40, 0, { ...at(40), command: 'command-x' }))],
    ['swaps two', rewrite((copy) => copy.splice(40, 2, at(41), at(40)))],
  ])('%s: consistent in itself, caught by the slip', (_, forged) => {
    expect(verify(forged)).toBe('accepted');
    expect(verify(forged, slip)).toBe('root_differs');
  });
  it('goes back to an older state: only a newer checkpoint outside shows it', () => {
    const older = leaves.slice(0, 95);
    expect(verify(older, checkpointAt(leaves, 95), slip)).toBe('accepted');
    expect(verify(older, latest)).toBe('truncated');
  });
  it('goes back and forks: no proof leads from the slip to the new head', () => {
    const forked = rewrite((copy) => copy.splice(85, 15, ...drafts(20).map((draft) => ({ ...draft, command: `${draft.command}-fork` }))));
    const { root, read } = fullTree(forked);
    expect(verify(forked)).toBe('accepted');
    const proof = proveTree(sha256, slip.size, forked.length, read);
    const claim = { oldSize: slip.size, oldRoot: slip.root, newSize: forked.length, newRoot: root, proof };
    expect(code(checkTree(sha256, claim))).toBe('old_root_differs');
  });
});

describe('a leaf that says the same in another way', () => {
  const bytes = new TextDecoder().decode(leafAt(7));
  it.each([
    ['a key twice', bytes.replace('"ver":1', '"ver":1,"ver":1'), 'not_canonical'],
    ['keys in another order', bytes.replace(/("type":"noted"),("v":1)/, '$2,$1'), 'not_canonical'],
    ['1.0', bytes.replace('"ver":1', '"ver":1.0'), 'not_canonical'],
    ['1e0', bytes.replace('"ver":1', '"ver":1e0'), 'not_canonical'],
    ['-0', bytes.replace('"part":[0', '"part":[-0'), 'not_canonical'],
    ['an escape', bytes.replace('noted', '\\u006eoted'), 'not_canonical'],
    ['half a character', bytes.replace('note 7', '\\ud800'), 'lone_surrogate'],
    ['__proto__', bytes.replace('"data":{', '"data":{"__proto__":{"x":1},'), 'bad_key'],
    ['a member of every object', bytes.replace('"data"', '"constructor":"x","data"'), 'member_unknown'],
    ['seq 2^53', bytes.replace('"seq":7', '"seq":9007199254740992'), 'not_whole'],
    ['seq 2^63 - 1', bytes.replace('"seq":7', '"seq":9223372036854775807'), 'not_whole'],
    ['a year beyond 9999', bytes.replace(/"at":\d+/, '"at":9007199254740991'), 'member_wrong'],
    ['a time before 1970', bytes.replace(/"at":\d+/, '"at":-1'), 'member_wrong'],
  ])('%s', (_, text, caught) => {
    expect(text).not.toBe(bytes);
    expect(verify([...leaves.slice(0, 7), utf8(text)])).toBe(caught);
  });
  it('composed and decomposed accents: the writer takes one of them', () => {
    expect(code(writable({ note: 'caf\u00e9' }))).toBe('accepted');
    expect(code(writable({ note: 'cafe\u0301' }))).toBe('not_nfc');
    expect(code(profile(utf8('{"note":"cafe\u0301"}')))).toBe('accepted');
  });
});

describe('a proof', () => {
  const { root, read } = fullTree(leaves);
  const proof = proveRecord(sha256, 40, COUNT, read);
  const claim = { index: 40, size: COUNT, leafHash: read(0, 40), root, proof };

  it('of a leaf that is two node hashes does not pass for the node above them', () => {
    const leaf = concat(read(0, 40), read(0, 41));
    expect(leaf.length).toBe(64);
    expect(leafHash(sha256, leaf)).not.toEqual(nodeHash(sha256, read(0, 40), read(0, 41)));
    // The tree of half the leaves, in which the pair would be leaf 20.
    const forged = { index: 20, size: COUNT / 2, leafHash: leafHash(sha256, leaf), root, proof: proof.slice(1) };
    expect(code(checkRecord(sha256, forged))).toBe('root_differs');
    expect(code(checkRecord(sha256, { ...forged, leafHash: nodeHash(sha256, read(0, 40), read(0, 41)) }))).toBeNull();
  });
  it.each([
    ['too long', { proof: [...proof, root] }, 'wrong_length'],
    ['too short', { proof: proof.slice(0, -1) }, 'wrong_length'],
    ['with a hash of 31 bytes', { proof: proof.map((hash) => hash.subarray(0, 31)) }, 'wrong_hash_size'],
    ['with a hash of no bytes', { proof: proof.map(() => new Uint8Array()) }, 'wrong_hash_size'],
    ['for another place', { index: 41 }, 'root_differs'],
    ['for a size at which its path is shorter', { size: 41 }, 'wrong_length'],
    ['for an empty tree', { size: 0, proof: [] }, 'outside_tree'],
  ])('%s', (_, change, caught) => expect(code(checkRecord(sha256, { ...claim, ...change }))).toBe(caught));
  it('with a node of the store flipped does not hold', () => {
    const flipped = proveRecord(sha256, 40, COUNT, (level, index) =>
      read(level, index).map((byte, i) => (level === 3 && i === 0 ? byte ^ 1 : byte)),
    );
    expect(code(checkRecord(sha256, { ...claim, proof: flipped }))).toBe('root_differs');
  });
  it.each([
    ['18446744073709551615', 'number_too_large'],
    ['9007199254740992', 'number_too_large'],
    ['00', 'not_decimal'],
    ['-1', 'not_decimal'],
  ])('with the index %s', (text, caught) => {
    expect(code(Object(parseDecimal(text)))).toBe(caught);
    expect(code(parseProof(formatProof({ index: 0, hashes: proof, checkpoint: 'x' }).replace('index 0', `index ${text}`)))).toBe(
      'bad_index',
    );
  });
});

describe('a checkpoint', () => {
  const seed = sha256(utf8('the shop'));
  const other = sha256(utf8('a thief'));
  const key = <Type extends 1 | 4>(name: string, type: Type, of: Uint8Array) => {
    const made = verifierKey(sha256, name, type, publicOf(of));
    if ('refused' in made) throw new Error(made.refused);
    return made;
  };
  const shop = key(ORIGIN, 1, seed);
  const witness = key('witness.example/w1', 4, other);
  const text = formatCheckpoint(latest);
  const note = signNote(text, shop, signerOf(seed));
  const open = (signed: string) => code(openCheckpoint(signed, ORIGIN, { log: [shop], witnesses: [witness] }, strictVerify));
  const line = note.slice(text.length + 1);

  it('that nobody touched opens', () => expect(open(note)).toBe('accepted'));
  it.each([
    ['signed with another key', signNote(text, key(ORIGIN, 1, other), signerOf(other)), 'no_known_signature'],
    [
      'signed with another key in the name of the shop',
      formatNote(text, [signatureLine(shop, signerOf(other)(utf8(text)))]),
      'bad_signature',
    ],
    ['with another root', note.replace(base64(latest.root), base64(slip.root)), 'bad_signature'],
    ['with a leading zero in its size', signNote(text.replace('\n100\n', '\n0100\n'), shop, signerOf(seed)), 'bad_size'],
    ['with lines ended by CRLF', note.replaceAll('\n', '\r\n'), 'malformed'],
    ['with two signatures, one of them bad', `${note}${signatureLine(shop, new Uint8Array(64))}`, 'bad_signature'],
    ['with base64 that is not the one written', note.replace(line, loosened(line)), 'malformed'],
    [
      'with a cosignature in the place of the signature',
      formatNote(text, [cosignatureLine(text, witness, 1, signerOf(other))]),
      'not_signed_by_log',
    ],
    ['cosigned at a time that was changed', `${note}${laterBy(cosignatureLine(text, witness, 1, signerOf(other)))}`, 'bad_signature'],
  ])('%s', (_, signed, caught) => expect(open(signed)).toBe(caught));

  it('of a key of small order, which would sign everything, is never asked about', () => {
    const identity = Uint8Array.from({ length: 32 }, (_, i) => (i === 0 ? 1 : 0));
    const forged = concat(identity, new Uint8Array(32));
    expect(plainVerify(identity, utf8(text), forged)).toBe(true);
    expect(nobleVerify(identity, utf8(text), forged)).toBe(false);
    expect(code(verifierKey(sha256, ORIGIN, 1, identity))).toBe('weak_key');
  });

  /** The same bytes to a lenient decoder: a bit set behind the last byte. */
  function loosened(signature: string): string {
    const looser = signature.replace(/(.)=\n$/, (_, last: string) => `${String.fromCharCode(last.charCodeAt(0) + 1)}=\n`);
    expect(Buffer.from(looser.split(' ')[2] ?? '', 'base64').equals(Buffer.from(signature.split(' ')[2] ?? '', 'base64'))).toBe(true);
    expect(looser).not.toBe(signature);
    return looser;
  }
  function laterBy(cosignature: string): string {
    const bytes = bytesOfBase64(cosignature.trim().split(' ')[2] ?? '') ?? new Uint8Array();
    return cosignature.replace(base64(bytes), base64(bytes.map((byte, i) => (i === 11 ? byte + 1 : byte))));
  }
});
