// A sheet on a page: what it says of its own fields is kept to its types, and what was read by those fields is taken for them here alone.
import type { Data, Fields } from '../../book/entry.ts';
import type { Sheet } from '../../sheets/sheet.ts';
import type { FormOf, Values } from './form-page.ts';

/** What a sheet gives to a form. */
export type SheetForm = Pick<FormOf, 'fields' | 'form' | 'lines' | 'check' | 'ask' | 'readBack'>;

/** The sheet's own part of a form; `known` is what the ledger says beside what was typed. */
export function sheetForm<N extends string, F extends Fields, Known>(
  sheet: Sheet<N, F, Known>,
  known: (data: Data<F>) => Known,
): SheetForm {
  /** A form's values are read by the sheet's own fields, so that they are its data. */
  const told = <T>(say: (data: Data<F>, known: Known) => T) => {
    return (values: Values): T => say(values as Data<F>, known(values as Data<F>));
  };
  const { check, ask, readBack } = sheet;
  return {
    fields: sheet.fields,
    form: sheet.form,
    lines: told((data, also) => sheet.lines(data, also)),
    ...(check ? { check: told(check) } : {}),
    ...(ask ? { ask: told(ask) } : {}),
    ...(readBack ? { readBack: told(readBack) } : {}),
  };
}
