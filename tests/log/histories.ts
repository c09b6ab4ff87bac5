// Small ledgers for the tests: drafts of entries, and the leaves an honest writer (or a thief with the whole program) makes of them.
import { base64url, utf8 } from '../../src/log/bytes.ts';
import { writable } from '../../src/log/canonical.ts';
import type { Checkpoint } from '../../src/log/checkpoint.ts';
import { GENESIS } from '../../src/log/leaf.ts';
import { append, EMPTY_FRONTIER, leafHash, rootOf } from '../../src/log/merkle.ts';
import { sha256 } from './crypto.ts';

export const ORIGIN = 'lemel/0123456789abcdefghjkmnpqrs/0';
export interface Draft {
  readonly streams: readonly string[];
  readonly command: string;
  readonly part: readonly [index: number, size: number];
  readonly note: string;
}

/** Drafts over three jobs and one lot: every fourth entry touches the lot too, and of every five the last two are one command. */
export function drafts(count: number): readonly Draft[] {
  return Array.from({ length: count }, (_, i) => ({
    streams: i % 4 === 3 ? [`job-${i % 3}`, 'lot-0'] : [`job-${i % 3}`],
    command: `command-${i % 5 === 4 ? i - 1 : i}`,
    part: i % 5 < 3 ? [0, 1] : [(i % 5) - 3, 2],
    note: `note ${i}`,
  }));
}

/** Leaf objects with numbers, links and salts as the writer sets them. */
export function objects(from: readonly Draft[], log = ORIGIN): readonly Record<string, unknown>[] {
  const heads = new Map<string, { n: number; p: string }>();
  return from.map(({ streams, command, part, note }, seq) => {
    const links = streams.map((s) => ({ s, ...(heads.get(s) ?? { n: 0, p: GENESIS }) }));
    const leaf = {
      v: 1,
      log,
      seq,
      type: 'noted',
      ver: 1,
      at: 1_780_000_000_000 + seq,
      occurredAt: 1_780_000_000_000 + seq,
      by: 'person-0',
      auth: 'session',
      device: 'bench-1',
      command,
      part,
      links,
      salt: base64url(sha256(utf8(`salt ${seq}`)).subarray(0, 16)),
      data: { note },
    };
    const p = base64url(leafHash(sha256, bytesOf(leaf)));
    for (const { s, n } of links) heads.set(s, { n: n + 1, p });
    return leaf;
  });
}

export function bytesOf(leaf: unknown): Uint8Array {
  const bytes = writable(leaf);
  if ('refused' in bytes) throw new Error(`${bytes.refused} at ${bytes.path.join('.')}`);
  return bytes;
}
export const written = (from: readonly Draft[], log = ORIGIN): readonly Uint8Array[] => objects(from, log).map(bytesOf);

/** The checkpoint an honest log would have after `size` of these leaves. */
export function checkpointAt(leaves: readonly Uint8Array[], size: number, origin = ORIGIN): Checkpoint {
  let frontier = EMPTY_FRONTIER;
  for (const leaf of leaves.slice(0, size)) frontier = append(sha256, frontier, leafHash(sha256, leaf)).frontier;
  return { origin, size, root: rootOf(sha256, frontier) };
}
