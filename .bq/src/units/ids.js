// Names of things: 128 random bits, opaque, with the kind of thing in their type.
/** Kinds of thing that begin a stream of entries of their own; everything else belongs to one of these. */
export const STREAM_KINDS = ['shop', 'job', 'lot', 'stock', 'skin'];
/** Kinds of thing that belong to the shop's own stream. */
export const SHOP_KINDS = ['person', 'customer', 'place', 'balance'];
/** Digits and letters without I, L, O and U, which are misread aloud and by eye (the choice is Crockford's base 32). */
const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';
/** Bag codes leave 0, 1 and Z (a 2 by eye) out too: 29 characters, a prime. */
const BAG_ALPHABET = '23456789ABCDEFGHJKMNPQRSTVWXY';
const REF_PATTERN = /^[0-9a-hjkmnp-tv-z]{26}$/;
const ENTRY_PATTERN = /^[A-Za-z0-9_-]{43}$/;
/** Whether `text` has the form of a name of this kind; a bag's check character must agree. */
export function isRef(kind, text) {
  if (kind === 'entry') return ENTRY_PATTERN.test(text);
  if (kind === 'bag') return isBagCode(text);
  return REF_PATTERN.test(text);
}
/** A new name from 16 random bytes. */
export function refFromBytes(_kind, bytes) {
  if (bytes.length !== 16) throw new RangeError(`a name needs 16 bytes, got ${bytes.length}`);
  let bits = 0n;
  for (const byte of bytes) bits = (bits << 8n) | BigInt(byte);
  let text = '';
  for (let i = 0; i < 26; i++, bits >>= 5n) text = ALPHABET.charAt(Number(bits & 31n)) + text;
  return text;
}
/** A bag code: `length` characters from random bytes and one check character; 29^3 = 24,389 codes at the usual length of 3. */
export function bagCode(bytes, length = 3) {
  let body = '';
  for (let i = 0; i < length; i++) body += BAG_ALPHABET.charAt((bytes[i] ?? 0) % BAG_ALPHABET.length);
  return body + bagCheck(body);
}
/** What somebody typed or scanned as a bag code, in capitals and without spaces or hyphens; null when it cannot be one. */
export function readBagCode(text) {
  const code = text.toUpperCase().replace(/[\s-]/g, '');
  return isBagCode(code) ? code : null;
}
function isBagCode(text) {
  return /^[2-9A-HJKMNP-TV-Y]{4,6}$/.test(text) && bagCheck(text.slice(0, -1)) === text.at(-1);
}
/** Weighted sum modulo 29: catches every single wrong character and every swap of neighbours. */
function bagCheck(body) {
  let sum = 0;
  for (let i = 0; i < body.length; i++) sum += (i + 2) * BAG_ALPHABET.indexOf(body.charAt(i));
  return BAG_ALPHABET.charAt(sum % 29);
}
