// What a letter carries so that it can be checked: every leaf of the job, its place in one signed checkpoint, and what the customer may have opened.

import type { Leaf } from '../../ledger/leaf.ts';
import { entryType } from '../../ledger/registry.ts';
import { base64 } from '../../log/bytes.ts';
import {
  type Coordinate,
  frontierOf,
  nodesForRecord,
  nodesForRoot,
  nodesForTree,
  proveRecord,
  proveTree,
  rootOf,
} from '../../log/merkle.ts';
import { formatVerifierKey } from '../../log/note.ts';
import { sha256 } from '../../store/crypto.ts';
import { bytesOf } from '../../store/keys.ts';
import { openOne } from '../../store/shelf.ts';
import { readNodes } from '../../store/tree.ts';
import type { Web } from '../session/context.ts';

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

/** Reads the leaves of a job and proves each within the newest checkpoint, which is issued now. Throws ReadOnly where nothing may be signed. */
export async function checkDataOf(web: Web, job: string): Promise<CheckData> {
  const { store } = web;
  const { size, note } = await store.issueCheckpoint();
  const rows = await store.read('SELECT seq, leaf FROM entry_link JOIN entry USING (seq) WHERE stream = ? AND seq < ? ORDER BY n', [
    job,
    size,
  ]);
  const leaves = rows.map(({ seq, leaf }) => ({ seq: Number(seq), bytes: bytesOf(leaf) }));
  const slipSizes = slipsIn(leaves.map(({ bytes }) => leafOf(bytes))).filter((of) => of > 0 && of <= size);
  const wanted = [
    ...leaves.flatMap(({ seq }) => nodesForRecord(seq, size)),
    ...slipSizes.flatMap((of) => [...nodesForRoot(of), ...nodesForTree(of, size)]),
  ];
  const node = await readNodes(store.read, onlyOnce(wanted));
  const { hashes, placesOf } = hashTable();
  const entries = leaves.map(({ seq, bytes }) => ({ seq, leaf: base64(bytes), path: placesOf(proveRecord(sha256, seq, size, node)) }));
  const slips = slipSizes.map((of) => ({
    size: of,
    root: base64(rootOf(sha256, frontierOf(of, node))),
    path: placesOf(proveTree(sha256, of, size, node)),
  }));
  const sealed = await sealedOf(
    web,
    leaves.map(({ bytes }) => leafOf(bytes)),
  );
  const key = formatVerifierKey(store.logKey);
  return { format: 'lemel letter 1', origin: store.log, key, checkpoint: note, size, stream: job, entries, slips, ...sealed, hashes };
}

const leafOf = (bytes: Uint8Array): Leaf => JSON.parse(new TextDecoder().decode(bytes)) as Leaf;

const slipsIn = (leaves: readonly Leaf[]): readonly number[] =>
  leaves.flatMap(({ type, data }) =>
    type === 'ticket_issued' && /^\d{1,15}$/.test(String(data.checkpoint)) ? [Number(data.checkpoint)] : [],
  );

const onlyOnce = (nodes: readonly Coordinate[]): readonly Coordinate[] => [
  ...new Map(nodes.map((at) => [`${at.level}.${at.index}`, at])).values(),
];

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

/** Opens what is sealed for the customer to read; the rest is counted and stays sealed. */
async function sealedOf({ store }: Web, leaves: readonly Leaf[]): Promise<Pick<CheckData, 'opened' | 'sealedAndNotOpened'>> {
  const opened: CheckData['opened'][number][] = [];
  let sealedAndNotOpened = 0;
  for (const { seq, type, ver, log, sealed } of leaves) {
    if (!sealed) continue;
    const { fields } = entryType(type, ver);
    const rows = await store.read('SELECT field, subject, iv, ciphertext FROM sealed WHERE seq = ?', [seq]);
    const found = await Promise.all(
      rows
        .filter(({ field }) => fields[String(field)]?.sealed === 'customer')
        .map(async (row) => ({ field: String(row.field), one: await openOne(store.keys, log, seq, row) })),
    );
    const told = found.flatMap(({ field, one }) => (one ? [{ seq, field, ...one }] : []));
    opened.push(...told);
    sealedAndNotOpened += Object.keys(sealed).length - told.length;
  }
  return { opened, sealedAndNotOpened };
}
