// Canonical JSON (RFC 8785): `jcs` is the whole of it, `profile` what a verifier accepts as a leaf, `writable` what the writer may store.
// One rule makes bytes canonical: parsing and writing them gives the same bytes.
import { textOfUtf8, utf8 } from './bytes.ts';
import { type Refused, refuseWith } from './refused.ts';

/** What a leaf may hold: no null, and numbers are safe integers. */
export type Json = string | number | boolean | readonly Json[] | { readonly [key: string]: Json };

export const LEAF_MAX_BYTES = 65_535;
const DEPTH_MAX = 8;
const KEY = /^[a-z][A-Za-z0-9]*$/;
const CONTROL_BUT_NEWLINE = /(?!\n)\p{Cc}/u;

const SAYS = {
  too_large: 'This is larger than 65,535 bytes. Shorten the text and put the rest in a second entry.',
  not_utf8: 'These bytes are not UTF-8 text. Fetch the file again.',
  not_json: 'This text is not JSON. Fetch the file again.',
  not_data: 'Only objects, lists, texts, whole numbers and true or false can be kept. Leave out what is empty.',
  not_whole: 'Only whole numbers below 2^53 can be kept. Give the figure in a smaller unit, or as text.',
  bad_key: 'A name of a member is a small letter followed by letters and digits. Give it such a name.',
  too_deep: 'This is nested more than eight deep. Give it in fewer levels.',
  lone_surrogate: 'This text holds half of a character. Type it again.',
  not_nfc: 'This text is not in Unicode form NFC. Type the accented letters again.',
  control_character: 'This text holds a control character. Type it again without.',
  not_canonical:
    'These bytes are not the ones that writing their value gives: a key twice, another order, another spelling. Ask for the original.',
} as const;
export type CanonicalCode = keyof typeof SAYS;

/** Why a value cannot stand in a leaf, and the keys that lead to it (a list's members are "0", "1" …). */
export interface Unfit extends Refused<CanonicalCode> {
  readonly path: readonly string[];
}
const unfit = (code: CanonicalCode, path: readonly string[] = []): Unfit => ({ ...refuseWith(SAYS, code), path });

/** Writes a JSON value canonically (RFC 8785, section 3.2); throws on whatever JSON cannot say, never guessing. */
export function jcs(value: unknown): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  if (typeof value === 'string' && value.isWellFormed()) return JSON.stringify(value);
  if (isList(value)) return `[${value.map((member) => jcs(member)).join(',')}]`;
  if (!isRecord(value)) throw new TypeError(`not JSON: ${typeof value}`);
  // Array.prototype.sort compares UTF-16 code units, as RFC 8785, section 3.2.3 asks.
  const keys = Object.keys(value).sort();
  return `{${keys.map((key) => `${jcs(key)}:${jcs(value[key])}`).join(',')}}`;
}

/** Reads the bytes of a leaf as a verifier does: the restricted profile, and the same bytes when written again; no rule of a Unicode version. */
export function profile(bytes: Uint8Array): { readonly value: Json } | Unfit {
  if (bytes.length > LEAF_MAX_BYTES) return unfit('too_large');
  const text = textOfUtf8(bytes);
  if (text === null) return unfit('not_utf8');
  const parsed = parse(text);
  if (parsed === null) return unfit('not_json');
  const written = writeFit(parsed.value, unfitForVerifier, DEPTH_MAX);
  if (typeof written !== 'string') return written;
  return written === text ? { value: parsed.value as Json } : unfit('not_canonical');
}

/** The bytes of a value the writer may store: the profile, and NFC texts (UAX 15) without control characters but U+000A. */
export function writable(value: unknown): Uint8Array | Unfit {
  const written = writeFit(value, unfitForWriter, DEPTH_MAX);
  if (typeof written !== 'string') return written;
  const bytes = utf8(written);
  return bytes.length > LEAF_MAX_BYTES ? unfit('too_large') : bytes;
}

function parse(text: string): { readonly value: unknown } | null {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return null;
  }
}

type TextRule = (text: string) => CanonicalCode | null;
const unfitForVerifier: TextRule = (text) => (text.isWellFormed() ? null : 'lone_surrogate');
const unfitForWriter: TextRule = (text) => {
  if (!text.isWellFormed()) return 'lone_surrogate';
  if (text !== text.normalize('NFC')) return 'not_nfc';
  return CONTROL_BUT_NEWLINE.test(text) ? 'control_character' : null;
};

/** Letters, digits and what else of ASCII needs no escape: such a text is fit for everybody and is written as it stands. */
const PLAIN = /^[ !#-[\]-~]*$/;

/** Writes a value as `jcs` does, or answers its first member that is outside the profile; the path grows on the way back. */
function writeFit(value: unknown, unfitText: TextRule, depthLeft: number): string | Unfit {
  if (typeof value === 'string') {
    if (PLAIN.test(value)) return `"${value}"`;
    const code = unfitText(value);
    return code === null ? JSON.stringify(value) : unfit(code);
  }
  if (typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return Number.isSafeInteger(value) ? String(value) : unfit('not_whole');
  const list = isList(value);
  if (!list && !isRecord(value)) return unfit('not_data');
  if (depthLeft === 0) return unfit('too_deep');
  let text = '';
  // Array.prototype.sort compares UTF-16 code units, as RFC 8785, section 3.2.3 asks; the keys of a list are in their order.
  for (const key of list ? value.keys() : Object.keys(value).sort()) {
    if (typeof key === 'string' && !KEY.test(key)) return unfit('bad_key', [key]);
    const member = writeFit(list ? value[Number(key)] : value[key], unfitText, depthLeft - 1);
    if (typeof member !== 'string') return { ...member, path: [String(key), ...member.path] };
    text += `${text === '' ? '' : ','}${list ? '' : `"${key}":`}${member}`;
  }
  return list ? `[${text}]` : `{${text}}`;
}

/** A list without holes, further properties or a class of its own. */
const isList = (value: unknown): value is readonly unknown[] =>
  Array.isArray(value) && Object.getPrototypeOf(value) === Array.prototype && Object.keys(value).length === value.length;

/** A plain object: a Date, a Map or whatever has a class would lose its meaning in silence. */
function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
