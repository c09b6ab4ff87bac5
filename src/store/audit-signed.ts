// Checkpoints: every one signed over the tree it names, at the time its last entry says, and remembered word for word in checkpoints.log.
import { utf8 } from '../log/bytes.ts';
import { formatCheckpoint } from '../log/checkpoint.ts';
import { rootOf } from '../log/merkle.ts';
import { type LogKey, parseVerifierKey } from '../log/note.ts';
import { rememberedIn } from './audit-remembered.ts';
import { type Audited, type Bad, type Beside, bad, type Checked, type Counted } from './beside.ts';
import { sha256, verifierOf } from './crypto.ts';
import { bytesOf } from './keys.ts';
import type { Noted } from './memory.ts';
import type { Query } from './sqlite.ts';

/** Looks at every checkpoint; a ledger without its key is signed by nobody. */
export async function signaturesBeside(of: Audited, counted: Counted, told: string[]): Promise<Beside | Bad> {
  const key = await signingKey(of);
  if (key && 'bad' in key) return key;
  const isGood = key ? verifierOf(key.publicKey) : async () => false;
  const remembered = of.memory ? rememberedIn(of.memory, of.log, key, told) : null;
  let last = 0;
  return {
    async look(chunk) {
      const signed = await signedIn(of.read, chunk);
      if ('bad' in signed) return signed;
      const good = await Promise.all(signed.map((one) => isGood(utf8(formatCheckpoint({ origin: of.log, ...one })), one.signature)));
      const forged = signed[good.indexOf(false)];
      if (forged) return bad(forged.size - 1, 'signature', `The signature over the first ${forged.size} entries does not fit them.`);
      counted.signatures += signed.length;
      last = signed.at(-1)?.size ?? last;
      return signed.map((one) => remembered?.look(one) ?? null).find((found) => found !== null) ?? null;
    },
    async end(size) {
      const outside = (await remembered?.end(size)) ?? 0;
      const trouble = await endTrouble(of.read, size, last, typeof outside === 'number' ? outside : 0);
      return trouble ?? (typeof outside === 'number' ? null : outside);
    },
  };
}

/** The checkpoints over these leaves, each with the tree that the leaves make. */
async function signedIn(read: Query, chunk: readonly Checked[]): Promise<readonly Noted[] | Bad> {
  const first = chunk[0]?.leaf.seq ?? 0;
  const sql = 'SELECT size, signature, issued FROM checkpoint WHERE size > ? AND size <= ? ORDER BY size';
  const signed: Noted[] = [];
  for (const { size, signature, issued } of await read(sql, [first, first + chunk.length])) {
    const { leaf, frontier } = chunk[Number(size) - 1 - first] as Checked;
    if (issued !== leaf.at)
      return bad(leaf.seq, 'issued', `The time of the checkpoint over ${size} entries is not that of its last entry.`);
    signed.push({ size: frontier.size, root: rootOf(sha256, frontier), signature: bytesOf(signature), at: leaf.at });
  }
  return signed;
}

/** What no checkpoint shows by itself: an end without its signature, an end that was signed and is not here, keys that no entry tells of. */
async function endTrouble(read: Query, size: number, last: number, outside: number): Promise<Bad | null> {
  const [row] = await read(
    'SELECT (SELECT COALESCE(MAX(size), 0) FROM checkpoint) AS signed, (SELECT COUNT(*) FROM signing_key) AS keys, (SELECT COUNT(*) FROM cosignature) AS others',
  );
  const signed = Math.max(Number(row?.signed), outside);
  if (signed > size) return bad(size, 'truncated', `${signed} entries were signed and ${size} are here: the last ones were cut off.`);
  if (last !== size) return bad(size - 1, 'unsigned', `The last entries of ${size} are not signed.`);
  if (Number(row?.keys) !== (size > 0 ? 1 : 0)) return bad(null, 'signing_key', 'The ledger names a key that no entry tells of.');
  return Number(row?.others) > 0 ? bad(null, 'cosignature', 'The ledger names a witness that no entry tells of.') : null;
}

async function signingKey({ read, vkey, log }: Audited): Promise<LogKey | Bad | null> {
  const [row] = await read('SELECT from_size, vkey FROM signing_key ORDER BY from_size');
  if (!row) return null;
  const key = parseVerifierKey(sha256, String(row.vkey), 1);
  if ('refused' in key) return bad(null, 'signing_key', `The key of the ledger cannot be read: ${key.say}`);
  if (row.from_size !== 0 || key.name !== log) return bad(null, 'signing_key', 'The key of the ledger is not given for all of it.');
  if (vkey === undefined || row.vkey === vkey) return key;
  return bad(null, 'signing_key', 'The ledger names another key than the one this shop signs with.');
}
