// The verifier: leaves as bytes, in order, against checkpoints kept elsewhere. It knows no entry type and stops at the first bad place.
import { base64url, equal } from './bytes.ts';
import type { Checkpoint } from './checkpoint.ts';
import { GENESIS, type Leaf, type LeafCode, type Link, readLeaf } from './leaf.ts';
import { append, EMPTY_FRONTIER, type Frontier, leafHash, type MerkleNode, rootOf, type Sha256 } from './merkle.ts';

const SAYS = {
  other_log: 'it belongs to another ledger',
  wrong_seq: 'its number is not the next: an entry was left out, doubled or moved',
  link_position: 'its place in a stream is not the next: an entry of that stream was left out or doubled',
  link_previous: 'it does not follow the entry before it in that stream: one of the two was changed',
  part_broken: 'its command is not whole: one of the entries written together was left out, added or moved',
  root_differs: 'the entries up to here do not lead to the root that was signed: one of them was changed',
  other_origin: 'the checkpoint is of another ledger',
  truncated: 'the checkpoint counts more entries than there are: the last ones were cut off',
} as const;
type FaultCode = LeafCode | keyof typeof SAYS;

/** The first bad place: the seq of the entry that is wrong, missing, or the last that a wrong root covers. */
export interface Fault {
  readonly seq: number;
  readonly code: FaultCode;
  readonly words: string;
}
/** What the leaves come to when nothing is wrong. */
export interface Verified {
  readonly size: number;
  readonly root: Uint8Array;
}
export interface Taken {
  readonly leaf: Leaf;
  /** Base64url, as links hold it. */
  readonly hash: string;
  readonly hashBytes: Uint8Array;
  /** The nodes it completed. */
  readonly nodes: readonly MerkleNode[];
  /** The tree after it. */
  readonly frontier: Frontier;
}
export interface Verification {
  /** Takes the next leaf; answers the first fault, and the same one ever after. */
  take(bytes: Uint8Array): Fault | null;
  /** What the last leaf that was good came to, so that nobody reads, hashes or appends it a second time. */
  taken(): Taken;
  /** When there are no more leaves. */
  finish(): Verified | Fault;
}

/** Begins a verification; it keeps the frontier and the head of each stream, never the leaves. */
export function beginVerification(sha: Sha256, origin: string, checkpoints: readonly Checkpoint[]): Verification {
  const heads = new Map<string, Head>();
  const due = checkpoints.toSorted((a, b) => b.size - a.size);
  let frontier = EMPTY_FRONTIER;
  let taken: Taken | null = null;
  let run: Run = { command: '', next: 0, size: 0 };
  const atSize = (size: number): Fault | null => {
    for (let last = due.at(-1); last?.size === size; last = due.at(-1)) {
      if (!equal(last.root, rootOf(sha, frontier))) return fault(Math.max(0, size - 1), 'root_differs');
      due.pop();
    }
    return null;
  };
  let found = checkpoints.some((checkpoint) => checkpoint.origin !== origin) ? fault(0, 'other_origin') : atSize(0);

  const next = (bytes: Uint8Array): Fault | null => {
    const seq = frontier.size;
    const read = readLeaf(bytes);
    if ('refused' in read) return { seq, code: read.refused, words: wordsAt(seq, read.say) };
    const { leaf } = read;
    const code = placeFault(leaf, origin, seq) ?? linkFault(leaf.links, heads) ?? partFault(leaf, run);
    if (code) return fault(seq, code);
    taken = placed(sha, leaf, bytes, frontier);
    frontier = taken.frontier;
    run = follow(heads, taken);
    return atSize(frontier.size);
  };
  return {
    take: (bytes) => {
      found ??= next(bytes);
      return found;
    },
    taken: () => taken ?? nothingTaken(),
    finish: () => {
      const { size } = frontier;
      found ??= run.next < run.size ? fault(size, 'part_broken') : due.length > 0 ? fault(size, 'truncated') : null;
      return found ?? { size, root: rootOf(sha, frontier) };
    },
  };
}

/** Moves the heads of the leaf's streams; answers where its command goes on. */
function follow(heads: Map<string, Head>, { leaf, hash }: Taken): Run {
  for (const { s, n } of leaf.links) heads.set(s, { n, hash });
  return { command: leaf.command, next: leaf.part[0] + 1, size: leaf.part[1] };
}

function placed(sha: Sha256, leaf: Leaf, bytes: Uint8Array, before: Frontier): Taken {
  const hashBytes = leafHash(sha, bytes);
  const { frontier, completed } = append(sha, before, hashBytes);
  return { leaf, hash: base64url(hashBytes), hashBytes, nodes: completed, frontier };
}

function nothingTaken(): never {
  throw new Error('no leaf was taken');
}

/** Verifies all leaves of a log in order; nothing after the first bad place is read. */
export function verifyLog(sha: Sha256, origin: string, checkpoints: readonly Checkpoint[], leaves: Iterable<Uint8Array>): Verified | Fault {
  const verification = beginVerification(sha, origin, checkpoints);
  for (const bytes of leaves) {
    const found = verification.take(bytes);
    if (found !== null) return found;
  }
  return verification.finish();
}

/** The last entry of a stream. */
interface Head {
  readonly n: number;
  readonly hash: string;
}
/** The command whose entries are being read, and the index of the one due. */
interface Run {
  readonly command: string;
  readonly next: number;
  readonly size: number;
}

function placeFault(leaf: Leaf, origin: string, seq: number): keyof typeof SAYS | null {
  if (leaf.log !== origin) return 'other_log';
  return leaf.seq === seq ? null : 'wrong_seq';
}

function linkFault(links: readonly Link[], heads: ReadonlyMap<string, Head>): keyof typeof SAYS | null {
  for (const { s, n, p } of links) {
    const head = heads.get(s);
    if (n !== (head === undefined ? 0 : head.n + 1)) return 'link_position';
    if (p !== (head?.hash ?? GENESIS)) return 'link_previous';
  }
  return null;
}

function partFault({ command, part: [index, size] }: Leaf, run: Run): keyof typeof SAYS | null {
  const due = run.next < run.size ? run : { command, next: 0, size };
  return command === due.command && index === due.next && size === due.size ? null : 'part_broken';
}

const wordsAt = (seq: number, say: string) => `Entry ${seq}: ${say}`;
const fault = (seq: number, code: keyof typeof SAYS): Fault => ({ seq, code, words: wordsAt(seq, `${SAYS[code]}.`) });
