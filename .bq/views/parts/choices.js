import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { FieldError, inputId } from './errors.js';
import { described, Hint, IfAny, invalid, Label, typedIn } from './labels.js';
export function Select({ name, label, hint, optional, control, form, inRow }) {
  const chosen = typedIn(form, name);
  return _jsxs('div', {
    class: inRow ? 'cell' : 'field',
    children: [
      _jsx(Label, { name: name, label: label, optional: optional && !inRow }),
      _jsx(Hint, { name: name, hint: hint }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      _jsxs('select', {
        class: 'text',
        id: inputId(name),
        name: name,
        ...described(name, form, hint),
        ...invalid(name, form),
        children: [
          _jsx('option', { value: '', children: optional ? 'Not said' : 'Choose' }),
          Object.entries(control.options).map(([code, words]) =>
            _jsx('option', { value: code, selected: code === chosen, children: words }),
          ),
        ],
      }),
    ],
  });
}
export function Chips(props) {
  const { name, label, hint, optional, control, form } = props;
  const chosen = form.typed.get(name)?.filter((code) => code !== '') ?? [];
  const often = form.often?.[name] ?? Object.keys(control.options);
  const rest = Object.keys(control.options).filter((code) => !often.includes(code));
  const chip = (code) =>
    _jsx(Chip, {
      type: control.kind === 'choice' ? 'radio' : 'checkbox',
      name: name,
      value: code,
      words: control.options[code] ?? code,
      checked: chosen.includes(code),
    });
  return _jsxs('fieldset', {
    class: 'field',
    id: inputId(name),
    ...described(name, form, hint),
    ...invalid(name, form),
    children: [
      _jsxs('legend', { children: [label, optional && _jsx(IfAny, {})] }),
      _jsx(Hint, { name: name, hint: hint }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      control.kind === 'choices' && _jsx('input', { type: 'hidden', name: name, value: '' }),
      _jsxs('div', {
        class: 'chips',
        children: [
          often.filter((code) => code in control.options).map(chip),
          optional &&
            control.kind === 'choice' &&
            _jsx(Chip, { type: 'radio', name: name, value: '', words: 'Not said', checked: chosen.length === 0 }),
        ],
      }),
      rest.length > 0 &&
        _jsxs('details', {
          open: rest.some((code) => chosen.includes(code)),
          children: [_jsx('summary', { children: 'More' }), _jsx('div', { class: 'chips', children: rest.map(chip) })],
        }),
    ],
  });
}
function Chip({ type, name, value, words, checked }) {
  return _jsxs('label', { children: [_jsx('input', { type: type, name: name, value: value, checked: checked }), ' ', words] });
}
export function Tick({ name, label, form, hint }) {
  return _jsxs('div', {
    class: 'field',
    children: [
      _jsx(FieldError, { name: name, problems: form.problems }),
      _jsxs('label', {
        class: 'tick',
        children: [
          _jsx('input', {
            id: inputId(name),
            type: 'checkbox',
            name: name,
            value: 'yes',
            checked: typedIn(form, name) !== '',
            ...described(name, form, hint),
          }),
          _jsx('span', { children: label }),
        ],
      }),
      _jsx(Hint, { name: name, hint: hint }),
    ],
  });
}
/** A few days as chips and any other day beside them; the first that says something holds. */
export function DayChips({ name, label, hint, form, days }) {
  const chosen = typedIn(form, name);
  const isOther = chosen !== '' && !days.some(([day]) => day === chosen);
  return _jsxs('fieldset', {
    class: 'field',
    id: inputId(name),
    ...described(name, form, hint),
    ...invalid(name, form),
    children: [
      _jsx('legend', { children: label }),
      _jsx(Hint, { name: name, hint: hint }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      _jsxs('div', {
        class: 'chips',
        children: [
          days.map(([day, words]) => _jsx(Chip, { type: 'radio', name: name, value: day, words: words, checked: day === chosen })),
          _jsx(Chip, { type: 'radio', name: name, value: '', words: 'Another day', checked: isOther }),
          _jsx('input', {
            class: 'text short',
            type: 'date',
            name: name,
            'aria-label': `${label}: another day`,
            value: isOther ? chosen : '',
          }),
        ],
      }),
    ],
  });
}
