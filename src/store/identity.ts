// By what name and key a ledger signs: the name stands in its first entry, the key is made from the seed beside it.
import { join } from 'node:path';
import { base64url } from '../log/bytes.ts';
import { formatVerifierKey, type LogKey, verifierKey } from '../log/note.ts';
import { type Signer, sha256, signerOf } from './crypto.ts';
import type { Keys } from './keys.ts';
import { secret } from './secrets.ts';
import { keptOf } from './shelf.ts';
import type { SqliteFile } from './sqlite.ts';

export interface Identity {
  /** Its origin: `lemel/<id>/<epoch>`. */
  readonly log: string;
  readonly logKey: LogKey;
  readonly vkey: string;
  readonly signer: Signer;
  readonly seedIsNew: boolean;
}

/** Of a ledger without entries the name is made now. Throws BadSecret. */
export async function identityOf(dir: string, random: (bytes: number) => Uint8Array, file: SqliteFile, keys: Keys): Promise<Identity> {
  const seed = secret(join(dir, 'keys'), 'seed', random);
  const signer = signerOf(seed.bytes);
  const [first] = await file.read('SELECT seq, leaf, leaf_hash FROM entry WHERE seq = 0');
  const log = first ? (await keptOf(file.read, keys, first)).leaf.log : `lemel/${base64url(random(16))}/1`;
  const logKey = verifierKey(sha256, log, 1, signer.publicKey);
  if ('refused' in logKey) throw new Error(logKey.say);
  return { log, logKey, vkey: formatVerifierKey(logKey), signer, seedIsNew: seed.made };
}

/** Why this key may sign nothing, as a sentence; null where it is the one that signed last, or nothing was signed. */
export async function keyTrouble(file: SqliteFile, vkey: string): Promise<string | null> {
  const [row] = await file.read('SELECT vkey FROM signing_key ORDER BY from_size DESC LIMIT 1');
  if (!row || row.vkey === vkey) return null;
  return 'The signing key beside these data is not the one this ledger was signed with. Put back keys/seed from the recovery sheet.';
}
