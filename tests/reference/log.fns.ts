// What each group of log-vectors.json checks: one function a group, which throws on a mismatch. The sources stand in the vectors.
import { expect } from 'vitest';
import { z } from 'zod';
import { base64, bytesOfBase64, textOfUtf8, utf8 } from '../../src/log/bytes.ts';
import { jcs, profile } from '../../src/log/canonical.ts';
import { formatCheckpoint, parseCheckpoint } from '../../src/log/checkpoint.ts';
import { isGoodPublicKey } from '../../src/log/ed25519.ts';
import {
  append,
  checkRecord,
  checkTree,
  EMPTY_FRONTIER,
  leafHash,
  nodeHash,
  parseDecimal,
  proveRecord,
  proveTree,
  rootOf,
} from '../../src/log/merkle.ts';
import {
  cosignatureLine,
  cosignatureMessage,
  formatNote,
  formatVerifierKey,
  type NoteCode,
  openNote,
  parseVerifierKey,
  signNote,
  verifierKey,
} from '../../src/log/note.ts';
import { formatProof, formatTilePath, parseProof, parseTilePath } from '../../src/log/proof.ts';
import { nobleVerify, ofHex, publicOf, sha256, signerOf, strictVerify, toHex } from '../log/crypto.ts';
import { fullTree } from '../log/trees.ts';

const hex = z
  .string()
  .regex(/^([0-9a-f]{2})*$/)
  .transform(ofHex);
/** A size or index as somebody else wrote it: null when it is refused. */
const decimal = z.string().transform((text) => {
  const number = parseDecimal(text);
  return typeof number === 'number' ? number : null;
});
type Check = (vector: unknown) => void;
const check =
  <T>(shape: z.ZodType<T>, run: (vector: T) => void): Check =>
  (vector) =>
    run(shape.parse(vector));

/** What was expected to be read, and was not refused. */
function read<T extends object>(value: T): Exclude<T, { readonly refused: string }> {
  expect(value).not.toHaveProperty('refused');
  return value as Exclude<T, { readonly refused: string }>;
}
const isRefused = (value: object) => expect(value).toHaveProperty('refused');

const rootOfLeaves = (leaves: readonly Uint8Array[]): Uint8Array =>
  rootOf(
    sha256,
    leaves.reduce((frontier, leaf) => append(sha256, frontier, leafHash(sha256, leaf)).frontier, EMPTY_FRONTIER),
  );
const goLeaves = (count: number) => Array.from({ length: count }, (_, i) => utf8(`leaf ${i}`));

const record = { index: decimal, size: decimal, leafHashHex: hex, proofHex: z.array(hex), rootHex: hex, valid: z.boolean() };
const recordHolds = ({ index, size, leafHashHex, proofHex, rootHex }: z.infer<z.ZodObject<typeof record>>): boolean =>
  index !== null && size !== null && checkRecord(sha256, { index, size, leafHash: leafHashHex, root: rootHex, proof: proofHex }) === null;

const tree = { size1: decimal, size2: decimal, root1Hex: hex, root2Hex: hex, proofHex: z.array(hex), valid: z.boolean() };
const treeHolds = ({ size1, size2, root1Hex, root2Hex, proofHex }: z.infer<z.ZodObject<typeof tree>>): boolean =>
  size1 !== null &&
  size2 !== null &&
  checkTree(sha256, { oldSize: size1, oldRoot: root1Hex, newSize: size2, newRoot: root2Hex, proof: proofHex }) === null;

const signature = z.object({ publicHex: hex, msgHex: hex, sigHex: hex, valid: z.boolean() });
const note = { vkey: z.string(), text: z.string(), sigLine: z.string() };

/** How golang.org/x/mod/sumdb/note words its errors (from memory: malformed note, note has no verifiable signatures, invalid signature for key …), for each code that refuses a note. */
const NOTE_ERRORS: Readonly<Record<string, RegExp>> = {
  malformed: /malformed/,
  too_large: /malformed|too large/,
  too_many_signatures: /malformed|too many/,
  no_known_signature: /no verifiable signatures|unverified|no known/,
  bad_signature: /invalid signature|bad signature/,
} satisfies Record<Exclude<NoteCode, 'bad_key' | 'other_key_type' | 'wrong_key_id' | 'weak_key'>, RegExp>;
/** A text as it stands in a vector, or the bytes of one. */
const input = z
  .union([z.object({ input: z.string() }), z.object({ inputText: z.string() }), z.object({ inputHex: hex })])
  .transform((given) => ('inputHex' in given ? given.inputHex : utf8('input' in given ? given.input : given.inputText)));

function checkSignedNote(vector: { name: string; seed: Uint8Array; vkey: string; text: string; sigLine: string }) {
  const key = read(verifierKey(sha256, vector.name, 1, publicOf(vector.seed)));
  expect(formatVerifierKey(key)).toBe(vector.vkey);
  expect(read(parseVerifierKey(sha256, vector.vkey, 1))).toEqual(key);
  expect(signNote(vector.text, key, signerOf(vector.seed))).toBe(`${vector.text}\n${vector.sigLine}`);
}

export const LOG_GROUPS: Readonly<Record<string, Check>> = {
  'merkle-root': check(z.object({ leavesHex: z.array(hex), rootHex: hex }), ({ leavesHex, rootHex }) =>
    expect(toHex(rootOfLeaves(leavesHex))).toBe(toHex(rootHex)),
  ),
  'merkle-hash': check(
    z.union([z.object({ leafHex: hex, hashHex: hex }), z.object({ leftHex: hex, rightHex: hex, hashHex: hex })]),
    (vector) => {
      const hash = 'leafHex' in vector ? leafHash(sha256, vector.leafHex) : nodeHash(sha256, vector.leftHex, vector.rightHex);
      expect(toHex(hash)).toBe(toHex(vector.hashHex));
    },
  ),
  'merkle-root-derived': check(z.object({ n: z.int(), rootHex: hex }), ({ n, rootHex }) =>
    expect(toHex(rootOfLeaves(goLeaves(n)))).toBe(toHex(rootHex)),
  ),
  inclusion: check(z.object(record), (vector) => expect(recordHolds(vector)).toBe(vector.valid)),
  'inclusion-derived': check(z.object(record), (vector) => {
    expect(recordHolds(vector)).toBe(vector.valid);
    const { index, size, proofHex, rootHex } = vector;
    const { root, read: node } = fullTree(goLeaves(size ?? 0));
    expect(toHex(root)).toBe(toHex(rootHex));
    expect(proveRecord(sha256, index ?? 0, size ?? 0, node).map(toHex)).toEqual(proofHex.map(toHex));
  }),
  consistency: check(z.object(tree), (vector) => expect(treeHolds(vector)).toBe(vector.valid)),
  'consistency-derived': check(z.object(tree), (vector) => {
    expect(treeHolds(vector)).toBe(vector.valid);
    const { size1, size2, proofHex } = vector;
    expect(proveTree(sha256, size1 ?? 0, size2 ?? 0, fullTree(goLeaves(size2 ?? 0)).read).map(toHex)).toEqual(proofHex.map(toHex));
  }),
  jcs: (vector) =>
    expect(toHex(utf8(jcs(JSON.parse(textOfUtf8(input.parse(vector)) ?? ''))))).toBe(
      toHex(z.object({ outputHex: hex }).parse(vector).outputHex),
    ),
  'jcs-number': check(z.object({ ieee754Hex: hex, expected: z.string() }), ({ ieee754Hex, expected }) =>
    expect(jcs(new DataView(ieee754Hex.buffer).getFloat64(0))).toBe(expected),
  ),
  'jcs-reject': (vector) => {
    z.object({ mustReject: z.literal(true) }).parse(vector);
    isRefused(profile(input.parse(vector)));
  },
  'ed25519-rfc8032': check(
    z.object({ seedHex: hex, publicHex: hex, msgHex: hex, sigHex: hex }),
    ({ seedHex, publicHex, msgHex, sigHex }) => {
      expect(toHex(publicOf(seedHex))).toBe(toHex(publicHex));
      expect(toHex(signerOf(seedHex)(msgHex))).toBe(toHex(sigHex));
      expect([strictVerify, nobleVerify].map((verify) => verify(publicHex, msgHex, sigHex))).toEqual([true, true]);
    },
  ),
  'ed25519-wycheproof': check(signature, ({ publicHex, msgHex, sigHex, valid }) =>
    expect([strictVerify, nobleVerify].map((verify) => verify(publicHex, msgHex, sigHex))).toEqual([valid, valid]),
  ),
  'ed25519-policy': check(signature, ({ publicHex, msgHex, sigHex, valid }) => {
    expect([strictVerify, nobleVerify].map((verify) => verify(publicHex, msgHex, sigHex))).toEqual([valid, valid]);
    expect(isGoodPublicKey(publicHex)).toBe(valid);
    isRefused(verifierKey(sha256, 'lemel/test/0', 1, publicHex));
  }),
  'note-sign': check(
    z.union([z.object({ ...note, skey: z.string() }), z.object({ ...note, name: z.string(), seedHex: hex })]),
    (vector) => {
      if ('seedHex' in vector) return checkSignedNote({ ...vector, seed: vector.seedHex });
      const [, name = '', , encoded = ''] = /^PRIVATE\+KEY\+([^+]+)\+([0-9a-f]{8})\+(.+)$/.exec(vector.skey) ?? [];
      checkSignedNote({ ...vector, name, seed: (bytesOfBase64(encoded) ?? new Uint8Array()).subarray(1) });
    },
  ),
  'note-open': check(
    z.object({ msg: z.string(), vkeys: z.array(z.string()), verified: z.array(z.string()), ok: z.boolean(), error: z.string().optional() }),
    ({ msg, vkeys, verified, ok, error }) => {
      const keys = vkeys.map((vkey) => read(parseVerifierKey(sha256, vkey, 1)));
      const opened = openNote(msg, keys, strictVerify);
      if (!ok) return expect(error).toMatch(NOTE_ERRORS['refused' in opened ? opened.refused : ''] ?? /^accepted$/);
      expect(read(opened).signedBy.map(({ key }) => key.name)).toEqual(verified);
    },
  ),
  'vkey-reject': check(z.object({ vkey: z.string() }), ({ vkey }) => isRefused(parseVerifierKey(sha256, vkey, 1))),
  'checkpoint-parse': check(
    z.object({ text: z.string(), ok: z.boolean(), origin: z.string().optional(), size: decimal.optional(), rootHex: hex.optional() }),
    ({ text, ok, origin, size, rootHex = new Uint8Array() }) => {
      const parsed = parseCheckpoint(text);
      if (!ok) return isRefused(parsed);
      const checkpoint = read(parsed);
      expect({ origin: checkpoint.origin, size: checkpoint.size, root: toHex(checkpoint.root) }).toEqual({
        origin,
        size,
        root: toHex(rootHex),
      });
      expect(formatCheckpoint(checkpoint)).toBe(text);
    },
  ),
  'tlog-proof': check(
    z.object({
      text: z.string(),
      ok: z.boolean(),
      index: decimal.optional(),
      hashesB64: z.array(z.string()).optional(),
      extraB64: z.string().optional(),
      checkpoint: z.string().optional(),
    }),
    ({ text, ok, index, hashesB64, extraB64, checkpoint }) => {
      const parsed = parseProof(text);
      if (!ok) return isRefused(parsed);
      const proof = read(parsed);
      expect({ ...proof, hashes: proof.hashes.map(base64), extra: proof.extra && base64(proof.extra) }).toEqual({
        index,
        hashes: hashesB64,
        extra: extraB64,
        checkpoint,
      });
      expect(formatProof(proof)).toBe(text);
    },
  ),
  'cosignature-derived': check(
    z.object({
      checkpointText: z.string(),
      witnessName: z.string(),
      seedHex: hex,
      time: decimal,
      signedMessage: z.string(),
      sigLine: z.string(),
      vkey: z.string(),
    }),
    ({ checkpointText, witnessName, seedHex, time, signedMessage, sigLine, vkey }) => {
      const key = read(verifierKey(sha256, witnessName, 4, publicOf(seedHex)));
      expect(formatVerifierKey(key)).toBe(vkey);
      expect(cosignatureMessage(checkpointText, time ?? 0)).toBe(signedMessage);
      expect(cosignatureLine(checkpointText, key, time ?? 0, signerOf(seedHex))).toBe(sigLine);
      const opened = read(openNote(formatNote(checkpointText, [sigLine]), [key], nobleVerify));
      expect(opened.signedBy.map(({ key: { name }, atSeconds }) => ({ name, atSeconds }))).toEqual([
        { name: witnessName, atSeconds: time },
      ]);
    },
  ),
  'tile-path': check(
    z.object({ path: z.string(), tile: z.object({ H: z.int(), L: z.int(), N: z.int(), W: z.int() }).nullable() }),
    ({ path, tile }) => {
      const parsed = parseTilePath(path);
      if (tile === null) return isRefused(parsed);
      expect(parsed).toEqual({ height: tile.H, level: tile.L, index: tile.N, width: tile.W });
      expect(formatTilePath(read(parsed))).toBe(path);
    },
  ),
};
