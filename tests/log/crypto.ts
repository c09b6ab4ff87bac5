// The digests and signatures the tests pass in: Node's own, and noble's Ed25519 as a second implementation.
import { createHash, createPrivateKey, createPublicKey, hash, sign, verify } from 'node:crypto';
import * as noble from '@noble/ed25519';
import { isGoodPublicKey } from '../../src/log/ed25519.ts';
import type { Sha256 } from '../../src/log/merkle.ts';
import type { Sign, Verify } from '../../src/log/note.ts';

export const sha256: Sha256 = (bytes) => hash('sha256', bytes, 'buffer');
export const ofHex = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'hex'));
export const toHex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');

/** PKCS #8 and SPKI of an Ed25519 key are these prefixes and the 32 bytes (RFC 8410, section 10). */
const privateKeyOf = (seed: Uint8Array) =>
  createPrivateKey({
    key: Buffer.concat([Buffer.from('302e020100300506032b657004220420', 'hex'), seed]),
    format: 'der',
    type: 'pkcs8',
  });
const publicKeyOf = (bytes: Uint8Array) =>
  createPublicKey({ key: Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), bytes]), format: 'der', type: 'spki' });

export const signerOf = (seed: Uint8Array): Sign => {
  const key = privateKeyOf(seed);
  return (message) => sign(null, message, key);
};
export const publicOf = (seed: Uint8Array): Uint8Array =>
  Uint8Array.from(createPublicKey(privateKeyOf(seed)).export({ format: 'der', type: 'spki' }).subarray(12));

/** Node's verification with the weak keys refused before it. */
export const strictVerify: Verify = (publicKey, message, signature) =>
  isGoodPublicKey(publicKey) && signature.length === 64 && verify(null, message, publicKeyOf(publicKey), signature);
/** Node's verification alone. */
export const plainVerify: Verify = (publicKey, message, signature) => verify(null, message, publicKeyOf(publicKey), signature);

noble.hashes.sha512 = (message) => Uint8Array.from(createHash('sha512').update(message).digest());
/** Noble's verification by RFC 8032; what it cannot decode is not a signature. */
export const nobleVerify: Verify = (publicKey, message, signature) => {
  try {
    return noble.verify(signature, message, publicKey, { zip215: false });
  } catch {
    return false;
  }
};
/** Whether noble finds a point of small order behind 32 bytes, written canonically or not. */
export const nobleSmallOrder = (publicKey: Uint8Array): boolean => noble.Point.fromBytes(publicKey, true).isSmallOrder();
