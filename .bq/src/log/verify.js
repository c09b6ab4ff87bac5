// The verifier: leaves as bytes, in order, against checkpoints kept elsewhere. It knows no entry type and stops at the first bad place.
import { base64url, equal } from './bytes.js';
import { GENESIS, readLeaf } from './leaf.js';
import { append, EMPTY_FRONTIER, leafHash, rootOf } from './merkle.js';

const SAYS = {
  other_log: 'it belongs to another ledger',
  wrong_seq: 'its number is not the next: an entry was left out, doubled or moved',
  link_position: 'its place in a stream is not the next: an entry of that stream was left out or doubled',
  link_previous: 'it does not follow the entry before it in that stream: one of the two was changed',
  part_broken: 'its command is not whole: one of the entries written together was left out, added or moved',
  root_differs: 'the entries up to here do not lead to the root that was signed: one of them was changed',
  other_origin: 'the checkpoint is of another ledger',
  truncated: 'the checkpoint counts more entries than there are: the last ones were cut off',
};
/** Begins a verification; it keeps the frontier and the head of each stream, never the leaves. */
export function beginVerification(sha, origin, checkpoints) {
  const heads = new Map();
  const due = checkpoints.toSorted((a, b) => b.size - a.size);
  let frontier = EMPTY_FRONTIER;
  let run = { command: '', next: 0, size: 0 };
  const atSize = (size) => {
    for (let last = due.at(-1); last?.size === size; last = due.at(-1)) {
      if (!equal(last.root, rootOf(sha, frontier))) return fault(Math.max(0, size - 1), 'root_differs');
      due.pop();
    }
    return null;
  };
  let found = checkpoints.some((checkpoint) => checkpoint.origin !== origin) ? fault(0, 'other_origin') : atSize(0);
  const next = (bytes) => {
    const seq = frontier.size;
    const read = readLeaf(bytes);
    if ('refused' in read) return { seq, code: read.refused, words: wordsAt(seq, read.say) };
    const { leaf } = read;
    const code = placeFault(leaf, origin, seq) ?? linkFault(leaf.links, heads) ?? partFault(leaf, run);
    if (code !== null) return fault(seq, code);
    const hash = leafHash(sha, bytes);
    for (const { s, n } of leaf.links) heads.set(s, { n, hash: base64url(hash) });
    run = { command: leaf.command, next: leaf.part[0] + 1, size: leaf.part[1] };
    frontier = append(sha, frontier, hash).frontier;
    return atSize(frontier.size);
  };
  return {
    take: (bytes) => {
      found ??= next(bytes);
      return found;
    },
    finish: () => {
      const { size } = frontier;
      found ??= run.next < run.size ? fault(size, 'part_broken') : due.length > 0 ? fault(size, 'truncated') : null;
      return found ?? { size, root: rootOf(sha, frontier) };
    },
  };
}
/** Verifies all leaves of a log in order; nothing after the first bad place is read. */
export function verifyLog(sha, origin, checkpoints, leaves) {
  const verification = beginVerification(sha, origin, checkpoints);
  for (const bytes of leaves) {
    const found = verification.take(bytes);
    if (found !== null) return found;
  }
  return verification.finish();
}
function placeFault(leaf, origin, seq) {
  if (leaf.log !== origin) return 'other_log';
  return leaf.seq === seq ? null : 'wrong_seq';
}
function linkFault(links, heads) {
  for (const { s, n, p } of links) {
    const head = heads.get(s);
    if (n !== (head === undefined ? 0 : head.n + 1)) return 'link_position';
    if (p !== (head?.hash ?? GENESIS)) return 'link_previous';
  }
  return null;
}
function partFault({ command, part: [index, size] }, run) {
  const due = run.next < run.size ? run : { command, next: 0, size };
  return command === due.command && index === due.next && size === due.size ? null : 'part_broken';
}
const wordsAt = (seq, say) => `Entry ${seq}: ${say}`;
const fault = (seq, code) => ({ seq, code, words: wordsAt(seq, `${SAYS[code]}.`) });
