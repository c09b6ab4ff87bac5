// Bytes and the texts that stand for them. Decoding is strict: only the text that encoding would give back is read.
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789';
const STANDARD = `${DIGITS}+/`;
const URL_SAFE = `${DIGITS}-_`;
const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
/** The UTF-8 bytes of a text. */
export const utf8 = (text) => encoder.encode(text);
/** The text of UTF-8 bytes; null when they are not UTF-8 (RFC 3629). A byte order mark stays in the text. */
export function textOfUtf8(bytes) {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
}
/** Lower-case hexadecimal, two digits a byte. */
export const hex = (bytes) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
/** Base64 with padding (RFC 4648, section 4). */
export function base64(bytes) {
  const text = encode(bytes, STANDARD);
  return text.padEnd(Math.ceil(text.length / 4) * 4, '=');
}
/** Base64url without padding (RFC 4648, section 5; RFC 7515, section 2). */
export const base64url = (bytes) => encode(bytes, URL_SAFE);
/** The bytes of a base64 text; null unless the text is exactly the one that `base64` writes. */
export function bytesOfBase64(text) {
  const bytes = decode(text.replace(/={1,2}$/, ''), STANDARD);
  return base64(bytes) === text ? bytes : null;
}
/** The bytes of a base64url text; null unless the text is exactly the one that `base64url` writes. */
export function bytesOfBase64url(text) {
  const bytes = decode(text, URL_SAFE);
  return base64url(bytes) === text ? bytes : null;
}
/** All the parts, one after another. */
export function concat(...parts) {
  const joined = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}
/** Whether two runs of bytes are the same; not in constant time, for what is public. */
export const equal = (a, b) => a.length === b.length && a.every((byte, i) => byte === b[i]);
function encode(bytes, alphabet) {
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    text += alphabet.charAt(three >> 18) + alphabet.charAt((three >> 12) & 63);
    if (i + 1 < bytes.length) text += alphabet.charAt((three >> 6) & 63);
    if (i + 2 < bytes.length) text += alphabet.charAt(three & 63);
  }
  return text;
}
/** A character outside the alphabet decodes to some other one's bits: the callers encode again and compare. */
function decode(text, alphabet) {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  for (let i = 0, at = 0; i < text.length; i++) {
    held = (held << 6) | (alphabet.indexOf(text.charAt(i)) & 63);
    if (i % 4 > 0) bytes[at++] = held >> (6 - 2 * (i % 4));
  }
  return bytes;
}
