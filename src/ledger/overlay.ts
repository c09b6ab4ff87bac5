// What the ledger must look up while deciding, and an overlay on it: a command's own changes seen before they are written.
import type { OpenPiece } from './expected.ts';
import type { Kept } from './leaf.ts';
import type { Thing } from './thing.ts';

/** The end of a stream: how many leaves it has and the hash of the last. */
export interface Head {
  readonly size: number;
  readonly hash: string;
}
export interface Shelf {
  thing(id: string): Promise<Thing | undefined>;
  head(stream: string): Promise<Head | undefined>;
  entry(hash: string): Promise<Kept | undefined>;
  /** All leaves of a stream in order. */
  leaves(stream: string): Promise<readonly Kept[]>;
  /** Pieces of jobs that are not closed, where the ledger can say what they weigh. */
  openPieces(): Promise<readonly OpenPiece[]>;
}
export interface Overlay extends Shelf {
  readonly things: Map<string, Thing>;
  readonly heads: Map<string, Head>;
  readonly written: Kept[];
}

/** An empty overlay on `below`; dropping it leaves no trace. */
export function overlayOn(below: Shelf): Overlay {
  const things = new Map<string, Thing>();
  const heads = new Map<string, Head>();
  const written: Kept[] = [];
  return {
    things,
    heads,
    written,
    thing: async (id) => things.get(id) ?? below.thing(id),
    head: async (stream) => heads.get(stream) ?? below.head(stream),
    entry: async (hash) => written.find((kept) => kept.hash === hash) ?? below.entry(hash),
    openPieces: () => below.openPieces(),
    leaves: async (stream) => [...(await below.leaves(stream)), ...written.filter(({ leaf }) => leaf.links.some(({ s }) => s === stream))],
  };
}

/** Lays an accepted fork's changes onto its parent. */
export function accept(parent: Overlay, fork: Overlay): void {
  for (const [id, thing] of fork.things) parent.things.set(id, thing);
  for (const [stream, head] of fork.heads) parent.heads.set(stream, head);
  parent.written.push(...fork.written);
}
