import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { FieldError, inputId } from './errors.js';
import { Hint, IfAny, typedIn } from './labels.js';
export function GroupView({ name, label, control, form, inRow, One }) {
  return _jsxs('fieldset', {
    class: inRow ? 'row' : 'field',
    id: inputId(name),
    children: [
      _jsx('legend', { children: label }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      Object.entries(control.members).map(([member, of]) =>
        _jsx(One, { name: `${name}.${member}`, label: of.label, optional: of.optional, control: of.control, form: form, inRow: true }),
      ),
    ],
  });
}
const isFresh = (of, key) => of.kind === 'group' && of.members[key.split('.').at(-1) ?? '']?.control.kind === 'fresh';
/** Rows that were filled in and one more, or as many as were asked for with "Add a row". */
export function ListView({ name, label, hint, optional, control, form, One }) {
  const filled = [...form.typed.keys()].flatMap((key) =>
    key.startsWith(`${name}.`) && typedIn(form, key) !== '' && !isFresh(control.of, key)
      ? [Number.parseInt(key.slice(name.length + 1), 10) + 1]
      : [],
  );
  const rows = Math.min(control.max, Math.max(Math.max(0, ...filled) + (optional ? 1 : 0), 1, Number(typedIn(form, `rows.${name}`))));
  return _jsxs('fieldset', {
    class: 'field wide listed',
    id: inputId(name),
    children: [
      _jsxs('legend', { children: [label, optional && _jsx(IfAny, {})] }),
      _jsx(Hint, { name: name, hint: hint }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      _jsx('input', { type: 'hidden', name: `rows.${name}`, value: String(rows) }),
      Array.from({ length: rows }, (_, row) =>
        _jsx(One, { name: `${name}.${row}`, label: `${row + 1}`, optional: row > 0, control: control.of, form: form, inRow: true }),
      ),
      rows < control.max && _jsx('button', { class: 'plain', name: 'more', value: name, children: 'Add a row' }),
    ],
  });
}
