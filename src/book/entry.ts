// The shape of an entry type: fields with roles, a form, a decision, facts and plain words. One file in entries/ for each.
import { z } from 'zod';
import type { CautionId } from '../trade/caution-table.ts';
import type { CivilDate, Instant } from '../units/dates.ts';
import { isRef, type Ref, type RefKind } from '../units/ids.ts';
import type { Reading } from '../weighing/reading.ts';
import type { Fact } from './facts.ts';
import type { Audience, States } from './holding.ts';
import type { Asker, Auth, May } from './may.ts';
import type { Next } from './next.ts';
import { type Control, type ValueKind, weight as weightKind } from './values.ts';

/** 'as its target' stands in a correction only: open or sealed is known when it is written. */
export type Seal = Audience | 'as its target';
export type Role = 'tells' | 'names' | 'begins' | 'names or begins';

/** One field: the schema takes the value as it stands in the leaf; the form's text is read before it. */
export interface Field<T, R extends Role = Role, Missing extends boolean = boolean, S extends Seal | null = Seal | null> {
  readonly schema: z.ZodType<T>;
  readonly control: Control;
  readonly role: R;
  readonly mayBeMissing: Missing;
  readonly sealed: S;
  readonly kinds: readonly RefKind[];
  readonly correctable: boolean;
}
// biome-ignore lint/suspicious/noExplicitAny: a field's value type is erased here and recovered by Data, Open and View
export type Fields = Readonly<Record<string, Field<any>>>;
type Each<K extends RefKind> = K extends RefKind ? Ref<K> : never;

const tells = <T>(of: ValueKind<T>, correctable: boolean): Field<T, 'tells', false, null> => ({
  ...of,
  role: 'tells',
  mayBeMissing: false,
  sealed: null,
  kinds: [],
  correctable,
});
const names = <K extends RefKind, R extends Role>(kinds: readonly K[], role: R): Field<Each<K>, R, false, null> => ({
  schema: z.custom<Each<K>>((value) => typeof value === 'string' && kinds.some((kind) => isRef(kind, value)), 'Choose one of these.'),
  control: { kind: 'ref' },
  role,
  mayBeMissing: false,
  sealed: null,
  kinds,
  correctable: false,
});

/** Said or agreed: never corrected, only said anew. */
export const stated = <T>(of: ValueKind<T>) => tells(of, false);
/** Observed: correctable. */
export const observed = <T>(of: ValueKind<T>) => tells(of, true);
/** What a balance said: observed. */
export const weight = (): Field<Reading, 'tells', false, null> => tells(weightKind(), true);
/** A thing that must exist; its state is loaded into the view. */
export const ref = <const K extends RefKind>(...kinds: K[]) => names(kinds, 'names');
/** A thing that this entry begins; it must not exist. */
export const begins = <const K extends RefKind>(kind: K) => names([kind], 'begins');
/** A thing that may exist or may begin here. */
export const refOrBegins = <const K extends RefKind>(...kinds: K[]) => names(kinds, 'names or begins');
/** May be left out. */
export const optional = <T, R extends Role, S extends Seal | null>(field: Field<T, R, false, S>): Field<T, R, true, S> => ({
  ...field,
  mayBeMissing: true,
});
/** Kept out of the leaf: a salted digest stands there, the value is encrypted under its subject's key. */
export const sealed = <const A extends Seal, T, R extends Role, M extends boolean>(
  audience: A,
  field: Field<T, R, M, null>,
): Field<T, R, M, A> => ({ ...field, sealed: audience });

type Value<X> = X extends Field<infer T> ? T : never;
// biome-ignore lint/suspicious/noExplicitAny: matches a field of any value type
type FieldOf<R extends Role, M extends boolean = boolean, S extends Seal | null = Seal | null> = Field<any, R, M, S>;
type Needed<F extends Fields> = { [N in keyof F]: F[N] extends FieldOf<Role, true> ? never : N }[keyof F];
type Only<F extends Fields, N extends keyof F> = { readonly [K in N & Needed<F>]: Value<F[K]> } & {
  readonly [K in Exclude<N, Needed<F>>]?: Value<F[K]>;
};
/** All that was said, sealed fields too: for `decide` alone. */
export type Data<F extends Fields> = Only<F, keyof F>;
/** What stands in the leaf and outlives erasure: all that `facts` and `say` ever see. */
export type Open<F extends Fields> = Only<
  F,
  { [N in keyof F]: F[N] extends FieldOf<Role, boolean, null | 'as its target'> ? N : never }[keyof F]
>;
type Seen<T> = T extends Ref<infer K> ? States[K] : never;
/** The states of the things the fields name; undefined where one is left out or begins here. */
export type View<F extends Fields> = {
  readonly [N in keyof F as F[N] extends FieldOf<'names' | 'names or begins'> ? N : never]:
    | Seen<Value<F[N]>>
    | (F[N] extends FieldOf<'names', false> ? never : undefined);
};
type Subject<F extends Fields> = {
  [N in keyof F]: F[N] extends FieldOf<'names' | 'begins' | 'names or begins', false> ? N : never;
}[keyof F];

/** The writer's own members of the leaf that an entry may read. */
export interface Stamp {
  readonly at: Instant;
  readonly occurredAt: Instant;
  readonly by: Ref<'person'>;
  readonly auth: Auth;
  readonly device: string;
  readonly witness?: Ref<'person'>;
}
/** Policy, known when deciding and not in the leaf. */
export interface Now extends Stamp {
  readonly today: CivilDate;
  readonly alone: boolean;
}
/** Why an entry was not written: a code that is never renamed, a sentence that says what to do, and the field it stands beside. */
export interface Refusal<Code extends string = string> {
  readonly refused: Code;
  readonly say: string;
  readonly field?: string;
}
/** What must be weighed or said again before the entry goes in. */
export interface Doubt<Code extends string = string> {
  readonly asks: Code;
  readonly say: string;
  readonly field?: string;
}
export const refuse = <const Code extends string>(refused: Code, say: string, field?: string): Refusal<Code> =>
  field === undefined ? { refused, say } : { refused, say, field };
export const ask = <const Code extends string>(asks: Code, say: string, field?: string): Doubt<Code> =>
  field === undefined ? { asks, say } : { asks, say, field };

/** How the generic form shows an entry: a title, a label for each field in order, hints, and the cautions that belong to it. */
export interface Form<F extends Fields> {
  readonly title: string;
  readonly labels: { readonly [N in keyof F]: string };
  readonly hints?: { readonly [N in keyof F]?: string };
  readonly cautions?: readonly CautionId[];
  /** Which fields stand under which heading, in order, some folded away until they are needed; those named nowhere stand before the first. */
  readonly sections?: readonly (readonly [heading: string, fields: readonly (keyof F & string)[], folded?: 'folded'])[];
  /** Codes of a long choice that are shown at once; the others stand under "More". */
  readonly often?: { readonly [N in keyof F]?: readonly string[] };
  /** Fields that weigh a thing whole, each with the field that names it: what the ledger expects of it stands beside them, and beside no other weight. */
  readonly weighs?: { readonly [N in keyof F]?: keyof F & string };
  /** The field that names the terms in force: not typed, and agreed to only while they are. */
  readonly terms?: keyof F & string;
  /** The button, in the trade's words. */
  readonly button?: string;
}
/** Nothing of the shop's own, no names, no places, no sums of money. */
export type Tell<D> = 'as said' | ((data: D) => string) | null;
export interface EntryType<
  T extends string = string,
  F extends Fields = Fields,
  Code extends string = string,
  Ask extends string = string,
> {
  readonly type: T;
  readonly version: number;
  readonly fields: F;
  readonly subject: Subject<F>;
  /** Entries that commute (a note, a photograph, an addition to a lot) carry no count of their stream as seen. */
  readonly commutes?: true;
  /** Who may write it, and what is typed for it; where it depends on what is said, a function of that. */
  readonly may: May | ((view: View<F>, data: Data<F>, asker: Asker) => May);
  readonly form: Form<F>;
  /** Says what the program knows and nobody types (a digest, a size, what stood before): a page of its own writes it, the generic form never. */
  readonly ownPage?: true;
  decide(view: View<F>, data: Data<F>, now: Now): Refusal<Code> | null;
  /** Asks for a second reading and a reason; mass never refuses. */
  doubt?(view: View<F>, data: Data<F>): Doubt<Ask> | null;
  facts(data: Open<F>, stamp: Stamp): readonly Fact[];
  /** Plain words of what happened, past tense; `name` gives the words for a thing named. */
  say(data: Open<F>, name: (of: Ref) => string): string;
  /** What a customer is told of it: its own words, others, or nothing. A correction of it is told where it is. */
  readonly tell: Tell<Open<F>>;
  /** When it is what one does next on a job; left out where it never is. */
  readonly next?: Next;
  /** Brings the data of an earlier version forward, one version at a time. */
  upcast?(data: Readonly<Record<string, unknown>>, version: number): Readonly<Record<string, unknown>>;
}
export const defineEntry = <
  const T extends string,
  const F extends Fields,
  const Code extends string = never,
  const Ask extends string = never,
>(
  entry: EntryType<T, F, Code, Ask>,
): EntryType<T, F, Code, Ask> => entry;
