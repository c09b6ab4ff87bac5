// Bytes and the texts that stand for them. Decoding is strict: only the text that encoding would give back is read.

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789';
/** The characters, each pair of them by its twelve bits, and each one's bits by its code: what is looked up is not computed. */
interface Alphabet {
  readonly digits: string;
  readonly pairs: readonly string[];
  readonly bits: Uint8Array;
}
function alphabet(digits: string): Alphabet {
  const pairs = Array.from({ length: 4096 }, (_, twelve) => digits.charAt(twelve >> 6) + digits.charAt(twelve & 63));
  const bits = new Uint8Array(128);
  for (const [value, digit] of [...digits].entries()) bits[digit.charCodeAt(0)] = value;
  return { digits, pairs, bits };
}
const STANDARD = alphabet(`${DIGITS}+/`);
const URL_SAFE = alphabet(`${DIGITS}-_`);
const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));
const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** The UTF-8 bytes of a text. */
export const utf8 = (text: string): Uint8Array => encoder.encode(text);

/** The text of UTF-8 bytes; null when they are not UTF-8 (RFC 3629). A byte order mark stays in the text. */
export function textOfUtf8(bytes: Uint8Array): string | null {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
}

/** Lower-case hexadecimal, two digits a byte. */
export function hex(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += HEX[byte];
  return text;
}

/** Base64 with padding (RFC 4648, section 4). */
export function base64(bytes: Uint8Array): string {
  const text = encode(bytes, STANDARD);
  return text.padEnd(Math.ceil(text.length / 4) * 4, '=');
}

/** Base64url without padding (RFC 4648, section 5; RFC 7515, section 2). */
export const base64url = (bytes: Uint8Array): string => encode(bytes, URL_SAFE);

/** The bytes of a base64 text; null unless the text is exactly the one that `base64` writes. */
export function bytesOfBase64(text: string): Uint8Array | null {
  const bytes = decode(text.replace(/={1,2}$/, ''), STANDARD);
  return base64(bytes) === text ? bytes : null;
}

/** The bytes of a base64url text; null unless the text is exactly the one that `base64url` writes. */
export function bytesOfBase64url(text: string): Uint8Array | null {
  const bytes = decode(text, URL_SAFE);
  return base64url(bytes) === text ? bytes : null;
}

/** All the parts, one after another. */
export function concat(...parts: readonly Uint8Array[]): Uint8Array {
  const joined = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}

/** Whether two runs of bytes are the same; not in constant time, for what is public. */
export function equal(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function encode(bytes: Uint8Array, { digits, pairs }: Alphabet): string {
  const whole = bytes.length - (bytes.length % 3);
  let text = '';
  for (let i = 0; i < whole; i += 3) {
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    text += `${pairs[three >> 12]}${pairs[three & 4095]}`;
  }
  const rest = ((bytes[whole] ?? 0) << 16) | ((bytes[whole + 1] ?? 0) << 8);
  if (bytes.length - whole > 0) text += pairs[rest >> 12];
  if (bytes.length - whole === 2) text += digits.charAt((rest >> 6) & 63);
  return text;
}

/** A character outside the alphabet decodes to some other one's bits: the callers encode again and compare. */
function decode(text: string, { bits }: Alphabet): Uint8Array {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  for (let i = 0, at = 0; i < text.length; i++) {
    held = (held << 6) | (bits[text.charCodeAt(i)] ?? 0);
    if (i % 4 > 0) bytes[at++] = held >> (6 - 2 * (i % 4));
  }
  return bytes;
}
