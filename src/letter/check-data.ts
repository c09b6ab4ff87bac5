// What a letter carries so that it can be checked: every leaf of the job, its place in one signed checkpoint, and what the customer may have opened.
import type { Leaf } from '../ledger/leaf.ts';
import { entryType } from '../ledger/registry.ts';
import { base64 } from '../log/bytes.ts';
import {
  type Coordinate,
  frontierOf,
  type NodeReader,
  nodesForRecord,
  nodesForRoot,
  nodesForTree,
  proveRecord,
  proveTree,
  rootOf,
  type Sha256,
} from '../log/merkle.ts';

export interface CheckData {
  readonly format: 'lemel letter 1';
  readonly origin: string;
  readonly key: string;
  /** The signed checkpoint, as a note. */
  readonly checkpoint: string;
  readonly size: number;
  readonly stream: string;
  readonly entries: readonly {
    readonly seq: number;
    /** The leaf's bytes, base64. */
    readonly leaf: string;
    /** Its inclusion path, as positions in `hashes`. */
    readonly path: readonly number[];
  }[];
  /** Earlier checkpoints named on slips, each the beginning of this one. */
  readonly slips: readonly { readonly size: number; readonly root: string; readonly path: readonly number[] }[];
  readonly opened: readonly { readonly seq: number; readonly field: string; readonly salt: string; readonly value: unknown }[];
  readonly sealedAndNotOpened: number;
  /** Every hash once, base64. */
  readonly hashes: readonly string[];
}

/** An entry as it stands in the log. */
export interface Logged {
  readonly seq: number;
  readonly bytes: Uint8Array;
  readonly leaf: Leaf;
}
export const loggedFrom = ({ seq, bytes }: Pick<Logged, 'seq' | 'bytes'>): Logged => ({
  seq,
  bytes,
  leaf: JSON.parse(new TextDecoder().decode(bytes)) as Leaf,
});

/** What a letter is made of: the job's entries within a signed checkpoint, and the values that were opened for the customer. */
export interface CheckSource extends Pick<CheckData, 'origin' | 'key' | 'checkpoint' | 'size' | 'stream' | 'opened'> {
  readonly entries: readonly Logged[];
}

/** Every node of the tree that the proofs in a letter are made from, each once. */
export function nodesForCheck({ entries, size }: Pick<CheckSource, 'entries' | 'size'>): readonly Coordinate[] {
  const wanted = [
    ...entries.flatMap(({ seq }) => nodesForRecord(seq, size)),
    ...slipsIn(entries, size).flatMap((of) => [...nodesForRoot(of), ...nodesForTree(of, size)]),
  ];
  return [...new Map(wanted.map((at) => [`${at.level}.${at.index}`, at])).values()];
}

/** Whether the customer may read a sealed field of an entry. */
export const isForCustomer = ({ type, ver }: Leaf, field: string): boolean => entryType(type, ver).fields[field]?.sealed === 'customer';

/** Proves each entry within the checkpoint, and each slip's checkpoint as its beginning; `node` reads what `nodesForCheck` names. */
export function checkDataFrom(source: CheckSource, node: NodeReader, sha256: Sha256): CheckData {
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
const slipsIn = (entries: readonly Logged[], size: number): readonly number[] =>
  entries
    .flatMap(({ leaf: { type, data } }) =>
      type === 'ticket_issued' && /^\d{1,15}$/.test(String(data.checkpoint)) ? [Number(data.checkpoint)] : [],
    )
    .filter((of) => of > 0 && of <= size);

/** Paths of neighbours share most of their hashes: each is kept once and named by its place. */
function hashTable(): { readonly hashes: string[]; readonly placesOf: (path: readonly Uint8Array[]) => readonly number[] } {
  const hashes: string[] = [];
  const places = new Map<string, number>();
  const placeOf = (hash: string): number => {
    const known = places.get(hash) ?? hashes.push(hash) - 1;
    places.set(hash, known);
    return known;
  };
  return { hashes, placesOf: (path) => path.map((hash) => placeOf(base64(hash))) };
}
