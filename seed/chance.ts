// Chance that can be told again: every throw has a name, and the same seed and name give the same throw in any order.
import { createHash } from 'node:crypto';

export interface Chance {
  /** Sixteen bytes for that name. */
  bytes(name: string): Uint8Array;
  /** A number from 0 to 1, 1 left out. */
  share(name: string): number;
  /** A whole number from `low` to `high`, both in. */
  between(name: string, low: number, high: number): number;
  oneOf<const A extends readonly [unknown, ...unknown[]]>(name: string, of: A): A[number];
}

/** The throws of one seed. */
export function chanceOf(seed: string): Chance {
  const bytes = (name: string) => new Uint8Array(createHash('sha256').update(`${seed}\n${name}`).digest().subarray(0, 16));
  const share = (name: string) => new DataView(bytes(name).buffer).getUint32(0) / 2 ** 32;
  return {
    bytes,
    share,
    between: (name, low, high) => low + Math.floor(share(name) * (high - low + 1)),
    oneOf: (name, of) => of[Math.floor(share(name) * of.length)] ?? of[0],
  };
}
