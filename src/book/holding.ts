// Views of state: what an entry's `decide` may know of the things it names.
import type { Instant } from '../units/dates.ts';
import type { Ref } from '../units/ids.ts';
import type { MassNg, MassUnit } from '../units/mass.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import type { Holder, JobState, LotState, Owner, Range, StaffRole } from './facts.ts';
import type { May } from './may.ts';

/** A sum in ng, or the entry since which it cannot be known. */
export type Sum = { readonly ng: MassNg } | { readonly unknownSince: number };
/** Postings are conserved and never reset; expected is the last net weighing and the flows since. */
export interface Weighable {
  readonly id: Ref;
  readonly balance: Sum;
  readonly expected: Sum;
  readonly holder: Holder | null;
  readonly offeredTo: Holder | null;
  readonly holds: readonly string[];
  readonly says: Readonly<Record<string, string>>;
  /** Gone out of the shop whole. */
  readonly gone: boolean;
}
/** For whom a sealed field is kept. */
export type Audience = 'customer' | 'shop';
/** One field of an entry already written, as a correction sees it. */
export interface Remembered {
  readonly name: string;
  readonly correctable: boolean;
  readonly sealed: Audience | null;
  readonly says: (value: unknown) => boolean;
  readonly takes: (value: unknown) => boolean;
}
interface Named {
  readonly id: Ref;
  readonly says: Readonly<Record<string, string>>;
}
export interface States {
  shop: Named & { readonly kind: 'shop' };
  person: Named & { readonly kind: 'person'; readonly role: StaffRole | 'left' };
  customer: Named & { readonly kind: 'customer' };
  place: Named & { readonly kind: 'place' };
  balance: Named & { readonly kind: 'balance'; readonly unit: MassUnit; readonly ranges: readonly Range[] };
  bag: Named & { readonly kind: 'bag' };
  job: Named & {
    readonly kind: 'job';
    readonly status: JobState;
    readonly cutMetal: Owner | null;
    readonly dust: Owner | null;
    readonly holder: Holder | null;
    readonly offeredTo: Holder | null;
    readonly holds: readonly string[];
    /** Pieces in the shop, and stones taken out of them that have not gone back in or home. */
    readonly piecesIn: number;
    readonly stonesOut: number;
  };
  piece: Weighable & {
    readonly kind: 'piece';
    readonly stonesIn: number | null;
    readonly jobStatus: JobState;
    readonly stonesOut: number;
    /** Whose it is, as its job says. */
    readonly owner: Owner | null;
  };
  stone: Weighable & {
    readonly kind: 'stone';
    readonly loose: boolean;
    readonly jobStatus: JobState;
  };
  packet: Weighable & { readonly kind: 'packet'; readonly stonesIn: number | null; readonly jobStatus: JobState };
  lot: Weighable & { readonly kind: 'lot'; readonly status: LotState; readonly metal: string };
  stock: Weighable & { readonly kind: 'stock'; readonly metal: string };
  skin: Weighable & { readonly kind: 'skin'; readonly metal: string };
  entry: {
    readonly kind: 'entry';
    readonly seq: number;
    readonly at: Instant;
    readonly type: string;
    readonly by: Ref<'person'>;
    /** Who may write such an entry. */
    readonly may: May;
    readonly afterHandBack: boolean;
    readonly fields: readonly Remembered[];
  };
}

/** Whether a reading, less its tares, is more than a thing is expected to weigh; never where either is not known. */
export function outweighs(reading: Reading | undefined, { expected }: Pick<Weighable, 'expected'>): boolean {
  const ng = reading ? netNg(reading) : null;
  return ng !== null && 'ng' in expected && ng > expected.ng;
}
