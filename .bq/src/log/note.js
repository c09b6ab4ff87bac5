// Signed notes (C2SP signed-note v1), with plain Ed25519 signatures and timestamped cosignatures (C2SP tlog-cosignature, cosignature/v1).
// The type byte of the key decides what a signature says, so that neither kind can be shown as the other.
import { base64, bytesOfBase64, concat, hex, utf8 } from './bytes.js';
import { isGoodPublicKey } from './ed25519.js';
import { refuseWith } from './refused.js';

const NOTE_MAX_BYTES = 1_000_000;
const SIGNATURES_MAX = 100;
const ED25519_BYTES = 64;
const TIME_BYTES = 8;
const SAYS = {
  malformed: 'This is not a signed note. Copy it again, whole, without changing line ends or spaces.',
  too_large: 'This note is larger than any that is written here. Ask for it again.',
  too_many_signatures: 'This note has more than 100 signatures. Ask for it again.',
  no_known_signature: 'No key that you trust signed this note. Check the fingerprint of the key, then the note.',
  bad_signature: 'A signature by a key that you trust is wrong: the note was changed. Keep it and ask the shop.',
  bad_key: 'This is not a verifier key: name, eight digits and the key, joined by plus signs. Copy it again.',
  other_key_type: 'This key is of another kind: a witness in the place of a ledger, or the reverse. Ask which is meant.',
  wrong_key_id: 'The eight digits of this key do not belong to it. Copy it again.',
  weak_key: 'This key would accept a signature that nobody made. Ask for another.',
};
const refuse = (code) => refuseWith(SAYS, code);
/** A key of that name and type; refuses a bad name and a weak or oddly written public key. */
export function verifierKey(sha, name, type, publicKey) {
  if (!isName(name)) return refuse('bad_key');
  if (!isGoodPublicKey(publicKey)) return refuse('weak_key');
  const id = hex(sha(concat(utf8(`${name}\n`), Uint8Array.of(type), publicKey)).subarray(0, 4));
  return { name, id, type, publicKey };
}
/** `name+id+base64(type, public key)` (C2SP signed-note, verifier keys). */
export const formatVerifierKey = ({ name, id, type, publicKey }) => `${name}+${id}+${base64(concat(Uint8Array.of(type), publicKey))}`;
/** Reads a verifier key of the type that is due; its id must be the one that its name, type and public key give. */
export function parseVerifierKey(sha, text, type) {
  const [, name = '', id, encoded = ''] = /^([^+]+)\+([0-9a-f]{8})\+(.+)$/.exec(text) ?? [];
  const bytes = bytesOfBase64(encoded);
  if (bytes === null || bytes.length !== 33) return refuse('bad_key');
  if (bytes[0] !== type) return refuse('other_key_type');
  const key = verifierKey(sha, name, type, bytes.subarray(1));
  return 'refused' in key || key.id === id ? key : refuse('wrong_key_id');
}
/** The line of a signature that was made before: em dash, name, base64 of key id and signature. */
export function signatureLine(key, signature) {
  const id = Uint8Array.from(key.id.match(/../g) ?? [], (digits) => Number.parseInt(digits, 16));
  return `\u2014 ${key.name} ${base64(concat(id, signature))}\n`;
}
/** A note from its text and its signature lines; throws when the text could not be read back. */
export function formatNote(text, lines) {
  if (!isText(text)) throw new Error('the text of a note is UTF-8 lines, each ended by a newline, without control characters');
  return `${text}\n${lines.join('')}`;
}
/** A note with one plain signature. */
export const signNote = (text, key, sign) => formatNote(text, [signatureLine(key, sign(utf8(text)))]);
/** What a cosignature signs: that the log was seen consistent up to this checkpoint at that time (C2SP tlog-cosignature). */
export const cosignatureMessage = (text, atSeconds) => `cosignature/v1\ntime ${atSeconds}\n${text}`;
/** The line a witness adds to a note, with the time in seconds since 1970 UTC. */
export function cosignatureLine(text, key, atSeconds, sign) {
  const time = new Uint8Array(TIME_BYTES);
  new DataView(time.buffer).setBigUint64(0, BigInt(atSeconds));
  return signatureLine(key, concat(time, sign(utf8(cosignatureMessage(text, atSeconds)))));
}
/** Splits a note and finds the signatures by known keys; at least one, others are passed over. For whoever must verify asynchronously. */
export function readNote(note, keys) {
  if (note.length > NOTE_MAX_BYTES) return refuse('too_large');
  const split = note.lastIndexOf('\n\n');
  const text = note.slice(0, split + 1);
  const tail = note.slice(split + 2);
  if (!isText(text) || !isText(tail)) return refuse('malformed');
  const lines = tail.slice(0, -1).split('\n');
  if (lines.length > SIGNATURES_MAX) return refuse('too_many_signatures');
  const signatures = [];
  for (const line of new Set(lines)) {
    const read = readLine(line);
    if (read === null) return refuse('malformed');
    for (const key of keys.filter(({ name, id }) => name === read.name && id === read.id)) {
      const signature = toCheck(text, key, read.signature);
      if (signature === null) return refuse('bad_signature');
      signatures.push(signature);
    }
  }
  return signatures.length === 0 ? refuse('no_known_signature') : { text, signatures };
}
/** The text of a note that at least one known key signed; one bad signature by a known key refuses the whole (C2SP signed-note, signatures). */
export function openNote(note, keys, verify) {
  const read = readNote(note, keys);
  if ('refused' in read) return read;
  const bad = read.signatures.some(({ key, message, signature }) => !verify(key.publicKey, message, signature));
  return bad ? refuse('bad_signature') : { text: read.text, signedBy: firstOfEach(read.signatures, ({ key }) => `${key.name}+${key.id}`) };
}
/** The list without those that have the name of an earlier one. */
export const firstOfEach = (list, nameOf) => list.filter((one, i) => list.findIndex((other) => nameOf(other) === nameOf(one)) === i);
function readLine(line) {
  const [, name = '', encoded = ''] = /^\u2014 ([^ ]+) ([^ ]+)$/.exec(line) ?? [];
  const bytes = bytesOfBase64(encoded);
  if (!isName(name) || bytes === null || bytes.length < 5) return null;
  return { name, id: hex(bytes.subarray(0, 4)), signature: bytes.subarray(4) };
}
/** What this key must have signed for those bytes to be its signature; null when they have another length or a time beyond 2^53 - 1. */
function toCheck(text, key, bytes) {
  if (key.type === 1) return bytes.length === ED25519_BYTES ? { key, message: utf8(text), signature: bytes } : null;
  if (bytes.length !== TIME_BYTES + ED25519_BYTES) return null;
  const atSeconds = Number(new DataView(bytes.buffer, bytes.byteOffset).getBigUint64(0));
  if (!Number.isSafeInteger(atSeconds)) return null;
  return { key, message: utf8(cosignatureMessage(text, atSeconds)), signature: bytes.subarray(TIME_BYTES), atSeconds };
}
/** Non-empty, without Unicode spaces, plus signs or control characters (C2SP signed-note, format). */
const isName = (name) => name !== '' && name.isWellFormed() && !/[\p{White_Space}\p{Cc}+]/u.test(name);
/** Ends in a newline; no control character but newline, those above U+007F included (stricter than C2SP signed-note, format). */
const isText = (text) => text.endsWith('\n') && text.isWellFormed() && !/(?!\n)\p{Cc}/u.test(text);
