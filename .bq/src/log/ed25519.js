// Which Ed25519 public keys may be trusted (RFC 8032). The curve itself is passed in, from the platform or a library.
import { hex } from './bytes.js';

/** The y of the eight points of small order, little endian, sign bit cleared (Chalkias et al., Taming the many EdDSAs, table 5). */
const SMALL_ORDER_Y = new Set([
  '0000000000000000000000000000000000000000000000000000000000000000',
  '0100000000000000000000000000000000000000000000000000000000000000',
  'ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f',
  '26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05',
  'c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a',
]);
/** 2^255 - 19 (RFC 8032, section 5.1). */
const FIELD_PRIME = 'edffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f';
/** Whether a public key is 32 bytes with y below 2^255 - 19 and not of small order: such a key accepts signatures that nobody made. */
export function isGoodPublicKey(publicKey) {
  if (publicKey.length !== 32) return false;
  const y = Uint8Array.from(publicKey, (byte, i) => (i === 31 ? byte & 0x7f : byte));
  return bigEndian(hex(y)) < bigEndian(FIELD_PRIME) && !SMALL_ORDER_Y.has(hex(y));
}
/** The digits with the most significant byte first, so that texts compare as numbers. */
const bigEndian = (littleEndian) => (littleEndian.match(/../g) ?? []).reverse().join('');
