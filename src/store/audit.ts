// Is the record whole and unaltered? Hashes bytes first, parses after, looks at everything that is shown beside them, and names the first bad place.
import { equal } from '../log/bytes.ts';
import { beginVerification } from '../log/verify.ts';
import { goneWords } from './at-start.ts';
import { commandsBeside, thingsBeside } from './audit-folded.ts';
import { photographsBeside, sealedBeside } from './audit-kept.ts';
import { signaturesBeside } from './audit-signed.ts';
import { linksBeside, nodesBeside } from './audit-tree.ts';
import { type Audit, type Audited, type Beside, bad, type Checked, type Counted } from './beside.ts';
import { sha256 } from './crypto.ts';
import { bytesOf } from './keys.ts';
import { turnOfTheLoop } from './sqlite.ts';

const CHUNK = 200;

/** Checks every leaf, the columns beside it, its streams, every node, signature, command and sealed value, photographs, and that the things fold from it. */
export async function auditLog(of: Audited, progress: (done: number) => void = () => undefined): Promise<Audit> {
  const counted: Counted = { signatures: 0, opened: 0, closed: 0, photographs: 0, photographsMissing: 0 };
  const told: string[] = [];
  const signatures = await signaturesBeside(of, counted, told);
  if ('bad' in signatures) return signatures;
  const besides: readonly Beside[] = [
    signatures,
    linksBeside(of.read),
    nodesBeside(of.read),
    await commandsBeside(of.read),
    sealedBeside(of.read, of.keys, counted),
    ...(of.photosDir === undefined ? [] : [photographsBeside(of.photosDir, counted)]),
    thingsBeside(of.read),
  ];
  const verification = beginVerification(sha256, of.log, []);
  for (let start = 0; ; ) {
    const rows = await of.read('SELECT seq, leaf, leaf_hash, type, at FROM entry WHERE seq >= ? ORDER BY seq LIMIT ?', [start, CHUNK]);
    const { chunk, found } = checkedIn(verification, rows);
    // What stands beside the entries before a bad one is looked at first: the first bad place is named.
    for (const beside of besides) {
      const besideThem = await beside.look(chunk);
      if (besideThem) return besideThem;
    }
    if (found) return found;
    start += rows.length;
    progress(start);
    if (rows.length < CHUNK) break;
    await turnOfTheLoop();
  }
  const end = verification.finish();
  if ('code' in end) return bad(end.seq, end.code, end.words);
  for (const beside of besides) {
    const found = await beside.end(end.size);
    if (found) return found;
  }
  return { ...end, ...counted, told: [...told, ...missed(counted)] };
}

/** The entries of these rows up to the first bad one, and what is bad of that. */
function checkedIn(verification: ReturnType<typeof beginVerification>, rows: Awaited<ReturnType<Audited['read']>>) {
  const chunk: Checked[] = [];
  for (const row of rows) {
    const fault = verification.take(bytesOf(row.leaf));
    if (fault) return { chunk, found: bad(fault.seq, fault.code, fault.words) };
    // A verifier knows no person; the types of the stamp are the ledger's own.
    const taken = verification.taken() as Checked;
    const { leaf, hashBytes } = taken;
    const fits = row.seq === leaf.seq && row.type === leaf.type && row.at === leaf.at && equal(bytesOf(row.leaf_hash), hashBytes);
    if (!fits) return { chunk, found: bad(leaf.seq, 'columns', `Entry ${leaf.seq}: the columns beside it do not say what it says.`) };
    chunk.push(taken);
  }
  return { chunk, found: null };
}

/** What could not be looked at, in sentences. */
const missed = ({ closed, photographsMissing }: Counted): readonly string[] => [
  ...(closed > 0 ? [`${closed} sealed values have no key any more: what they said was erased, or keys.db is not the newest.`] : []),
  ...goneWords(photographsMissing),
];
