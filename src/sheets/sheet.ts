// A sheet: one form that writes several entries in one command, all or none.
import type { Problem } from '../book/codec.ts';
import type { Data, Fields, Form } from '../book/entry.ts';
import type { EntryName, FieldsOf } from '../entries/index.ts';

/** One entry of a sheet. */
export interface SheetLine {
  readonly type: EntryName;
  readonly data: Readonly<Record<string, unknown>>;
}
/** `Known` is what the ledger already says and a sheet needs beside what was typed. */
export interface Sheet<N extends string = string, F extends Fields = Fields, Known = void> {
  readonly name: N;
  readonly fields: F;
  readonly form: Form<F>;
  /** What is wrong between fields, beyond what the entries themselves would refuse. */
  check?(data: Data<F>, known: Known): readonly Problem[];
  /** What must be read again, with a reason, before it is written; null where nothing is odd. */
  ask?(data: Data<F>, known: Known): Problem | null;
  /** What both agree on, read aloud before anything is written: one sentence a line. */
  readBack?(data: Data<F>, known: Known): readonly string[];
  /** The entries, in the order they are written; lines are built by `line` alone. */
  lines(data: Data<F>, known: Known): readonly SheetLine[];
}
export const defineSheet = <const N extends string, const F extends Fields, Known = void>(sheet: Sheet<N, F, Known>): Sheet<N, F, Known> =>
  sheet;

/** A line of a sheet, its data checked against the entry's own fields; members left undefined are left out. */
export function line<const T extends EntryName>(
  type: T,
  data: { readonly [K in keyof Data<FieldsOf<T>>]: Data<FieldsOf<T>>[K] | undefined },
): SheetLine {
  return { type, data: Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined)) };
}

/** These members of `data`; those that were left out are undefined. */
export function pick<T extends object, K extends keyof T & string>(data: T, names: readonly K[]): Pick<T, K>;
export function pick(data: Readonly<Record<string, unknown>>, names: readonly string[]): object {
  return Object.fromEntries(names.map((one) => [one, data[one]]));
}
