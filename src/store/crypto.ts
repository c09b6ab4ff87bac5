// The digests, signatures and ciphers the pure parts are given: Node's own.
import { createCipheriv, createDecipheriv, createHmac, createPrivateKey, createPublicKey, hash, sign, verify } from 'node:crypto';
import type { Sha256 } from '../log/merkle.ts';
import type { Verify } from '../log/note.ts';

export const sha256: Sha256 = (bytes) => hash('sha256', bytes, 'buffer');

export const hmac = (key: Uint8Array, text: string): Uint8Array => createHmac('sha256', key).update(text).digest();

/** PKCS 8 wrapping of an Ed25519 seed (RFC 8410, section 7). */
const PKCS8 = Buffer.from('302e020100300506032b657004220420', 'hex');
const SPKI = Buffer.from('302a300506032b6570032100', 'hex');

export interface Signer {
  readonly publicKey: Uint8Array;
  readonly sign: (message: Uint8Array) => Uint8Array;
}
/** Ed25519 (RFC 8032) from a seed of 32 bytes. */
export function signerOf(seed: Uint8Array): Signer {
  const key = createPrivateKey({ key: Buffer.concat([PKCS8, seed]), format: 'der', type: 'pkcs8' });
  const publicKey = createPublicKey(key).export({ format: 'der', type: 'spki' }).subarray(-32);
  return { publicKey, sign: (message) => sign(null, message, key) };
}

/** Checks an Ed25519 signature; weak keys are refused where a key is read. */
export const verifySignature: Verify = (publicKey, message, signature) => verify(null, message, keyObject(publicKey), signature);

/** The same for many signatures by one key, each checked by the system's other threads. */
export function verifierOf(publicKey: Uint8Array): (message: Uint8Array, signature: Uint8Array) => Promise<boolean> {
  const key = keyObject(publicKey);
  return (message, signature) =>
    new Promise((resolve, reject) => verify(null, message, key, signature, (error, good) => (error ? reject(error) : resolve(good))));
}

const keyObject = (publicKey: Uint8Array) => createPublicKey({ key: Buffer.concat([SPKI, publicKey]), format: 'der', type: 'spki' });

/** AES-256-GCM: ciphertext and its 16-byte tag; `about` is authenticated with it. */
export function encrypt(key: Uint8Array, iv: Uint8Array, plain: Uint8Array, about: string): Uint8Array {
  const cipher = createCipheriv('aes-256-gcm', key, iv);
  cipher.setAAD(Buffer.from(about));
  return Buffer.concat([cipher.update(plain), cipher.final(), cipher.getAuthTag()]);
}

/** Undoes `encrypt`; null when the key, the text or what it is about does not fit. */
export function decrypt(key: Uint8Array, iv: Uint8Array, ciphertext: Uint8Array, about: string): Uint8Array | null {
  const decipher = createDecipheriv('aes-256-gcm', key, iv);
  decipher.setAAD(Buffer.from(about));
  decipher.setAuthTag(ciphertext.subarray(-16));
  try {
    return Buffer.concat([decipher.update(ciphertext.subarray(0, -16)), decipher.final()]);
  } catch {
    return null;
  }
}
