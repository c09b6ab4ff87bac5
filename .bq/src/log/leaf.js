// The envelope of one entry: the members every leaf has, whatever its type. Frozen by the first real record.
import { base64url, bytesOfBase64url, utf8 } from './bytes.js';
import { jcs, profile } from './canonical.js';
export const GENESIS = 'genesis';
const LINKS_MAX = 4;
/** The end of the year 9999. */
const LAST_MS = 253_402_300_799_999;
const isCount = (value) => typeof value === 'number' && value >= 0;
const isInstant = (value) => isCount(value) && Number(value) <= LAST_MS;
const isName = (value) => typeof value === 'string' && value !== '';
const isObject = (value) => typeof value === 'object' && !Array.isArray(value);
const isBytes = (value, length) => typeof value === 'string' && bytesOfBase64url(value)?.length === length;
const isPart = (value) => {
  if (!Array.isArray(value) || value.length !== 2 || !value.every(isCount)) return false;
  return value[0] < value[1];
};
const isLink = (value) => {
  if (!isObject(value) || Object.keys(value).join() !== 'n,p,s') return false;
  const { n = -1, p, s = '' } = value;
  return isName(s) && isCount(n) && (n === 0 ? p === GENESIS : isBytes(p, 32));
};
const areLinks = (value) => {
  if (!Array.isArray(value) || value.length < 1 || value.length > LINKS_MAX || !value.every(isLink)) return false;
  return new Set(value.map(({ s }) => s)).size === value.length;
};
const MEMBERS = {
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
};
/** A leaf from its bytes: the profile, then exactly the members of an entry, each of its form; the types of entries are not known here. */
export function readLeaf(bytes) {
  const read = profile(bytes);
  if ('refused' in read) return read;
  const { value } = read;
  const refuse = (refused, member) => ({ refused, say: `${SAYS[refused]} (${member}).` });
  if (!isObject(value)) return refuse('member_missing', 'v');
  if (typeof value.v === 'number' && value.v > 1) return refuse('unknown_version', 'v');
  const missing = NEEDED.find((name) => !Object.hasOwn(value, name));
  if (missing !== undefined) return refuse('member_missing', missing);
  for (const [name, member] of Object.entries(value)) {
    if (!isMember(name)) return refuse('member_unknown', name);
    if (!MEMBERS[name](member)) return refuse('member_wrong', name);
  }
  return { leaf: value };
}
const isMember = (name) => Object.hasOwn(MEMBERS, name);
/** A sealed field as it is disclosed: base64url of the JSON of [salt, name, value] (RFC 9901, section 4.2.1, without white space). */
export const disclosure = (saltB64url, name, value) => base64url(utf8(jcs([saltB64url, name, value])));
/** Digest of a disclosure: base64url of SHA-256 over its ASCII text, not over what it encodes (RFC 9901, section 4.2.3). */
export const disclosureDigest = (sha, disclosed) => base64url(sha(utf8(disclosed)));
/** The digest that stands in a leaf for a field kept out of it. */
export const sealedDigest = (sha, saltB64url, name, value) => disclosureDigest(sha, disclosure(saltB64url, name, value));
/** Whether that salt and value are what the leaf sealed under that name. */
export const checkSealed = (sha, { sealed }, saltB64url, name, value) => sealed?.[name] === sealedDigest(sha, saltB64url, name, value);
