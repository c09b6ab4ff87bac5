// The shop's own certificate for https: made at the first start, kept beside the other secrets, made anew when it runs out or the address changes.
import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { generate } from 'selfsigned';
import { BadSecret } from './secrets.ts';

export interface Certificate {
  readonly key: string;
  readonly cert: string;
}

const DAY_MS = 86_400_000;
/** Tablets take no certificate of more than 825 days. */
const LASTS_MS = 820 * DAY_MS;
const RENEWED_BEFORE_MS = 30 * DAY_MS;
/** GeneralName choices of RFC 5280, 4.2.1.6. */
const NAME = { dns: 2, ip: 7 } as const;

/** Reads `keys/tls.pem`, or makes one for this address: an EC key on P-256 and a certificate that it signs itself. */
export async function certificateFor(keysDir: string, address: string, nowMs: number): Promise<Certificate> {
  const path = join(keysDir, 'tls.pem');
  if (existsSync(path)) {
    if ((statSync(path).mode & 0o077) !== 0)
      throw new BadSecret('Others can read the secret tls.pem. Run: chmod 600 on it, then start again.');
    const kept = partsOf(readFileSync(path, 'utf8'));
    if (kept && isGood(kept.cert, address, nowMs)) return kept;
  }
  const made = await generate([{ name: 'commonName', value: 'Lemel' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate: new Date(nowMs - DAY_MS),
    notAfterDate: new Date(nowMs + LASTS_MS),
    extensions: [
      { name: 'subjectAltName', altNames: [isIP(address) ? { type: NAME.ip, ip: address } : { type: NAME.dns, value: address }] },
    ],
  });
  const certificate = { key: made.private.trim(), cert: made.cert.trim() };
  writeFileSync(`${path}.new`, `${certificate.key}\n${certificate.cert}\n`, { mode: 0o600, flush: true });
  renameSync(`${path}.new`, path);
  return certificate;
}

/** What a tablet shows of a certificate, to be compared once by eye: its SHA-256. */
export const fingerprintOf = ({ cert }: Certificate): string => new X509Certificate(cert).fingerprint256;

function partsOf(text: string): Certificate | null {
  const [key, cert] = text.match(/-----BEGIN [^-]+-----[^-]+-----END [^-]+-----/g) ?? [];
  return key && cert ? { key, cert } : null;
}

function isGood(cert: string, address: string, nowMs: number): boolean {
  const read = new X509Certificate(cert);
  const named = isIP(address) ? read.checkIP(address) : read.checkHost(address);
  // One that was made while the clock was ahead is not good yet.
  return named !== undefined && Date.parse(read.validFrom) <= nowMs && Date.parse(read.validTo) > nowMs + RENEWED_BEFORE_MS;
}
