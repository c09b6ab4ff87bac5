// A sheet: one form that writes several entries in one command, all or none.
import type { Data, Fields, Form } from '../book/entry.ts';
import type { EntryName, FieldsOf } from '../entries/index.ts';

/** One entry of a sheet. */
export interface SheetLine {
  readonly type: EntryName;
  readonly data: Readonly<Record<string, unknown>>;
}
export interface Sheet<N extends string = string, F extends Fields = Fields> {
  readonly name: N;
  readonly fields: F;
  readonly form: Form<F>;
  /** The entries, in the order they are written; lines are built by `line` alone. */
  lines(data: Data<F>): readonly SheetLine[];
}
export const defineSheet = <const N extends string, const F extends Fields>(sheet: Sheet<N, F>): Sheet<N, F> => sheet;

/** A line of a sheet, its data checked against the entry's own fields; members left undefined are left out. */
export function line<const T extends EntryName>(
  type: T,
  data: { readonly [K in keyof Data<FieldsOf<T>>]: Data<FieldsOf<T>>[K] | undefined },
): SheetLine {
  return { type, data: Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined)) };
}
