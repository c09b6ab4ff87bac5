/** The sheet's own part of a form; `known` is what the ledger says beside what was typed. */
export function sheetForm(sheet, known) {
  /** A form's values are read by the sheet's own fields, so that they are its data. */
  const told = (say) => {
    return (values) => say(values, known(values));
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
