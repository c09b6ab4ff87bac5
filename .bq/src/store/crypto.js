// The digests, signatures and ciphers the pure parts are given: Node's own.
import { createCipheriv, createDecipheriv, createHash, createHmac, createPrivateKey, createPublicKey, sign, verify } from 'node:crypto';
export const sha256 = (bytes) => createHash('sha256').update(bytes).digest();
export const hmac = (key, text) => createHmac('sha256', key).update(text).digest();
/** PKCS 8 wrapping of an Ed25519 seed (RFC 8410, section 7). */
const PKCS8 = Buffer.from('302e020100300506032b657004220420', 'hex');
const SPKI = Buffer.from('302a300506032b6570032100', 'hex');
/** Ed25519 (RFC 8032) from a seed of 32 bytes. */
export function signerOf(seed) {
  const key = createPrivateKey({ key: Buffer.concat([PKCS8, seed]), format: 'der', type: 'pkcs8' });
  const publicKey = createPublicKey(key).export({ format: 'der', type: 'spki' }).subarray(-32);
  return { publicKey, sign: (message) => sign(null, message, key) };
}
/** Checks an Ed25519 signature; weak keys are refused where a key is read. */
export const verifySignature = (publicKey, message, signature) =>
  verify(null, message, createPublicKey({ key: Buffer.concat([SPKI, publicKey]), format: 'der', type: 'spki' }), signature);
/** AES-256-GCM: ciphertext and its 16-byte tag; `about` is authenticated with it. */
export function encrypt(key, iv, plain, about) {
  const cipher = createCipheriv('aes-256-gcm', key, iv);
  cipher.setAAD(Buffer.from(about));
  return Buffer.concat([cipher.update(plain), cipher.final(), cipher.getAuthTag()]);
}
/** Undoes `encrypt`; null when the key, the text or what it is about does not fit. */
export function decrypt(key, iv, ciphertext, about) {
  const decipher = createDecipheriv('aes-256-gcm', key, iv);
  decipher.setAAD(Buffer.from(about));
  decipher.setAuthTag(ciphertext.subarray(-16));
  try {
    return Buffer.concat([decipher.update(ciphertext.subarray(0, -16)), decipher.final()]);
  } catch {
    return null;
  }
}
