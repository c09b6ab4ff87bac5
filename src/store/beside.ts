// What the check of the log is made of: something beside the leaves that must follow from them, and what is said when it does not.
import type { Leaf } from '../ledger/leaf.ts';
import type { Taken } from '../log/verify.ts';
import type { KeysRead } from './keys.ts';
import type { Query } from './sqlite.ts';

/** The first bad place: the entry's number, or none where no entry is to blame. */
export interface BadPlace {
  readonly seq: number | null;
  readonly code: string;
  readonly say: string;
}
export interface Bad {
  readonly bad: BadPlace;
}
/** How much was looked at. */
export interface Counted {
  signatures: number;
  /** Sealed values that were opened and fit their digests, and those whose key is not there: erased, or lost. */
  opened: number;
  closed: number;
  photographs: number;
  photographsMissing: number;
}
export interface Whole extends Readonly<Counted> {
  readonly size: number;
  readonly root: Uint8Array;
  /** What is worth knowing though nothing is wrong, in sentences. */
  readonly told: readonly string[];
}
export type Audit = Whole | Bad;
export interface Audited {
  readonly read: Query;
  readonly log: string;
  readonly keys: KeysRead;
  /** checkpoints.log, as it was before the ledger was read; none where there is no memory outside, as in an import. */
  readonly memory?: { readonly path: string; readonly bytes: number };
  /** Folder of photographs; none where they are not asked for. */
  readonly photosDir?: string;
  /** The shop's own key in C2SP form, where it is known: the ledger's newest must be it. */
  readonly vkey?: string;
}

/** A leaf that follows the one before it, with what it came to. */
export type Checked = Omit<Taken, 'leaf'> & { readonly leaf: Leaf };
/** Something that stands beside the leaves and must follow from them. */
export interface Beside {
  /** Looks at the next leaves; they are in order and none is left out. */
  look(chunk: readonly Checked[]): Promise<Bad | null>;
  /** After the last: what belongs to no leaf. */
  end(size: number): Promise<Bad | null>;
}

export const bad = (seq: number | null, code: string, say: string): Bad => ({ bad: { seq, code, say } });
