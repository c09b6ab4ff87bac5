// The photographs of a job, in the order they were taken.
import type { Kept } from '../ledger/leaf.ts';

export interface PhotoTaken {
  readonly seq: number;
  readonly hash: string;
  readonly atMs: number;
  readonly shows: string;
  /** Shows the customer's own things and nothing of the shop's. */
  readonly forCustomer: boolean;
}
const SHOWS: Readonly<Record<string, string>> = {
  pan: 'on the pan',
  whole: 'the whole',
  marks: 'marks',
  damage: 'damage or wear',
  stones: 'stones',
  work: 'the work',
};
const SHOPS: Readonly<Record<string, string>> = { packing: 'packing', paper: 'a signed paper' };

/** Every photograph that an entry of these names, by its hash. */
export function photosIn(kept: readonly Kept[]): readonly PhotoTaken[] {
  return kept.flatMap(({ seq, leaf: { data, occurredAt } }) => {
    if (typeof data.photo !== 'string') return [];
    const own = data.shows === undefined ? 'as looked over' : SHOWS[String(data.shows)];
    const shows = own ?? SHOPS[String(data.shows)] ?? 'photograph';
    return [{ seq, hash: data.photo, atMs: occurredAt, shows, forCustomer: own !== undefined }];
  });
}
