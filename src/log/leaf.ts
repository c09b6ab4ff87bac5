// The envelope of one entry: the members every leaf has, whatever its type. Frozen by the first real record.
import { base64url, utf8 } from './bytes.ts';
import { type CanonicalCode, type Json, jcs, profile } from './canonical.ts';
import type { Sha256 } from './merkle.ts';
import type { Refused } from './refused.ts';

/** Where an entry stands in a stream: stream, position from 0, leaf hash (base64url) of the stream's previous entry or `genesis`. */
export interface Link {
  readonly s: string;
  readonly n: number;
  readonly p: string;
}
export interface Leaf {
  readonly v: 1;
  /** Origin of the log. */
  readonly log: string;
  readonly seq: number;
  readonly type: string;
  readonly ver: number;
  /** Recorded and claimed time, milliseconds since 1970 UTC. */
  readonly at: number;
  readonly occurredAt: number;
  readonly by: string;
  readonly auth: 'session' | 'pin' | 'password' | 'import';
  readonly witness?: string;
  readonly device: string;
  readonly command: string;
  /** Index within the command, and how many entries the command has. */
  readonly part: readonly [index: number, size: number];
  /** One to four, the subject's first. */
  readonly links: readonly [Link, ...Link[]];
  /** 16 random bytes, base64url. */
  readonly salt: string;
  readonly data: { readonly [field: string]: Json };
  /** Digests of the fields that are kept out of the leaf. */
  readonly sealed?: { readonly [field: string]: string };
}
export type LeafCode = CanonicalCode | 'unknown_version' | 'member_missing' | 'member_unknown' | 'member_wrong';

export const GENESIS = 'genesis';
const LINKS_MAX = 4;
/** The end of the year 9999. */
const LAST_MS = 253_402_300_799_999;

type Rule = (value: Json) => boolean;
const isCount: Rule = (value) => typeof value === 'number' && value >= 0;
const isInstant: Rule = (value) => isCount(value) && Number(value) <= LAST_MS;
const isName: Rule = (value) => typeof value === 'string' && value !== '';
const isObject = (value: Json): value is { readonly [key: string]: Json } => typeof value === 'object' && !Array.isArray(value);
/** Base64url of that many bytes as it alone is written: the bits behind the last byte are none. */
const BYTES = { 16: /^[\w-]{21}[AQgw]$/, 32: /^[\w-]{42}[AEIMQUYcgkosw048]$/ } as const;
const isBytes = (value: Json | undefined, length: 16 | 32): boolean => typeof value === 'string' && BYTES[length].test(value);

const isPart: Rule = (value) => {
  if (!Array.isArray(value) || value.length !== 2 || !value.every(isCount)) return false;
  return value[0] < value[1];
};
const isLink: Rule = (value) => {
  if (!isObject(value) || Object.keys(value).length !== 3) return false;
  const { n = -1, p, s = '' } = value;
  return isName(s) && isCount(n) && (n === 0 ? p === GENESIS : isBytes(p, 32));
};
const areLinks: Rule = (value) => {
  if (!Array.isArray(value) || value.length < 1 || value.length > LINKS_MAX || !value.every(isLink)) return false;
  return new Set(value.map(({ s }) => s)).size === value.length;
};

const MEMBERS: { readonly [Name in keyof Required<Leaf>]: Rule } = {
  v: (value) => value === 1,
  log: isName,
  seq: isCount,
  type: isName,
  ver: (value) => isCount(value) && value !== 0,
  at: isInstant,
  occurredAt: isInstant,
  by: isName,
  auth: (value) => value === 'session' || value === 'pin' || value === 'password' || value === 'import',
  witness: isName,
  device: isName,
  command: isName,
  part: isPart,
  links: areLinks,
  salt: (value) => isBytes(value, 16),
  data: isObject,
  sealed: (value) => isObject(value) && Object.values(value).every((digest) => isBytes(digest, 32)),
};
const NEEDED = Object.keys(MEMBERS).filter((name) => name !== 'witness' && name !== 'sealed');

const SAYS = {
  unknown_version: 'it is written in a later form than this program knows: use the newest verifier',
  member_missing: 'a part that every entry has is missing',
  member_unknown: 'it has a part that no entry has',
  member_wrong: 'a part of it is not of the form that every entry has',
} as const;

/** A leaf from its bytes: the profile, then exactly the members of an entry, each of its form; the types of entries are not known here. */
export function readLeaf(bytes: Uint8Array): { readonly leaf: Leaf } | Refused<LeafCode> {
  const read = profile(bytes);
  if ('refused' in read) return read;
  const wrong = leafTrouble(read.value);
  return wrong ?? { leaf: read.value as unknown as Leaf };
}

/** What keeps a canonical value from being a leaf: a member too many, too few or of another form; null when it is one. */
export function leafTrouble(value: Json): Refused<LeafCode> | null {
  const refuse = (refused: keyof typeof SAYS, member: string) => ({ refused, say: `${SAYS[refused]} (${member}).` });
  if (!isObject(value)) return refuse('member_missing', 'v');
  if (typeof value.v === 'number' && value.v > 1) return refuse('unknown_version', 'v');
  const missing = NEEDED.find((name) => !Object.hasOwn(value, name));
  if (missing !== undefined) return refuse('member_missing', missing);
  for (const [name, member] of Object.entries(value)) {
    if (!isMember(name)) return refuse('member_unknown', name);
    if (!MEMBERS[name](member)) return refuse('member_wrong', name);
  }
  return null;
}
const isMember = (name: string): name is keyof Leaf => Object.hasOwn(MEMBERS, name);

/** A sealed field as it is disclosed: base64url of the JSON of [salt, name, value] (RFC 9901, section 4.2.1, without white space). */
export const disclosure = (saltB64url: string, name: string, value: Json): string => base64url(utf8(jcs([saltB64url, name, value])));

/** Digest of a disclosure: base64url of SHA-256 over its ASCII text, not over what it encodes (RFC 9901, section 4.2.3). */
export const disclosureDigest = (sha: Sha256, disclosed: string): string => base64url(sha(utf8(disclosed)));

/** The digest that stands in a leaf for a field kept out of it. */
export const sealedDigest = (sha: Sha256, saltB64url: string, name: string, value: Json): string =>
  disclosureDigest(sha, disclosure(saltB64url, name, value));

/** Whether that salt and value are what the leaf sealed under that name. */
export const checkSealed = (sha: Sha256, { sealed }: Leaf, saltB64url: string, name: string, value: Json): boolean =>
  sealed?.[name] === sealedDigest(sha, saltB64url, name, value);
