// Is the record whole and unaltered? Hashes bytes first, parses after, and names the first bad place.
import { applyLeaf } from '../ledger/apply.ts';
import type { Kept } from '../ledger/leaf.ts';
import { overlayOn } from '../ledger/overlay.ts';
import { base64url, equal, utf8 } from '../log/bytes.ts';
import { formatCheckpoint } from '../log/checkpoint.ts';
import type { Leaf } from '../log/leaf.ts';
import { append, EMPTY_FRONTIER, leafHash, rootOf } from '../log/merkle.ts';
import { parseVerifierKey } from '../log/note.ts';
import { beginVerification } from '../log/verify.ts';
import { sha256, verifySignature } from './crypto.ts';
import { bytesOf } from './keys.ts';
import { notedCheckpoints } from './memory.ts';
import { type Query, thingOf } from './shelf.ts';

/** The first bad place: the entry's number, or none where no entry is to blame. */
export interface BadPlace {
  readonly seq: number | null;
  readonly code: string;
  readonly say: string;
}
export type Audit = { readonly size: number; readonly root: Uint8Array; readonly signatures: number } | { readonly bad: BadPlace };
export interface Audited {
  readonly read: Query;
  readonly log: string;
  /** Path of checkpoints.log. */
  readonly memory: string;
}

const CHUNK = 500;
const bad = (seq: number | null, code: string, say: string): { readonly bad: BadPlace } => ({ bad: { seq, code, say } });

/** Checks every leaf, the columns beside it, its streams, every stored node, every signature, and that the things fold from it. */
export async function auditLog(of: Audited, progress: (done: number) => void = () => undefined): Promise<Audit> {
  const signed = await readSignatures(of);
  if ('bad' in signed) return signed;
  const verification = beginVerification(sha256, of.log, []);
  const overlay = overlayOn({ thing: none, head: none, entry: none, leaves: async () => [] });
  let frontier = EMPTY_FRONTIER;
  let signatures = 0;
  for (let from = 0; ; from += CHUNK) {
    const rows = await of.read('SELECT seq, leaf, leaf_hash, type, at FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', [from, CHUNK]);
    for (const row of rows) {
      const bytes = bytesOf(row.leaf);
      const seq = frontier.size;
      const fault = verification.take(bytes);
      if (fault) return bad(fault.seq, fault.code, fault.words);
      const hash = leafHash(sha256, bytes);
      const leaf = JSON.parse(new TextDecoder().decode(bytes)) as Leaf;
      const beside = Number(row.seq) === leaf.seq && row.type === leaf.type && Number(row.at) === leaf.at;
      if (!beside || !equal(bytesOf(row.leaf_hash), hash))
        return bad(seq, 'columns', `Entry ${seq}: the columns beside it do not say what it says.`);
      const grown = append(sha256, frontier, hash);
      frontier = grown.frontier;
      for (const node of grown.completed) {
        if (!(await isStored(of.read, node)))
          return bad(seq, 'node', `The tree's node at level ${node.level}, position ${node.index} is not the one that was written.`);
      }
      for (const one of signed.filter(({ size }) => size === frontier.size)) {
        const text = formatCheckpoint({ origin: of.log, size: one.size, root: rootOf(sha256, frontier) });
        if (!verifySignature(one.publicKey, utf8(text), one.signature))
          return bad(seq, 'signature', `The signature over the first ${one.size} entries does not fit them.`);
        signatures++;
      }
      await applyLeaf(overlay, { seq, hash: base64url(hash), leaf: leaf as Kept['leaf'], opened: {} });
      const linked = await linksMatch(of.read, leaf);
      if (!linked) return bad(seq, 'links', `Entry ${seq}: the places of its streams were changed beside it.`);
    }
    progress(frontier.size);
    if (rows.length < CHUNK) break;
  }
  const end = verification.finish();
  if ('code' in end) return bad(end.seq, end.code, end.words);
  const cut = signed.find(({ size }) => size > frontier.size);
  if (cut)
    return bad(frontier.size, 'truncated', `${cut.size} entries were signed and ${frontier.size} are here: the last ones were cut off.`);
  return (await foldTrouble(of.read, overlay.things)) ?? { size: end.size, root: end.root, signatures };
}

const none = async () => undefined;

interface Signed {
  readonly size: number;
  readonly signature: Uint8Array;
  readonly publicKey: Uint8Array;
}

/** Every checkpoint in the database and in the memory outside it, with the key that was in force at its size. */
async function readSignatures(of: Audited): Promise<readonly Signed[] | { readonly bad: BadPlace }> {
  const keys: { from: number; publicKey: Uint8Array }[] = [];
  for (const row of await of.read('SELECT from_size, vkey FROM signing_key ORDER BY from_size')) {
    const key = parseVerifierKey(sha256, String(row.vkey), 1);
    if ('refused' in key) return bad(null, 'signing_key', `The key of the ledger cannot be read: ${key.say}`);
    keys.push({ from: Number(row.from_size), publicKey: key.publicKey });
  }
  const rows = await of.read('SELECT size, signature FROM checkpoint ORDER BY size');
  const all = [...rows.map((row) => ({ size: Number(row.size), signature: bytesOf(row.signature) })), ...notedCheckpoints(of.memory)];
  return all.flatMap(({ size, signature }) => {
    const key = keys.filter(({ from }) => from < size).at(-1);
    return key ? [{ size, signature, publicKey: key.publicKey }] : [];
  });
}

async function isStored(read: Query, { level, index, hash }: { level: number; index: number; hash: Uint8Array }): Promise<boolean> {
  const [row] = await read('SELECT hash FROM node WHERE level = ? AND position = ?', [level, index]);
  return row !== undefined && equal(bytesOf(row.hash), hash);
}

async function linksMatch(read: Query, leaf: Leaf): Promise<boolean> {
  const rows = await read('SELECT stream, n FROM entry_link WHERE seq = ?', [leaf.seq]);
  const stored = rows.map(({ stream, n }) => `${stream} ${n}`).sort();
  const said = leaf.links.map(({ s, n }) => `${s} ${n}`).sort();
  return stored.join() === said.join();
}

async function foldTrouble(read: Query, folded: ReadonlyMap<string, { readonly id: string }>): Promise<{ readonly bad: BadPlace } | null> {
  const rows = await read('SELECT id, state FROM thing ORDER BY n');
  for (const row of rows) {
    if (JSON.stringify(folded.get(String(row.id))) !== JSON.stringify(thingOf(row))) {
      return bad(null, 'fold', `What the screens show of ${row.id} does not follow from the entries. Run: lemel rebuild.`);
    }
  }
  if (rows.length === folded.size) return null;
  return bad(null, 'fold', 'Something the entries tell of is not on the screens. Run: lemel rebuild.');
}
