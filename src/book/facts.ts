// The closed union of facts that projections fold. A fact is a function of one leaf (open data and stamp), never of what the ledger knew.
import type { CivilDate } from '../units/dates.ts';
import type { Holding, Ref } from '../units/ids.ts';
import type { MassNg, MassUnit } from '../units/mass.ts';
import type { Reading } from '../weighing/reading.ts';

export type Owner = 'customer' | 'estate' | 'trade' | 'shop' | 'supplier' | 'insurer' | 'disputed' | 'unknown';
export type Holder = Ref<'person'> | 'customer' | 'outside';
export type Matter =
  | { readonly kind: 'stones'; readonly count: number }
  | { readonly kind: 'metal'; readonly metal: string }
  | { readonly kind: 'mixed' };
/** One end of a flow. 'between jobs' is zero again after each command. */
export type End = Holding | 'outside' | 'between jobs';
export type JobState = 'open' | 'agreed' | 'finished' | 'closed' | 'withdrawn';
export type LotState = 'open' | 'sealed' | 'closed';
export type StaffRole = 'owner' | 'bench' | 'counter' | 'auditor';
export type TitlePart = 'whole' | 'cut metal' | 'dust';
/** One weighing range of a balance: its largest load and its step. */
export interface Range {
  readonly maxNg: MassNg;
  readonly stepNg: MassNg;
}
export type Fact =
  | {
      readonly fact: 'flow';
      readonly from: End;
      readonly to: End;
      readonly matter: Matter;
      readonly reading?: Reading;
      readonly whole?: true;
    }
  | { readonly fact: 'reading'; readonly of: Holding; readonly state: string; readonly reading: Reading }
  | { readonly fact: 'count'; readonly of: Holding; readonly stones: number }
  | { readonly fact: 'identity'; readonly of: Ref; readonly mark: string; readonly says: string }
  | { readonly fact: 'custody'; readonly of: Holding | Ref<'job'>; readonly is: 'with' | 'offered to'; readonly holder: Holder }
  | { readonly fact: 'place'; readonly of: Holding | Ref<'job'>; readonly at: Ref<'place'> }
  | { readonly fact: 'title'; readonly of: Holding | Ref<'job'>; readonly part: TitlePart; readonly owner: Owner }
  | { readonly fact: 'state'; readonly of: Ref<'job' | 'lot'>; readonly is: JobState | LotState }
  | { readonly fact: 'hold'; readonly of: Holding | Ref<'job'>; readonly why: string; readonly on: boolean }
  | { readonly fact: 'promise'; readonly of: Ref<'job'>; readonly by: CivilDate }
  | {
      readonly fact: 'money';
      readonly of: Ref<'job' | 'lot' | 'piece' | 'stone' | 'packet' | 'place'>;
      readonly minor: number;
      readonly currency: string;
      readonly for: string;
    }
  | { readonly fact: 'role'; readonly of: Ref<'person'>; readonly role: StaffRole | 'left' }
  | {
      readonly fact: 'balance';
      readonly of: Ref<'balance'>;
      readonly unit: MassUnit;
      readonly ranges: readonly Range[];
      readonly repeatabilityNg?: MassNg;
    }
  | { readonly fact: 'policy'; readonly of: Ref<'shop'>; readonly name: string; readonly says: string }
  | { readonly fact: 'correction'; readonly of: Ref<'entry'>; readonly field: string; readonly is?: unknown };

/** A flow of matter from one end to the other; without a reading it is not measured. */
export const flow = (from: End, to: End, matter: Matter, reading?: Reading): Fact =>
  reading === undefined ? { fact: 'flow', from, to, matter } : { fact: 'flow', from, to, matter, reading };

/** A flow of all that is in `from`; its mass is found when folding, so that late corrections carry through. */
export const flowOfWhole = (from: Holding, to: End, matter: Matter): Fact => ({ fact: 'flow', from, to, matter, whole: true });

/** Any other fact. Facts are built by these alone: the members of a literal that a callback returns are not checked for excess. */
export const fact = <const K extends Exclude<Fact['fact'], 'flow'>>(kind: K, said: Omit<Extract<Fact, { fact: K }>, 'fact'>): Fact =>
  ({ fact: kind, ...said }) as unknown as Fact;
