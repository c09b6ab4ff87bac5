import { entryType } from '../ledger/registry.js';
import { base64 } from '../log/bytes.js';
import { frontierOf, nodesForRecord, nodesForRoot, nodesForTree, proveRecord, proveTree, rootOf } from '../log/merkle.js';
export const loggedFrom = ({ seq, bytes }) => ({
  seq,
  bytes,
  leaf: JSON.parse(new TextDecoder().decode(bytes)),
});
/** Every node of the tree that the proofs in a letter are made from, each once. */
export function nodesForCheck({ entries, size }) {
  const wanted = [
    ...entries.flatMap(({ seq }) => nodesForRecord(seq, size)),
    ...slipsIn(entries, size).flatMap((of) => [...nodesForRoot(of), ...nodesForTree(of, size)]),
  ];
  return [...new Map(wanted.map((at) => [`${at.level}.${at.index}`, at])).values()];
}
/** Whether the customer may read a sealed field of an entry. */
export const isForCustomer = ({ type, ver }, field) => entryType(type, ver).fields[field]?.sealed === 'customer';
/** Proves each entry within the checkpoint, and each slip's checkpoint as its beginning; `node` reads what `nodesForCheck` names. */
export function checkDataFrom(source, node, sha256) {
  const { origin, key, checkpoint, size, stream, opened } = source;
  const { hashes, placesOf } = hashTable();
  const entries = source.entries.map(({ seq, bytes }) => ({
    seq,
    leaf: base64(bytes),
    path: placesOf(proveRecord(sha256, seq, size, node)),
  }));
  const slips = slipsIn(source.entries, size).map((of) => ({
    size: of,
    root: base64(rootOf(sha256, frontierOf(of, node))),
    path: placesOf(proveTree(sha256, of, size, node)),
  }));
  const sealed = source.entries.flatMap(({ leaf }) => Object.keys(leaf.sealed ?? {})).length;
  const signed = { origin, key, checkpoint, size, stream };
  return { format: 'lemel letter 1', ...signed, entries, slips, opened, sealedAndNotOpened: sealed - opened.length, hashes };
}
/** Sizes of the checkpoints that were printed on slips. */
const slipsIn = (entries, size) =>
  entries
    .flatMap(({ leaf: { type, data } }) =>
      type === 'ticket_issued' && /^\d{1,15}$/.test(String(data.checkpoint)) ? [Number(data.checkpoint)] : [],
    )
    .filter((of) => of > 0 && of <= size);
/** Paths of neighbours share most of their hashes: each is kept once and named by its place. */
function hashTable() {
  const hashes = [];
  const places = new Map();
  const placeOf = (hash) => {
    const known = places.get(hash) ?? hashes.push(hash) - 1;
    places.set(hash, known);
    return known;
  };
  return { hashes, placesOf: (path) => path.map((hash) => placeOf(base64(hash))) };
}
